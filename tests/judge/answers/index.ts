// What a person with this virtual layout on the table would answer: check by check, from what the circuit shows. A check that the
// circuit cannot answer is skipped.

import type { TableLayout } from '../../../src/engine/table/layout.ts';
import { checksAsked } from '../../../src/wizards/put-it-right/faults/fitting.ts';
import type { CheckId } from '../../../src/wizards/put-it-right/faults/rows.ts';
import { COMPLAINT_SIGNS } from '../complaints.ts';
import { FIRST_ANSWERS } from './first.ts';
import { GAP_ANSWERS } from './gap.ts';
import { LOAD_ANSWERS } from './load.ts';
import { METER_ANSWERS } from './meter.ts';
import { PROTECTION_ANSWERS } from './protection.ts';
import type { Look } from './shared.ts';
import { SIGNAL_ANSWERS } from './signal.ts';
import { UNIT_ANSWERS } from './units.ts';

/** Ohms of each rail over the ends of the loop, everything unplugged: the lower of the two ends. */
const loopOhms = (layout: TableLayout): readonly [a: number, b: number] => {
  const ends = layout.joins.filter(({ from, to }) => from === 'loop' || to === 'loop');
  return [Math.min(...ends.map(({ ohmsA }) => ohmsA)), Math.min(...ends.map(({ ohmsB }) => ohmsB))];
};

const throughAtLoop = (layout: TableLayout): number => loopOhms(layout).filter((ohms) => ohms < 5).length;

// With trouble at a reversing section the boundary is that of the loop.
const AT_THE_LOOP = {
  'other-locomotive-runs-on': ({ layout }) => (throughAtLoop(layout) === 2 ? 'runs-on' : 'stops'),
  'coach-in-far-part': ({ layout }) => (throughAtLoop(layout) === 2 ? 'lit' : 'dark'),
  'jumper-test': ({ layout }) =>
    (['dead-with-each', 'alive-with-one', 'alive-without'] as const)[throughAtLoop(layout)],
  'meter-across-the-gap': ({ layout }) =>
    (['open-on-both', 'one-through', 'both-through'] as const)[throughAtLoop(layout)],
} as const satisfies Readonly<Partial<Record<CheckId, Look>>>;

const ANSWERS: Readonly<Partial<Record<CheckId, Look>>> = {
  ...FIRST_ANSWERS,
  ...UNIT_ANSWERS,
  ...SIGNAL_ANSWERS,
  ...GAP_ANSWERS,
  ...LOAD_ANSWERS,
  ...PROTECTION_ANSWERS,
  ...METER_ANSWERS,
};

/** Checks that the circuit can answer. */
export const TABLE_CHECKS: readonly string[] = Object.keys(ANSWERS);

/**
 * The option that a person with this layout would choose, or undefined where they cannot tell (a skip). Complaint and check are ids of
 * the fault model; unknown ones are skipped.
 */
export function answerCheck(layout: TableLayout, complaint: string, check: string): string | undefined {
  const known = COMPLAINT_SIGNS.find(({ id }) => id === complaint)?.id;
  const table = known === 'loop-trips' ? { ...ANSWERS, ...AT_THE_LOOP } : ANSWERS;
  const found = Object.entries(table).find(([id]) => id === check)?.[1];
  if (known === undefined || !checksAsked(known).some(({ id }) => id === check)) return undefined;
  return found?.({ layout, complaint: known });
}
