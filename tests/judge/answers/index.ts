// What a person with this virtual layout on the table would answer: check by check, from what the circuit shows. What is tried, lit or measured is
// answered by the circuit itself; what is told or looked at by the sign that the check reads, as people mostly say it.

import type { SignCheck } from '../../../src/engine/index.ts';
import type { CheckId } from '../../../src/wizards/put-it-right/model/checks/index.ts';
import { SIGN_MODEL } from '../../../src/wizards/put-it-right/model/index.ts';
import { walkModelNow } from '../../../src/wizards/put-it-right/step.ts';
import type { MetId, Situation } from '../complaints.ts';
import { SIGN_READS, signOf } from '../signs.ts';
import { GAP_ANSWERS } from './gap.ts';
import { LAYOUT_ANSWERS } from './layout.ts';
import { LOAD_ANSWERS } from './load.ts';
import { METER_ANSWERS } from './meter.ts';
import { PROTECTION_ANSWERS } from './protection.ts';
import type { Answered } from './shared.ts';
import { SIGNAL_ANSWERS } from './signal.ts';
import { UNIT_ANSWERS } from './units.ts';

/** Ohms of each rail over the ends of the loop, everything unplugged: the lower of the two ends. */
const loopOhms = ({ layout: { joins } }: Situation): readonly [a: number, b: number] => {
  const ends = joins.filter(({ from, to }) => from === 'loop' || to === 'loop');
  return [Math.min(...ends.map(({ ohmsA }) => ohmsA)), Math.min(...ends.map(({ ohmsB }) => ohmsB))];
};

const throughAtLoop = (asked: Situation): 0 | 1 | 2 => {
  const count = loopOhms(asked).filter((ohms) => ohms < 5).length;
  if (count === 0) return 0;
  return count === 1 ? 1 : 2;
};

// With trouble at a reversing section the boundary is that of the loop.
const AT_THE_LOOP: Answered = {
  'other-locomotive-runs-on': (asked) => (throughAtLoop(asked) === 2 ? 'runs-on' : 'stops'),
  'coach-in-far-part': (asked) => (throughAtLoop(asked) === 2 ? 'lit' : 'dark'),
  'jumper-test': (asked) => (['dead-with-each', 'alive-with-one', 'alive-without'] as const)[throughAtLoop(asked)],
  'meter-across-the-gap': (asked) => (['open-on-both', 'one-through', 'both-through'] as const)[throughAtLoop(asked)],
};

const OWN: Answered = {
  ...LAYOUT_ANSWERS,
  ...UNIT_ANSWERS,
  ...SIGNAL_ANSWERS,
  ...GAP_ANSWERS,
  ...LOAD_ANSWERS,
  ...PROTECTION_ANSWERS,
  ...METER_ANSWERS,
};

/** Checks that the virtual layout cannot answer, each with its reason. */
export const NOT_ON_THE_TABLE = {
  weather: 'the table has no weather',
  'dead-since-a-short': 'nothing of the table is harmed by a short',
  'how-driven': 'the table has no handhelds and no computer',
  'what-feeds-accessories': 'the table has no accessories',
  'which-way': 'a vehicle of the table goes one way',
  'bridge-half-round': 'the table has no turntable',
  'blade-in-turnout-cuts': 'the table has no cuts inside a turnout',
  'piece-by-itself': 'the table has no crossing',
  'look-at-the-frog': 'the table has nothing that feeds a frog by itself',
  'meter-at-the-frog': 'the table has nothing that feeds a frog by itself',
  'read-its-decoder': 'a decoder is told or not told to run on direct current; it holds no settings',
  'write-anew': 'a decoder of the table holds no settings',
  'programming-track': 'the programming track is an output and no piece of track',
  'piece-at-programming': 'the programming track is an output and no piece of track',
  'accessories-without-trains': 'the table has no accessories',
  'accessory-moment': 'the table has no accessories',
  'one-accessory-or-all': 'the table has no accessories',
  'accessories-own-supply': 'the table has no accessories',
  'exchange-accessories': 'the table has no accessories',
  'what-is-reported': 'the table has no bus on which a detector reports',
  'what-the-handhelds-do': 'the table has no handhelds',
  'exchange-handhelds': 'the table has no handhelds',
  'without-the-computer': 'the table has no computer that acts',
  'meter-control-bus': 'the control bus is a plug in a socket, not a pair of wires',
} as const satisfies Readonly<Partial<Record<CheckId, string>>>;

const CHECKS = new Map(SIGN_MODEL.checks.map((check) => [check.id, check]));

const readsOf = ({ reads }: SignCheck): readonly string[] => (typeof reads === 'string' ? [reads] : reads);

/** Checks that the circuit can answer. */
export const TABLE_CHECKS: readonly string[] = SIGN_MODEL.checks
  .filter((check) => Object.hasOwn(OWN, check.id) || readsOf(check).every((sign) => Object.hasOwn(SIGN_READS, sign)))
  .map(({ id }) => id);

const { tables } = walkModelNow();

/** What most people say for what the circuit shows of the signs that a check reads; undefined where it shows nothing of them. */
function bySigns(check: SignCheck, asked: Situation): string | undefined {
  const table = tables.checks[tables.checkAt.get(check.id) ?? -1];
  const group = tables.groups[table?.group ?? -1];
  const reads = readsOf(check);
  const shown = group?.signs.map(({ id }) => signOf(asked, id));
  if (table === undefined || group === undefined || shown === undefined || table.says.by !== 0) return undefined;
  if (group.signs.some(({ id }, at) => reads.includes(id) && shown[at] === undefined)) return undefined;
  // A sign of the group that the check does not read changes nothing.
  const joint = group.signs.reduce(
    (place, { values }, at) => place * values.length + Math.max(0, values.indexOf(shown[at] ?? '')),
    0,
  );
  const said = check.options.map((_, option) => table.says.chances[option * group.size + joint] ?? 0);
  return check.options[said.indexOf(Math.max(...said))];
}

/**
 * The option that a person with this layout would choose, or undefined where they cannot tell (a skip). `complaint` is what they have met there;
 * unknown checks are skipped.
 */
export function answerCheck(layout: Situation['layout'], complaint: MetId, id: string): string | undefined {
  const check = CHECKS.get(id);
  if (check === undefined) return undefined;
  const asked = { layout, complaint };
  const table: Answered = complaint === 'loop-trips' ? { ...OWN, ...AT_THE_LOOP } : OWN;
  const own: readonly (readonly [string, (asked: Situation) => string | undefined])[] = Object.entries(table);
  const look = own.find(([of]) => of === id)?.[1];
  return look === undefined ? bySigns(check, asked) : look(asked);
}
