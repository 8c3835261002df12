// A test in sentences: where it is made, what is to be seen there, what was seen.
import type { Seen } from '../../wizards/first-power-up/index.ts';
import { CANNOT, hasOwnQuestion, isOwnTest, NO_COIN, ownSteps } from '../../wizards/first-power-up/index.ts';
import type { Plan, PlanGap, Reading, TestRow } from '../../wizards/plan/index.ts';
import { beyondOf, districtOf, sidesOf } from '../../wizards/plan/index.ts';
import { pairSaid } from '../diagram/index.ts';
import { expectedAs, isByLamp, isOverBridge, type Names } from '../plan/index.ts';
import type { Numbers, Say } from '../words/index.ts';
import { listed } from '../words/index.ts';
import type { PowerUpProps } from './props.ts';

export interface Told extends Omit<PowerUpProps, 'words'> {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly plan: Plan;
  readonly names: Names;
}

const gapOf = ({ where }: TestRow, { plan }: Told): PlanGap | undefined =>
  where.kind === 'gap' ? plan.track.gaps.find(({ number }) => number === where.gap) : undefined;

export function whereSaid(row: TestRow, told: Told): string {
  const { where } = row;
  const { say, plan, names } = told;
  switch (where.kind) {
    case 'gap': {
      const joint = gapOf(row, told)?.joint;
      const pair = joint === undefined ? '' : pairSaid(joint, { sheet: plan.sheet, say, nameOf: names.section });
      return say('power-up-where-gap', { n: where.gap, pair });
    }
    case 'district':
      return say('power-up-where-district', { district: where.district });
    case 'section':
      return say('power-up-where-section', { section: names.section(where.section) });
    case 'all':
      return say('power-up-where-all');
  }
}

/** The letters of both sides, that of track which no unit feeds last. */
const lettersAt = ({ parts, districts: [near, far] }: PlanGap): readonly (string | undefined)[] =>
  parts ?? (near === undefined ? [far, near] : [near, far]);

/** Who is who at this place: districts and units by their names. */
function namesAt(row: TestRow, told: Told): Readonly<Record<string, string>> {
  const { plan, names } = told;
  const gap = gapOf(row, told);
  const sides = gap === undefined ? undefined : sidesOf(gap, plan.track);
  const letter = row.where.kind === 'district' ? row.where.district : '';
  const [near = '', far = ''] = gap === undefined ? [] : lettersAt(gap);
  const here = districtOf(letter === '' ? near : letter, plan.track);
  const station = plan.sheet.stages.find(({ kind }) => kind === 'station');
  return {
    district: letter,
    unit: names.stage(here?.stage.id ?? ''),
    station: names.stage(station?.id ?? ''),
    old: sides?.old.letter ?? near,
    new: sides?.new.letter ?? far,
    oldUnit: names.stage(sides?.old.stage.id ?? ''),
    newUnit: names.stage(sides?.new.stage.id ?? ''),
  };
}

/** Which part is which at a gap, and that boosters get their commands from elsewhere. */
export function sidesSaid(row: TestRow, told: Told): string | undefined {
  const gap = gapOf(row, told);
  if (gap === undefined) return undefined;
  const sides = sidesOf(gap, told.plan.track);
  if (sides === undefined) {
    const [letter = ''] = lettersAt(gap);
    return districtOf(letter, told.plan.track)?.stage.kind === 'booster' ? told.say('power-up-signal') : undefined;
  }
  const who = told.say('power-up-sides', namesAt(row, told));
  return sides.old.stage.kind === 'station' ? who : `${who} ${told.say('power-up-signal')}`;
}

/** What lies beyond a gap at which no two units meet. */
function beyondAt(row: TestRow, told: Told): string | undefined {
  const gap = gapOf(row, told);
  const beyond = gap === undefined ? 'unit' : beyondOf(gap);
  return beyond === 'unit' ? undefined : beyond;
}

/** The steps of a test, with the units and districts of this layout. */
export function stepsSaid(row: TestRow, told: Told): readonly string[] {
  const { say, tests } = told;
  const count = ownSteps(row.kind);
  const at = namesAt(row, told);
  if (count === undefined) {
    const how = tests[row.kind]?.how ?? [];
    // Its last step says what is little on any layout; here it is known.
    return row.kind === 'load-test' && row.readings.length > 0
      ? [...how.slice(0, -1), say('power-up-how-load-hardly')]
      : how;
  }
  const beyond = beyondAt(row, told);
  if (row.kind === 'jumper-test' && beyond !== undefined) {
    const clip = isByLamp(row) ? LAMP_STEPS : ['jumper-test-4', 'jumper-test-5', 'beyond-last'];
    const ids = ['beyond-first', `beyond-${beyond}`, 'beyond-on', ...clip];
    return ids.map((id) => say(`power-up-how-${id}`, at));
  }
  if (isOverBridge(row)) return [say('power-up-how-short-locomotive-through-loop-turning-1')];
  const steps = Array.from({ length: count }, (_, place) => say(`power-up-how-${row.kind}-${place + 1}`, at));
  if (!isByLamp(row)) return steps;
  return [
    ...steps.slice(0, 2),
    say('power-up-reverser'),
    ...steps.slice(2, -LAMP_STEPS.length),
    ...LAMP_STEPS.map((id) => say(`power-up-how-${id}`, at)),
  ];
}

/** In place of the last steps of the jumper test. */
const LAMP_STEPS = ['lamp-1', 'lamp-2', 'lamp-3'];

/** Words of a picture, with the units and districts of this layout. */
export function picturing(row: TestRow, told: Told): Say {
  const { say } = told;
  const at = namesAt(row, told);
  if (at['old'] === '') return say;
  const beyond = beyondAt(row, told);
  const own: Readonly<Record<string, string>> = {
    'picture-parts-old': say('power-up-picture-old', at),
    'picture-parts-new': say('power-up-picture-new', at),
    'picture-jumper': say('power-up-picture-jumper', at),
    'picture-jumper-station': say('power-up-picture-unit', { district: at['old'] ?? '' }),
    'picture-jumper-booster': say('power-up-picture-unit', { district: at['new'] ?? '' }),
  };
  const without: Readonly<Record<string, string>> = {
    ...own,
    'picture-parts-new': say(`power-up-picture-beyond-${beyond ?? 'feed'}`, at),
    'picture-jumper': say('power-up-picture-beyond'),
    'picture-jumper-booster': say('power-up-picture-beyond-feed'),
  };
  return (id, values) => (beyond === undefined ? own : without)[id] ?? say(id, values);
}

function figuresSaid(row: TestRow, told: Told): string[] {
  const { say, numbers } = told;
  const at = namesAt(row, told);
  const written = (unit: Reading['unit'], value: number): string => {
    if (unit === 'share') return numbers.share(value);
    return unit === 'V' ? numbers.volts(value) : numbers.amps(value);
  };
  const said = (what: string, { unit, from, to }: Reading): string =>
    say(`power-up-figure-${what}`, { from: written(unit, from), to: written(unit, to), ...at });
  const [one, other, ...others] = row.readings;
  const alike = one?.what === 'rails' && other !== undefined && said('both-rails', one) === said('both-rails', other);
  return alike
    ? [said('both-rails', one), ...others.map((reading) => said(reading.what, reading))]
    : row.readings.map((reading) => said(reading.what, reading));
}

export function expectedSaid(row: TestRow, told: Told): string {
  const seen = expectedAs(row.kind, row.turning, row.breaker);
  return listed([told.say(`power-up-expect-${seen}`), ...figuresSaid(row, told)], told.language);
}

/** The question of a test. */
export function titleSaid(row: TestRow, told: Told): string {
  const { kind } = row;
  if (isOverBridge(row) || isByLamp(row)) return told.say(`power-up-ask-${kind}-turning`);
  return hasOwnQuestion(kind)
    ? told.say(`power-up-ask-${kind}`, namesAt(row, told))
    : (told.tests[kind]?.title ?? kind);
}

/** What an option says of the layout. */
export function optionHint(option: string, row: TestRow, { say, tests }: Told): string | undefined {
  const hint = tests[row.kind]?.options[option]?.hint;
  return isByLamp(row) && option === 'alive-with-one' ? say('power-up-hint-lamp') : hint;
}

/** An option in the words in which it is tapped. */
export function optionSaid(kind: string, option: string, { say, tests }: Told): string {
  if (option === NO_COIN) return say('power-up-no-coin');
  if (option === CANNOT) return say('power-up-not-tested');
  return isOwnTest(kind) ? say(`power-up-option-${kind}-${option}`) : (tests[kind]?.options[option]?.label ?? option);
}

/** What is typed in, by what it is. */
export const fieldSaid = (field: string, row: TestRow, told: Told): string =>
  told.say(`power-up-read-${field}`, namesAt(row, told));

/** With what was read, where something was. */
export function seenSaid(row: TestRow, { option, values = {} }: Seen, told: Told): string {
  const read = Object.entries(values).map(
    ([name, value]) => `${fieldSaid(name, row, told)} ${told.numbers.plain(value, 2)}`,
  );
  const label = optionSaid(row.kind, option, told);
  return read.length === 0
    ? label
    : `${label} (${told.say('power-up-values', { values: listed(read, told.language) })})`;
}
