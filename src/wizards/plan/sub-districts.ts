// What only breakers give: one short does not stop everyone. Where they part a district is for the sheet to say; where it does not, the
// plan says which joints would do.
import type { DivisionProblem } from '../../engine/index.ts';
import { divide } from '../../engine/index.ts';
import { divisionProblem } from '../division/index.ts';
import type { Joint, Sheet } from '../sheet/index.ts';
import { breakerUnder } from './parts.ts';
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
  /** The sub-districts into which gaps part it. */
  readonly parts: readonly Fed[];
  /** With breakers and no gap between them: the fewest joints that would part it, to choose from. Undefined: nobody asks. */
  readonly couldCut: readonly Joint[] | undefined;
}

export function subDistrictsOf(district: TrackDistrict, sheet: Sheet): SubDistricts {
  const { letter, stage, parts } = district;
  const { breakers = 0 } = stage;
  const trip = tripOf(stage);
  const { tripAtMost, seconds } = breakerUnder(trip ?? 0, stage.tripSeconds);
  return {
    district: letter,
    tripAtMost: trip === undefined ? undefined : tripAtMost,
    seconds,
    breakers,
    parts,
    couldCut: breakers === 0 || parts.length > 0 ? undefined : couldCut(district, sheet, Math.max(2, breakers)),
  };
}

/** A sub-district has at least so much of what would be its even share of the traffic. Source: own-choice. */
const LEAST_PART = 0.4;
/** More sections than this are not looked through here. Source: own-choice. */
const MOST_SECTIONS = 60;

/** The fewest and least awkward gaps that part the district in so many pieces, each with its part of the traffic where that can be had. */
function couldCut({ sections }: TrackDistrict, sheet: Sheet, pieces: number): readonly Joint[] {
  if (sections.length < pieces || sections.length > MOST_SECTIONS) return [];
  const isHere = (id: string): boolean => sections.some((one) => one.id === id);
  const joints = sheet.joints.filter(({ from, to }) => isHere(from) && isHere(to));
  const told = sections.some(({ traffic }) => traffic > 0);
  const here = sections.map((one) => (told ? one : { ...one, traffic: one.metres }));
  const { problem, joints: placed } = divisionProblem({ sections: here, joints });
  const stages: DivisionProblem['stages'] = Array.from({ length: pieces }, () => ANY);
  for (const options of [{ least: LEAST_PART }, {}]) {
    const found = divide({ ...problem, stages }, options);
    if (found.kind === 'divided') return found.division.cuts.flatMap((at) => placed[at] ?? []);
  }
  return [];
}

/** One unit carries all of them. */
const ANY = { bears: () => true };
