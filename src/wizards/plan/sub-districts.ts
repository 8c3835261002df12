// What only breakers give: one short does not stop everyone. Where they part a district is for the sheet to say; where it does not, the
// plan says which joints would do.
import type { DivisionProblem } from '../../engine/index.ts';
import { divide } from '../../engine/index.ts';
import { divisionProblem } from '../division/index.ts';
import type { Joint, Sheet } from '../sheet/index.ts';
import { breakerUnder, unplacedBreakers } from './parts.ts';
import { tripOf } from './power.ts';
import type { Fed, TrackDistrict } from './track.ts';

export interface SubDistricts {
  readonly district: string;
  /** What a breaker may trip at, amperes; undefined while the unit's trip current is not read. */
  readonly tripAtMost: number | undefined;
  /** Seconds within which it should open. */
  readonly seconds: { readonly from: number; readonly to: number };
  /** Breakers that the sheet has there. */
  readonly breakers: number;
  /** Those of them for which it has no gap. */
  readonly unplaced: number;
  /** The sub-districts into which gaps part it. */
  readonly parts: readonly Fed[];
  /** With breakers and no gap between them: joints that would part it in pieces about alike, to choose from. Undefined: nobody asks. */
  readonly couldCut: readonly Joint[] | undefined;
  /** Fewer or less awkward ones, whose pieces are less alike; undefined where there are none. */
  readonly couldCutFewer: readonly Joint[] | undefined;
}

export function subDistrictsOf(district: TrackDistrict, sheet: Sheet): SubDistricts {
  const { letter, stage, parts } = district;
  const { breakers = 0 } = stage;
  const trip = tripOf(stage);
  const { tripAtMost, seconds } = breakerUnder(trip ?? 0, stage.tripSeconds);
  const asked = breakers > 0 && parts.length === 0;
  const [even, fewer] = asked ? waysToPart(district, sheet, Math.max(2, breakers)) : [];
  return {
    district: letter,
    tripAtMost: trip === undefined ? undefined : tripAtMost,
    seconds,
    breakers,
    unplaced: unplacedBreakers(district),
    parts,
    couldCut: asked ? (even?.joints ?? []) : undefined,
    couldCutFewer: fewer?.joints,
  };
}

/** Pieces are about alike where none is so much nearer to nothing, or to all, than an even share. Source: common-practice. */
const ALIKE = { tolerance: 0.4 } as const;
/** Where that cannot be had, a sub-district has at least so much of an even share. Source: own-choice. */
const WORTH_A_BREAKER = { least: 0.4 } as const;
/** More sections than this are not looked through here. Source: own-choice. */
const MOST_SECTIONS = 60;

interface Parted {
  readonly joints: readonly Joint[];
  readonly cost: number;
}

/** The fewest and least awkward gaps that part the district in so many pieces: first into pieces about alike, then any that cost less. */
function waysToPart({ sections }: TrackDistrict, sheet: Sheet, pieces: number): readonly Parted[] {
  if (sections.length < pieces || sections.length > MOST_SECTIONS) return [];
  const isHere = (id: string): boolean => sections.some((one) => one.id === id);
  const joints = sheet.joints.filter(({ from, to }) => isHere(from) && isHere(to));
  const told = sections.some(({ traffic }) => traffic > 0);
  const here = sections.map((one) => (told ? one : { ...one, traffic: one.metres }));
  const { problem, joints: placed } = divisionProblem({ sections: here, joints });
  const stages: DivisionProblem['stages'] = Array.from({ length: pieces }, () => ANY);
  const parted = (options: Parameters<typeof divide>[1]): readonly Parted[] => {
    const found = divide({ ...problem, stages }, options);
    if (found.kind !== 'divided') return [];
    const { cost, cuts } = found.division;
    return [{ cost, joints: cuts.flatMap((at) => placed[at] ?? []) }];
  };
  const [first, second] = [ALIKE, WORTH_A_BREAKER].flatMap(parted);
  if (first === undefined) return parted({});
  return second !== undefined && second.cost < first.cost ? [first, second] : [first];
}

/** One unit carries all of them. */
const ANY = { bears: () => true };
