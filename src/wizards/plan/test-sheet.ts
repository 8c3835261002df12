// The test sheet: what is looked at, where, what is to be seen on this layout, and where somebody goes who sees something else. In the
// order of the trade: isolation before any unit is joined, each unit alone before both, the harmless test before the coin, trains last.
import { metersShow, STEP_LIMIT } from '../../engine/index.ts';
import type { Sheet } from '../sheet/index.ts';
import type { Power } from './power.ts';
import { mayBePowered } from './steps.ts';
import type { Fed, PlanGap, Track, TrackDistrict } from './track.ts';
import { beyondOf, fedIn, isBoundary, isFedApart, isTurning, runsOf, sidesOf } from './track.ts';
import type { DistrictWires } from './wires.ts';

/** Tests with words, pictures and dangers of their own in the walk that finds faults. */
export const CHECKED_BY = [
  'jumper-test',
  'card-through-gaps',
  'each-stage-alone',
  'two-lamps',
  'meter-two-stages',
  'load-test',
  'coin-near',
  'coin-far',
  'vehicle-in-far-part',
  'short-locomotive-through-loop',
  'programming-track',
  'meter-supply-current',
] as const;
type CheckedBy = (typeof CHECKED_BY)[number];

export type RowKind = 'first-look' | CheckedBy | 'crossing' | 'traffic';

/** Where a row is done. */
export type Where =
  | { readonly kind: 'gap'; readonly gap: number }
  | { readonly kind: 'district'; readonly district: string }
  | { readonly kind: 'section'; readonly section: string }
  | { readonly kind: 'all' };

/** What a meter shows on this layout where all is right. Volts, amperes, or a share of the volts before. `amps-untold`: both at the most, for the unit’s own use is not told. */
export interface Reading {
  readonly what: 'rails' | 'other-rails' | 'step' | 'lost-near' | 'lost-far' | 'no-trip' | 'amps' | 'amps-untold';
  readonly unit: 'V' | 'A' | 'share';
  readonly from: number;
  readonly to: number;
}

export interface TestRow {
  /** A mark of its own on this sheet: kind and place. */
  readonly id: string;
  readonly kind: RowKind;
  readonly where: Where;
  /** What is to be seen, of the options of the kind. */
  readonly expected: string;
  /** Every option, what is expected first. */
  readonly options: readonly string[];
  readonly readings: readonly Reading[];
  /** Beyond the gap rails change sides: what is seen with them one way round is looked at the other way round too, and no bare wire joins a rail. */
  readonly turning: boolean;
  /** In a sub-district: its breaker acts, and the unit stays on. */
  readonly breaker: boolean;
  /** Whether nobody may go on without it: what it guards against harms or hides. */
  readonly must: boolean;
  /** A complaint of the walk, by what was seen instead. */
  readonly leads: Readonly<Record<string, string>>;
}

interface Kind {
  readonly expected: string;
  /** What else may be seen, and the complaint with which the walk begins then: one that claims nothing that nobody has seen. */
  readonly else: Readonly<Record<string, string>>;
  readonly must: boolean;
}

/** The options of checks are those of the fault model. */
const KINDS: Readonly<Record<RowKind, Kind>> = {
  'first-look': { expected: 'stops', else: { 'runs-on': 'still-runs-past-gap' }, must: false },
  'jumper-test': {
    expected: 'dead-with-each',
    else: { 'alive-with-one': 'since-rewired', 'alive-without': 'since-rewired' },
    must: true,
  },
  // Where nothing can be made dead beyond it.
  'card-through-gaps': {
    expected: 'passes',
    else: { touches: 'since-rewired', 'not-cut': 'since-rewired' },
    must: true,
  },
  'each-stage-alone': {
    expected: 'all-fine',
    else: { 'one-alone-faults': 'trips-at-power-on', 'only-together': 'trips-at-power-on' },
    must: true,
  },
  'two-lamps': {
    expected: 'both-dark',
    else: { 'both-light': 'since-rewired', flickers: 'none-of-these' },
    must: true,
  },
  'meter-two-stages': {
    expected: 'alike',
    else: { 'differ-idle': 'none-of-these', 'differ-loaded': 'none-of-these' },
    must: false,
  },
  'load-test': {
    expected: 'firm-everywhere',
    else: { 'weak-far': 'slow-far-away', 'weak-everywhere': 'all-slow' },
    must: false,
  },
  'coin-near': {
    expected: 'off-at-once',
    else: { 'off-late': 'short-not-noticed', 'stays-on': 'short-not-noticed', 'wrong-one': 'wrong-one-trips' },
    must: true,
  },
  'coin-far': { expected: 'off-at-once', else: { 'stays-on': 'short-not-noticed' }, must: true },
  'vehicle-in-far-part': {
    expected: 'runs-well',
    else: {
      dark: 'stops-at-gap',
      'lit-but-deaf': 'ignores-commands',
      'takes-off': 'starts-by-itself',
      'runs-poorly': 'since-rewired',
    },
    must: true,
  },
  'short-locomotive-through-loop': {
    expected: 'fine',
    else: { 'trips-entering': 'loop-trips', 'trips-leaving': 'loop-trips', 'trips-at-turnout': 'loop-trips' },
    must: false,
  },
  'programming-track': {
    expected: 'works',
    else: {
      'cannot-read': 'programming-fails',
      'others-take-it': 'programming-fails',
      'shorts-there': 'programming-fails',
    },
    must: false,
  },
  crossing: {
    expected: 'runs-across',
    else: { stops: 'stops-at-gap', trips: 'trips-at-gap', jerks: 'jerks-at-gap' },
    must: true,
  },
  'meter-supply-current': {
    expected: 'well-below',
    else: { 'near-limit': 'trips-with-traffic', above: 'trips-with-traffic', 'high-idle': 'short-not-noticed' },
    must: false,
  },
  traffic: {
    expected: 'all-well',
    else: { trips: 'trips-with-traffic', slow: 'slow-far-away', later: 'cuts-out-after-a-while' },
    must: true,
  },
};

function row(kind: RowKind, where: Where, readings: readonly Reading[] = [], turning = false): TestRow {
  const { expected, else: leads, must } = KINDS[kind];
  return {
    id: [kind, ...idOf(where)].join('-'),
    ...{ kind, where, expected, readings, turning, breaker: false, must, leads },
    options: [expected, ...Object.keys(leads)],
  };
}

function idOf(where: Where): string[] {
  switch (where.kind) {
    case 'gap':
      return [String(where.gap)];
    case 'district':
      return [where.district.toLowerCase()];
    case 'section':
      return [where.section];
    case 'all':
      return [];
  }
}

export interface Tested {
  readonly sheet: Sheet;
  readonly track: Track;
  readonly power: Power;
  readonly wires: readonly DistrictWires[];
}

/**
 * Made otherwise where rails change sides beyond the gap: lamps are looked at both ways round, and a lamp takes the place of the jumper, which
 * would be a dead short where a rail is whole at the far end.
 */
const TURNED: readonly RowKind[] = ['two-lamps', 'jumper-test'];

/** The rows of a sheet, in the order in which they are done. While nothing may be plugged in, only those that need no power. */
export const testSheetOf = (told: Tested): TestRow[] =>
  allRows(told).filter(({ kind }) => kind === 'card-through-gaps' || mayBePowered(told.power));

function allRows(told: Tested): TestRow[] {
  const { track, sheet } = told;
  const atGaps = (
    kind: RowKind,
    wanted: (gap: PlanGap) => boolean,
    readings?: (gap: PlanGap) => readonly Reading[],
  ): TestRow[] =>
    track.gaps
      .filter(wanted)
      .map((gap) =>
        row(kind, { kind: 'gap', gap: gap.number }, readings?.(gap), TURNED.includes(kind) && isTurning(gap)),
      );
  const inDistricts = (
    kind: RowKind,
    readings?: (district: TrackDistrict) => readonly Reading[],
    wanted: (district: TrackDistrict) => boolean = () => true,
  ): TestRow[] =>
    track.districts
      .filter(wanted)
      .map((district) => row(kind, { kind: 'district', district: district.letter }, readings?.(district)));
  // Each sub-district has a breaker of its own to prove.
  const inFed = (kind: RowKind, readings?: (fed: Fed) => readonly Reading[]): TestRow[] =>
    track.districts.flatMap((district) =>
      fedIn(district).map((fed) => ({
        ...row(kind, { kind: 'district', district: fed.letter }, readings?.(fed)),
        breaker: district.parts.length > 0,
      })),
    );
  const isBoosted = ({ stage }: TrackDistrict): boolean => stage.kind === 'booster';
  const loops = runsOf(sheet, 'reversing').flatMap(([first]) => first ?? []);
  const bridges = runsOf(sheet, 'turntable').flatMap(([first]) => first ?? []);
  const apart = runsOf(sheet, 'programming').flatMap(([first]) => first ?? []);
  return [
    ...atGaps('first-look', isBoundary),
    ...atGaps('jumper-test', (gap) => beyondOf(gap) !== 'inside'),
    ...atGaps('card-through-gaps', (gap) => beyondOf(gap) === 'inside'),
    ...inDistricts('each-stage-alone', undefined, isBoosted),
    ...atGaps('two-lamps', isFedApart),
    ...atGaps('meter-two-stages', isBoundary, (gap) => voltsAt(gap, told)),
    ...inFed('load-test', (fed) => loadTestIn(fed, told)),
    ...inFed('coin-near'),
    ...inFed('coin-far'),
    ...inDistricts('vehicle-in-far-part', undefined, isBoosted),
    ...apart.map(({ id }) => row('programming-track', { kind: 'section', section: id })),
    ...loops.map(({ id }) => row('short-locomotive-through-loop', { kind: 'section', section: id })),
    ...bridges.map(({ id }) => overBridge(id)),
    ...atGaps('crossing', isFedApart),
    ...inDistricts(
      'meter-supply-current',
      (district) => ampsIn(district, told),
      (district) => ampsIn(district, told).length > 0,
    ),
    row('traffic', { kind: 'all' }),
  ];
}

/** A bridge has no turnout at its entry, and is tried turned half round as well. */
function overBridge(section: string): TestRow {
  const through = row('short-locomotive-through-loop', { kind: 'section', section }, [], true);
  const { 'trips-at-turnout': _, ...leads } = through.leads;
  return { ...through, leads, options: through.options.filter((option) => option !== 'trips-at-turnout') };
}

/** Rails of the old part and of the new one with nothing on them, and how far apart they may stand. */
function voltsAt(gap: PlanGap, { power, track }: Tested): Reading[] {
  const sides = sidesOf(gap, track);
  const [old, other] = [sides?.old, sides?.new].map(
    (side) => power.units.find(({ district }) => district === side?.letter)?.idle,
  );
  if (old === undefined || other === undefined) return [];
  return [
    { what: 'rails', unit: 'V', ...metersShow(old) },
    { what: 'other-rails', unit: 'V', ...metersShow(other) },
    { what: 'step', unit: 'V', from: 0, to: STEP_LIMIT },
  ];
}

function loadTestIn({ letter }: Fed, { wires }: Tested): Reading[] {
  const test = wires.find(({ district }) => district === letter)?.test;
  if (test === undefined) return [];
  return [
    { what: 'lost-near', unit: 'share', from: 0, to: test.near },
    { what: 'lost-far', unit: 'share', from: 0, to: test.far },
    { what: 'no-trip', unit: 'share', from: test.mayLose, to: 1 },
  ];
}

/** In the lead of a d.c. supply while trains run. */
function ampsIn({ letter }: Pick<TrackDistrict, 'letter'>, { power }: Tested): Reading[] {
  const { lead, stage } = power.units.find(({ district }) => district === letter) ?? {};
  return lead === undefined
    ? []
    : [{ what: stage?.ownUseAmps === undefined ? 'amps-untold' : 'amps', unit: 'A', ...lead }];
}
