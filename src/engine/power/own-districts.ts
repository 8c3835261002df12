// A layout that is divided already: each district has its unit, its supply and its share of the traffic, and carries that share alone.
import type { Capacity, Limits, Stage, Supply } from './capacity.ts';
import { capacity } from './capacity.ts';
import { summarise } from './demand.ts';
import type { Fleet } from './fleet.ts';
import { districtLoad, largestMoving } from './fleet.ts';
import type { Able, DistrictLoad, Judgement, Verdict } from './rules.ts';
import { atLeast, judgeInGroups, worstVerdict } from './rules.ts';
import type { SurenessFinding } from './sureness.ts';
import { sureness } from './sureness.ts';
import type { SupplyTrip } from './trip-reach.ts';
import { supplyTrip } from './trip-reach.ts';

export interface OwnDistrict {
  /** How much of the traffic is here, by any measure: the shares are put in proportion to each other. >= 0. */
  readonly traffic: number;
  readonly supply: Supply;
  readonly stage: Stage;
}

export interface DistrictFinding {
  /** Share of all consumers, 0 to 1. */
  readonly share: number;
  /** The same of ten trains under way. */
  readonly ofTen: number;
  readonly capacity: Capacity;
  readonly judgement: Judgement;
  /** Mean and 95 % point of what it draws, amperes. */
  readonly mean: number;
  readonly often: number;
  /** Whether a short circuit here switches its unit off. */
  readonly trip: SupplyTrip;
  /** Largest share of the traffic with which it would still be enough, 0 to 1. */
  readonly mostShare: number;
  /** The same of ten trains under way, rounded down to a tenth of a train. */
  readonly mostOfTen: number;
}

/** Amperes and shares that differ by less are the same: what is left is of rounding. Source: own-choice. */
const SAME = 1e-9;

/** Whether two districts are alike in share, draw, what they can give, tripping and verdict. */
export function districtsAlike(a: DistrictFinding, b: DistrictFinding): boolean {
  const measured = ({ ofTen, often, capacity: able }: DistrictFinding): readonly number[] => [
    ofTen,
    often,
    able.usable,
    able.hard,
    able.moment?.hard ?? able.hard,
  ];
  const other = measured(b);
  return (
    measured(a).every((value, at) => Math.abs(value - (other[at] ?? Number.NaN)) < SAME) &&
    a.trip.kind === b.trip.kind &&
    a.judgement.verdict === b.judgement.verdict
  );
}

/** What helps a divided layout, the free and the quick first. */
export type DistrictAdvice =
  | { readonly kind: 'nothing' }
  /** A short circuit in these districts does not surely switch off: before anything else. */
  | { readonly kind: 'cannot-trip'; readonly districts: readonly number[] }
  /** With so many of ten trains in each, every district is enough. */
  | { readonly kind: 'share-out'; readonly ofTen: readonly number[] }
  /** With a supply that fills the unit, of at least so many amperes on the track, the district is enough. */
  | { readonly kind: 'larger-supply'; readonly district: number; readonly amps: number }
  /** With the worst district divided in two, each half with a unit and supply alike, it is enough. */
  | { readonly kind: 'divide'; readonly district: number }
  /** With so many districts like the one nearest to its limit, and the traffic shared out evenly, every one is enough. */
  | { readonly kind: 'another'; readonly districts: number; readonly moving: number | undefined }
  /** With so many moving at once every district is enough; undefined where not even one may move. */
  | { readonly kind: 'fewer-moving'; readonly moving: number | undefined };

export interface DividedLayout {
  readonly districts: readonly DistrictFinding[];
  readonly verdict: Verdict;
  /** Place of the district nearest to its limit. */
  readonly worst: number;
  readonly advice: DistrictAdvice;
  /** Whether every district is enough (tight counting as enough) whatever is not known, or surely one is not. */
  readonly kind: SurenessFinding['kind'];
}

/** Most districts that are judged. Source: own-choice. */
export const MOST_OWN_DISTRICTS = 12;
/** Traffic is told in tenths. Source: own-choice. */
const TEN = 10;
/** A tight district counts as enough: nothing has to be done, and it is told as tight. */
const WANTED: Verdict = 'tight';
/** Nobody counts traffic: a share may be so much more or less than was told. Source: own-derivation. */
const TRAFFIC_DOUBT = 0.25;
/** Shares are looked for to one part in a hundred. Source: own-choice. */
const SHARE_STEPS = 100;

/**
 * Judges every district of a divided layout by the law of its own share of the fleet: any one consumer is in it with the chance
 * `traffic / sum of traffic`. Currents are never added up over districts. 1 to 12 districts with some traffic between them; throws
 * RangeError otherwise. `lampsKnown`: whether it is told what lights the coaches. Source of the rules: as for `judge`; of the law: own derivation, see `fittingDemand`.
 */
export function dividedLayout(fleet: Fleet, districts: readonly OwnDistrict[], lampsKnown = true): DividedLayout {
  const findings = districtFindings(districts, districtFinder(fleet));
  const verdict = worstVerdict(findings.map(({ judgement }) => judgement.verdict));
  const worst = worstOf(findings);
  const nearest = findings[worst];
  return {
    districts: findings,
    verdict,
    worst,
    advice: adviceFor(fleet, districts, findings, verdict, worst),
    kind: nearest === undefined ? 'depends' : howSure(fleet, nearest, lampsKnown),
  };
}

/** What every district of a divided layout is asked, in their order; throws as `dividedLayout` does. */
export function districtFindings(districts: readonly OwnDistrict[], find: DistrictFinder): readonly DistrictFinding[] {
  const total = districts.reduce((sum, { traffic }) => sum + traffic, 0);
  if (districts.length < 1 || districts.length > MOST_OWN_DISTRICTS) {
    throw new RangeError(`dividedLayout: ${districts.length} districts are outside 1 to ${MOST_OWN_DISTRICTS}`);
  }
  if (!(total > 0) || districts.some(({ traffic }) => traffic < 0)) {
    throw new RangeError('dividedLayout: no traffic in any district, or less than none');
  }
  return districts.map((district) => find(district, district.traffic / total));
}

/** What a district with this share of the traffic is asked. */
export type DistrictFinder = (district: OwnDistrict, share: number) => DistrictFinding;

/** Works out each district of a fleet once: several divisions of a layout share many of them. */
export function districtFinder(fleet: Fleet): DistrictFinder {
  const room = new Map<string, number>();
  const known = new Map<string, DistrictFinding>();
  return ({ supply, stage, traffic }, share) => {
    const key = JSON.stringify([share, supply, stage]);
    const found = known.get(key) ?? findingOf(fleet, { supply, stage, traffic }, share, room);
    known.set(key, found);
    return found;
  };
}

/** All that a district is judged by: two that give the same for good may differ for a moment. */
const given = ({ hard, usable, moment }: Able): string => JSON.stringify([hard, usable, moment]);

/** What shares of a fleet draw: whichever stage is asked for one, it is worked out once. */
const LOADS = new WeakMap<Fleet, Map<number, DistrictLoad>>();

/** A district without traffic draws nothing. */
function loadOf(fleet: Fleet, share: number): DistrictLoad {
  const known = LOADS.get(fleet) ?? new Map<number, DistrictLoad>();
  LOADS.set(fleet, known);
  const found = known.get(share);
  if (found !== undefined) return found;
  const load = share > 0 ? districtLoad(fleet, share) : districtLoad({ ...fleet, ...NOTHING });
  known.set(share, load);
  return load;
}

const NOTHING = { trains: [], moving: 0, coaches: 0, accessories: 0, stored: 0 } as const;

/** `room`: largest share by capacity, since districts are often alike. */
function findingOf(
  fleet: Fleet,
  { supply, stage }: OwnDistrict,
  share: number,
  room: Map<string, number>,
): DistrictFinding {
  const able = capacity(supply, stage);
  const alike = given(able);
  const most = room.get(alike) ?? mostShare(fleet, able);
  room.set(alike, most);
  const load = loadOf(fleet, share);
  const drawn = summarise(load.distribution);
  return {
    share,
    ofTen: TEN * share,
    capacity: able,
    judgement: judgeInGroups(load, able),
    mean: drawn.mean,
    often: drawn.p95,
    trip: supplyTrip(supply, stage),
    mostShare: most,
    mostOfTen: Math.floor(TEN * TEN * most) / TEN,
  };
}

/** Of the district nearest to its limit; a verdict on the others is further from turning. */
function howSure(fleet: Fleet, { share, capacity: able }: DistrictFinding, lampsKnown: boolean): DividedLayout['kind'] {
  const kind = (factor: number) =>
    sureness({ fleet, capacity: able, lampsKnown, share: Math.min(1, share * factor) }).kind;
  if (kind(1 + TRAFFIC_DOUBT) === 'surely') return 'surely';
  return kind(1 - TRAFFIC_DOUBT) === 'surely-not' ? 'surely-not' : 'depends';
}

/** More traffic never makes a verdict better, so the largest share that passes is found by halving. */
function mostShare(fleet: Fleet, able: Capacity): number {
  let [most, failing] = [0, SHARE_STEPS + 1];
  while (failing - most > 1) {
    const steps = Math.floor((most + failing) / 2);
    if (passes(fleet, steps / SHARE_STEPS, able)) most = steps;
    else failing = steps;
  }
  return most / SHARE_STEPS;
}

/** The worst verdict, and among alike ones the largest chance of passing the usable current; where nothing runs nothing is near its limit. */
function worstOf(findings: readonly DistrictFinding[]): number {
  let worst = findings.findIndex(({ share }) => share > 0);
  for (const [at, { judgement }] of findings.entries()) {
    const other = findings[worst]?.judgement ?? judgement;
    const worse = !atLeast(judgement.verdict, other.verdict);
    const nearer = worse || (judgement.verdict === other.verdict && judgement.aboveUsable > other.aboveUsable);
    if (nearer) worst = at;
  }
  return worst;
}

function adviceFor(
  fleet: Fleet,
  districts: readonly OwnDistrict[],
  findings: readonly DistrictFinding[],
  verdict: Verdict,
  worst: number,
): DistrictAdvice {
  const dumb = findings.flatMap(({ trip }, at) => (trip.kind === 'surely-not' ? [at] : []));
  if (dumb.length > 0) return { kind: 'cannot-trip', districts: dumb };
  if (atLeast(verdict, WANTED)) return { kind: 'nothing' };
  const room = findings.reduce((sum, { mostShare: most }) => sum + most, 0);
  if (room >= 1) {
    return { kind: 'share-out', ofTen: findings.map(({ mostShare: most }) => (TEN * most) / room) };
  }
  const failing = findings.filter(({ judgement }) => !atLeast(judgement.verdict, WANTED));
  const [district, finding] = [districts[worst], findings[worst]];
  if (failing.length === 1 && district !== undefined && finding !== undefined) {
    const { limit } = district.stage;
    const filled = { hard: limit, usable: (finding.capacity.usable / finding.capacity.hard) * limit };
    if (finding.capacity.limitedBy === 'supply' && passes(fleet, finding.share, filled)) {
      return { kind: 'larger-supply', district: worst, amps: limit };
    }
    if (passes(fleet, finding.share / 2, finding.capacity)) return { kind: 'divide', district: worst };
  }
  const moving = mayMove(fleet, findings);
  const enough = finding === undefined ? undefined : districtsFor(fleet, finding.capacity, findings.length + 1);
  return enough === undefined ? { kind: 'fewer-moving', moving } : { kind: 'another', districts: enough, moving };
}

/** Whether every district has enough with its share of the traffic; nothing else of it is worked out. */
export function allHaveEnough(fleet: Fleet, districts: readonly OwnDistrict[]): boolean {
  const total = districts.reduce((sum, { traffic }) => sum + traffic, 0);
  const judged = new Map<string, boolean>();
  return districts.every(({ traffic, supply, stage }) => {
    const able = capacity(supply, stage);
    const alike = `${given(able)} ${traffic}`;
    const does = judged.get(alike) ?? passes(fleet, traffic / total, able);
    judged.set(alike, does);
    return does;
  });
}

/** The smallest number of districts below `most` of which each, like this, has enough with an even share; undefined where none has. */
export function fewerDistricts(fleet: Fleet, able: Capacity, most: number): number | undefined {
  const count = districtsFor(fleet, able, 2);
  return count !== undefined && count < most ? count : undefined;
}

/** The smallest number of districts, from `least` on, each of which would be enough with an even share. */
function districtsFor(fleet: Fleet, able: Capacity, least: number): number | undefined {
  for (let count = least; count <= MOST_OWN_DISTRICTS; count++) if (passes(fleet, 1 / count, able)) return count;
  return undefined;
}

/** Most that may move with every district enough as the traffic is shared now; undefined where not even one may. */
function mayMove(fleet: Fleet, findings: readonly DistrictFinding[]): number | undefined {
  const busy = findings.filter(({ share }) => share > 0);
  const most = Math.min(...busy.map(({ share, capacity: able }) => largestMoving(fleet, able, WANTED, share)));
  return most < 1 ? undefined : most;
}

/**
 * Whether a district that can give `able` has enough with a share of the fleet (0 to 1) and so many amperes that are always on there besides
 * (>= 0). These lower every limit; of a transformer's heat that asks a little more than the r.m.s. would. More of either never makes it pass.
 */
export function bearsShare(fleet: Fleet, able: Able): (share: number, fixedAmps: number) => boolean {
  // A large fleet takes a while, and whoever divides asks the same again.
  const known = new Map<string, boolean>();
  return (share, fixedAmps) => {
    const asked = `${share} ${fixedAmps}`;
    const does = known.get(asked) ?? passes(fleet, share, lessened(able, fixedAmps));
    known.set(asked, does);
    return does;
  };
}

function lessened(able: Able, amps: number): Able {
  const less = ({ hard, usable }: Limits): Limits => ({ hard: hard - amps, usable: usable - amps });
  return { ...less(able), ...(able.moment === undefined ? {} : { moment: less(able.moment) }) };
}

const passes = (fleet: Fleet, share: number, able: Able): boolean =>
  atLeast(judgeInGroups(loadOf(fleet, share), able).verdict, WANTED);
