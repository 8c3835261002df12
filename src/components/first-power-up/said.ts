// A test in sentences: where it is made, what is to be seen there, what was seen.
import type { Seen } from '../../wizards/first-power-up/index.ts';
import { CANNOT, isOwnTest, NO_COIN } from '../../wizards/first-power-up/index.ts';
import type { Plan, Reading, TestRow } from '../../wizards/plan/index.ts';
import type { Numbers, Say } from '../words/index.ts';
import { listed } from '../words/index.ts';
import type { PowerUpProps } from './props.ts';

export interface Told extends Omit<PowerUpProps, 'words'> {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly plan: Plan;
}

const nameOf = (id: string, { plan: { sheet } }: Told): string =>
  sheet.sections.find((one) => one.id === id)?.name ?? id.replaceAll('-', ' ');

export function whereSaid({ where }: TestRow, told: Told): string {
  const { say, plan } = told;
  switch (where.kind) {
    case 'gap': {
      const gap = plan.track.gaps.find(({ number }) => number === where.gap);
      const [from, to] = [nameOf(gap?.from.id ?? '', told), nameOf(gap?.to.id ?? '', told)];
      const place = say('power-up-where-gap', { n: where.gap, from, to });
      return gap?.end === undefined
        ? place
        : say('power-up-where-twin', { place, end: gap.end.number, ends: gap.end.of });
    }
    case 'district':
      return say('power-up-where-district', { district: where.district });
    case 'section':
      return say('power-up-where-section', { section: nameOf(where.section, told) });
    case 'all':
      return say('power-up-where-all');
  }
}

function figureSaid({ what, unit, from, to }: Reading, { say, numbers }: Told): string {
  const written = (value: number): string => {
    if (unit === 'share') return numbers.share(value);
    return unit === 'V' ? numbers.volts(value) : numbers.amps(value);
  };
  return say(`power-up-figure-${what}`, { from: written(from), to: written(to) });
}

export function expectedSaid({ kind, readings, turning }: TestRow, told: Told): string {
  const seen = turning ? `${kind}-turning` : kind;
  return listed([told.say(`power-up-expect-${seen}`), ...readings.map((one) => figureSaid(one, told))], told.language);
}

/** The question of a test. */
export const titleSaid = (kind: string, { say, tests }: Told): string =>
  isOwnTest(kind) ? say(`power-up-ask-${kind}`) : (tests[kind]?.title ?? kind);

/** An option in the words in which it is tapped. */
export function optionSaid(kind: string, option: string, { say, tests }: Told): string {
  if (option === NO_COIN) return say('power-up-no-coin');
  if (option === CANNOT) return say('power-up-not-tested');
  return isOwnTest(kind) ? say(`power-up-option-${kind}-${option}`) : (tests[kind]?.options[option]?.label ?? option);
}

/** With what was read, where something was. */
export function seenSaid(kind: string, { option, values = {} }: Seen, told: Told): string {
  const read = Object.entries(values).map(
    ([name, value]) => `${told.say(`power-up-read-${name}`)} ${told.numbers.plain(value, 2)}`,
  );
  const label = optionSaid(kind, option, told);
  return read.length === 0
    ? label
    : `${label} (${told.say('power-up-values', { values: listed(read, told.language) })})`;
}
