// A layout that is divided already, as a club tells it, or that is to be: each district with its unit, its supply and its part of the traffic.
import type { Cost, DistrictAdvice, DividedLayout, OwnDistrict, RemedyInput } from '../../engine/index.ts';
import {
  allHaveEnough,
  allParked,
  atLeast,
  BOOSTER_OWN_USE,
  capacity,
  DRAWS,
  dividedLayout,
  divisionTakes,
  fewerDistricts,
  muted,
  supplyFor,
  supplyTrip,
} from '../../engine/index.ts';
import type { Answers } from '../planning/index.ts';
import { FURTHER_DISTRICTS } from '../planning/index.ts';
import type { EnoughCurrentOutcome } from './outcomes.ts';
import type { Power, Reckoning } from './reckoning.ts';
import { wishOf } from './reckoning.ts';
import { isTold } from './sure.ts';

/** Undefined `layout`: something of it is not read, by field, or a unit trips too high for the scale. */
export interface Divided {
  readonly letters: readonly string[];
  readonly layout: DividedLayout | undefined;
  readonly unread: readonly string[];
  /** Districts whose unit trips above what wheels and wires of the scale bear, by letter, and that current, amperes. */
  readonly above: readonly string[];
  readonly bears: number;
  /** Nobody has told how the traffic is shared, or less of the busiest district of a plan than each has in the mean: taken as even. */
  readonly evenly: boolean;
  /** What may be any number until somebody tells it: enough is no *surely* before that. */
  readonly untold: UntoldHere | undefined;
  /** Districts that there are whose supply only perhaps trips its unit, by letter: that is tested first. */
  readonly toProve: readonly string[];
  /** What is free and makes districts that have too little do: the sound of what only stands, or its track, is switched off. */
  readonly onceQuiet: 'muted' | 'parked' | undefined;
  /** Present where it is a plan: nothing of it but the first district is there. */
  readonly planned: Planned | undefined;
}

/** In the order in which they are asked for. */
const UNTOLD_HERE = ['trains', 'coaches', 'accessories', 'sound'] as const;
type UntoldHere = (typeof UNTOLD_HERE)[number];

/** The districts beyond the first, all alike. */
export interface Planned {
  /** What each unit passes, and what each supply gives; amperes. */
  readonly limit: number;
  readonly amps: number;
  /** Whether that was told; else the unit is taken like the one there is, and a supply that surely trips it. */
  readonly unitTold: boolean;
  readonly supplyTold: boolean;
  readonly busiestTold: boolean;
  /** What each supply that is got gives, amperes: the one told, or where that only perhaps trips its unit the one that surely does. */
  readonly buyAmps: number;
  /** So many fewer districts, shared evenly, would do; undefined where as many are wanted. */
  readonly fewer: number | undefined;
  /** Boosters to get, and what the whole division takes. */
  readonly boosters: number;
  readonly cost: Cost;
  /** The same for a plan that would do, where this one is too small and more districts help. */
  readonly larger: Larger | undefined;
  /** The power is enough undivided too. */
  readonly spare: boolean;
}

interface Larger {
  readonly districts: number;
  readonly boosters: number;
  readonly cost: Cost;
}

type Told = (id: string) => number | undefined;

/** Undefined where there is but one district, and no other is planned. */
export function dividedOf(answers: Answers, reckoning: Reckoning, power: Power): Divided | undefined {
  const told: Told = (id) => {
    const answer = answers[id];
    return answer?.kind === 'number' ? answer.span.from : undefined;
  };
  const { divided } = answers;
  const option = divided?.kind === 'choice' ? divided.option : undefined;
  const untold = untoldIn(answers, reckoning);
  if (option === 'planned') return { ...plannedOf(answers, told, reckoning, power), untold };
  const count = told('districts') ?? 1;
  return count < 2 || option === 'whole' ? undefined : { ...thereAre(count, told, answers, reckoning, power), untold };
}

function untoldIn(answers: Answers, { trainsAssumed, fleet }: Reckoning): UntoldHere | undefined {
  const measured = fleet.trains.every(({ kind }) => kind === 'measured');
  return UNTOLD_HERE.find((id) => {
    if (id === 'trains') return trainsAssumed;
    return !(isTold(answers, id) || (id === 'sound' && measured));
  });
}

type Found = Omit<Divided, 'untold'>;

/** Districts that there are. Supplies of boosters are taken to be of the command station's kind and volts. */
function thereAre(
  count: number,
  told: Told,
  answers: Answers,
  { fleet, stage, scale }: Reckoning,
  { supply }: Power,
): Found {
  const further = FURTHER_DISTRICTS.slice(0, count - 1);
  const letters = ['a', ...further];
  const traffic = letters.map((letter) => told(`traffic-${letter}`));
  const evenly = traffic.some((one) => one === undefined) || traffic.every((one) => one === 0);
  const unread = further.flatMap((letter) =>
    [`limit-${letter}`, `amps-${letter}`].filter((id) => told(id) === undefined),
  );
  const bears = DRAWS[scale].tripCeiling;
  const above = further.filter((letter) => isAbove(told(`limit-${letter}`) ?? 0, bears)).map(inCapitals);
  const shared = {
    letters: letters.map(inCapitals),
    unread,
    above,
    bears,
    evenly,
    toProve: [],
    onceQuiet: undefined,
    planned: undefined,
  };
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
  const layout = dividedLayout(fleet, districts, isTold(answers, 'lamps'));
  return {
    ...shared,
    layout,
    toProve: perhapsIn(layout, shared.letters),
    onceQuiet: onceQuiet({ fleet, scale }, districts, layout),
  };
}

/** A supply that is replaced need not be tested. */
const perhapsIn = ({ districts, advice }: DividedLayout, letters: readonly string[]): string[] =>
  districts.flatMap(({ trip }, at) => {
    const replaced = advice.kind === 'larger-supply' && advice.district === at;
    return trip.kind === 'perhaps' && !replaced ? [letters[at] ?? ''] : [];
  });

const inCapitals = (letter: string): string => letter.toUpperCase();
const isAbove = (limit: number, bears: number): boolean => limit > bears + 1e-9;

/** The unit and supply that there are feed the first district; the others are alike, of the same kind and volts. */
function plannedOf(answers: Answers, told: Told, reckoning: Reckoning, power: Power): Found {
  const { fleet, stage, scale } = reckoning;
  const count = told('plan-districts') ?? 2;
  const wish = wishOf(answers, reckoning, power);
  const limit = told('plan-limit') ?? stage.limit;
  const unit = { ...stage, limit, ownUse: Math.min(stage.ownUse, BOOSTER_OWN_USE) };
  const sure = supplyFor(wish, unit)?.amps;
  const amps = told('plan-amps') ?? sure ?? power.supply.amps;
  const supply = { ...power.supply, amps };
  const isSure = supplyTrip(supply, unit).kind === 'surely';
  const letters = ['a', ...FURTHER_DISTRICTS.slice(0, count - 1)].map(inCapitals);
  const bears = DRAWS[scale].tripCeiling;
  const above = isAbove(limit, bears) ? letters.slice(1) : [];
  const busiest = told('plan-busiest');
  const evenly = busiest === undefined || busiest * count <= TEN;
  const planned: Planned = {
    limit,
    amps,
    unitTold: told('plan-limit') !== undefined,
    supplyTold: told('plan-amps') !== undefined,
    busiestTold: busiest !== undefined,
    buyAmps: isSure ? amps : (sure ?? amps),
    fewer: undefined,
    larger: undefined,
    ...divisionTakes(wish, count, count - 1),
    spare: atLeast(power.judgement.verdict, 'enough'),
  };
  const shared = { letters, unread: [], above, bears, evenly, toProve: [], onceQuiet: undefined, planned };
  if (above.length > 0) return { ...shared, layout: undefined };
  // Nobody knows yet which will be the busiest: the one with less to plan with.
  const weak = power.capacity.usable < capacity(supply, unit).usable ? 0 : 1;
  const trafficOf = (at: number): number => {
    if (evenly) return 1;
    return at === weak ? busiest : (TEN - busiest) / (count - 1);
  };
  const districts = letters.map(
    (_, at): OwnDistrict => ({
      traffic: trafficOf(at),
      ...(at === 0 ? { supply: power.supply, stage } : { supply, stage: unit }),
    }),
  );
  const layout = dividedLayout(fleet, districts, isTold(answers, 'lamps'));
  const able = weak === 0 ? power.capacity : capacity(supply, unit);
  const enough = layout.advice.kind === 'nothing';
  // What is to be got surely trips its unit, and what is there already is tested; where no supply is surely enough, all of them are.
  const bought = sure === undefined || planned.boosters < count - 1 ? letters : letters.slice(0, 1);
  return {
    ...shared,
    planned: {
      ...planned,
      fewer: enough && !planned.spare ? fewerDistricts(fleet, able, count) : undefined,
      larger: largerPlan(layout, count, wish),
    },
    layout,
    onceQuiet: onceQuiet(reckoning, districts, layout),
    toProve: perhapsIn(layout, letters).filter((letter) => bought.includes(letter)),
  };
}

function largerPlan({ advice }: DividedLayout, count: number, wish: RemedyInput): Larger | undefined {
  if (advice.kind !== 'another' && advice.kind !== 'divide') return undefined;
  const districts = advice.kind === 'another' ? advice.districts : count + 1;
  return { districts, ...divisionTakes(wish, districts, districts - 1) };
}

/** What is bought, and what gives up trains, comes after what is free. */
const HELPED_BY_QUIET: readonly DistrictAdvice['kind'][] = ['larger-supply', 'divide', 'another', 'fewer-moving'];

function onceQuiet(
  { fleet, scale }: Pick<Reckoning, 'fleet' | 'scale'>,
  districts: readonly OwnDistrict[],
  { advice }: DividedLayout,
): Divided['onceQuiet'] {
  if (!HELPED_BY_QUIET.includes(advice.kind)) return undefined;
  if (allHaveEnough(muted(fleet, scale), districts)) return 'muted';
  return allHaveEnough(allParked(fleet), districts) ? 'parked' : undefined;
}

/** Traffic is told in tenths. Source: own-choice. */
const TEN = 10;

/** What it comes to, by what helps. */
const OUTCOMES = {
  nothing: 'power-is-enough',
  'cannot-trip': 'supply-cannot-trip',
  'share-out': 'lopsided-split',
  'larger-supply': 'larger-supply',
  divide: 'more-districts',
  another: 'more-districts',
  'fewer-moving': 'fewer-moving',
} as const satisfies Readonly<Record<DistrictAdvice['kind'], EnoughCurrentOutcome>>;

/** Whether so many districts do, where the gaps are still to be chosen. */
export const isDone = (kind: DistrictAdvice['kind']): boolean => kind === 'nothing' || kind === 'share-out';

/** A plan in which every district has enough, as it is or with the traffic shared out otherwise, is what there is to do: nothing is there to move. */
export function outcomeOf(
  { planned, letters }: Pick<Divided, 'planned' | 'letters'>,
  { advice }: DividedLayout,
): EnoughCurrentOutcome {
  if (planned === undefined || !isDone(advice.kind)) return OUTCOMES[advice.kind];
  return letters.length > 2 ? 'more-districts' : 'booster-with-own-supply';
}
