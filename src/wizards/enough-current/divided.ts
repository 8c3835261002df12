// A layout that is divided already, as a club tells it: each district with its unit, its supply and its part of the traffic.
import type { DistrictAdvice, DividedLayout, OwnDistrict } from '../../engine/index.ts';
import { BOOSTER_OWN_USE, dividedLayout } from '../../engine/index.ts';
import type { Answers } from '../planning/index.ts';
import { FURTHER_DISTRICTS } from '../planning/index.ts';
import type { EnoughCurrentOutcome } from './outcomes.ts';
import type { Power, Reckoning } from './reckoning.ts';

/** Undefined `layout`: something of it is not read, by field. */
export interface Divided {
  readonly letters: readonly string[];
  readonly layout: DividedLayout | undefined;
  readonly unread: readonly string[];
  /** Nobody has told how the traffic is shared: taken as even. */
  readonly evenly: boolean;
}

/** Undefined where there is but one district. Supplies of boosters are taken to be of the command station's kind and volts. */
export function dividedOf(answers: Answers, { fleet, stage }: Reckoning, { supply }: Power): Divided | undefined {
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
  if (unread.length > 0) return { letters: names, layout: undefined, unread, evenly };
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
  return { letters: names, layout: dividedLayout(fleet, districts, lampsKnown), unread, evenly };
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
