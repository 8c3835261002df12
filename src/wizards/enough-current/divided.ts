// A layout that is divided already, as a club tells it: each district with its unit, its supply and its part of the traffic.
import type { DistrictAdvice, DividedLayout, OwnDistrict } from '../../engine/index.ts';
import { BOOSTER_OWN_USE, DRAWS, dividedLayout } from '../../engine/index.ts';
import type { Answers } from '../planning/index.ts';
import { FURTHER_DISTRICTS } from '../planning/index.ts';
import type { EnoughCurrentOutcome } from './outcomes.ts';
import type { Power, Reckoning } from './reckoning.ts';

/** Undefined `layout`: something of it is not read, by field, or a unit trips too high for the scale. */
export interface Divided {
  readonly letters: readonly string[];
  readonly layout: DividedLayout | undefined;
  readonly unread: readonly string[];
  /** Districts whose unit trips above what wheels and wires of the scale bear, by letter, and that current, amperes. */
  readonly above: readonly string[];
  readonly bears: number;
  /** Nobody has told how the traffic is shared: taken as even. */
  readonly evenly: boolean;
}

/** Undefined where there is but one district. Supplies of boosters are taken to be of the command station's kind and volts. */
export function dividedOf(
  answers: Answers,
  { fleet, stage, scale }: Reckoning,
  { supply }: Power,
): Divided | undefined {
  const told = (id: string): number | undefined => {
    const answer = answers[id];
    return answer?.kind === 'number' ? answer.span.from : undefined;
  };
  const count = told('districts') ?? 1;
  if (count < 2) return undefined;
  const further = FURTHER_DISTRICTS.slice(0, count - 1);
  const letters = ['a', ...further];
  const traffic = letters.map((letter) => told(`traffic-${letter}`));
  const evenly = traffic.some((one) => one === undefined) || traffic.every((one) => one === 0);
  const unread = further.flatMap((letter) =>
    [`limit-${letter}`, `amps-${letter}`].filter((id) => told(id) === undefined),
  );
  const names = letters.map((letter) => letter.toUpperCase());
  const bears = DRAWS[scale].tripCeiling;
  const above = further
    .filter((letter) => (told(`limit-${letter}`) ?? 0) > bears + 1e-9)
    .map((letter) => letter.toUpperCase());
  const shared = { letters: names, unread, above, bears, evenly };
  if (unread.length > 0 || above.length > 0) return { ...shared, layout: undefined };
  const ownUse = Math.min(stage.ownUse, BOOSTER_OWN_USE);
  const districts = letters.map((letter, at): OwnDistrict => {
    const share = evenly ? 1 : (traffic[at] ?? 0);
    if (letter === 'a') return { traffic: share, supply, stage };
    const limit = told(`limit-${letter}`) ?? 0;
    return {
      traffic: share,
      supply: { ...supply, amps: told(`amps-${letter}`) ?? 0 },
      stage: { ...stage, limit, ownUse },
    };
  });
  const lamps = answers['lamps'];
  const lampsKnown = fleet.coaches === 0 || lamps?.kind === 'choice';
  return { ...shared, layout: dividedLayout(fleet, districts, lampsKnown) };
}

/** What it comes to, by what helps. */
export const DIVIDED_OUTCOMES = {
  nothing: 'power-is-enough',
  'cannot-trip': 'supply-cannot-trip',
  'share-out': 'lopsided-split',
  'larger-supply': 'larger-supply',
  divide: 'more-districts',
  another: 'more-districts',
  'fewer-moving': 'fewer-moving',
} as const satisfies Readonly<Record<DistrictAdvice['kind'], EnoughCurrentOutcome>>;
