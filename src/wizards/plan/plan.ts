// From a layout sheet to the whole plan: what it comes to, where to cut, what feeds what, the work in its order, the tests, the parts.
import type { MeasureSystem } from '../../engine/index.ts';
import type { Sheet } from '../sheet/index.ts';
import { fleetOf } from '../sheet/index.ts';
import type { Parts, WireLabels } from './parts.ts';
import { labelsOf, partsOf, unplacedBreakers } from './parts.ts';
import type { Power } from './power.ts';
import { powerOf } from './power.ts';
import type { PlanStep } from './steps.ts';
import { stepsOf } from './steps.ts';
import type { SubDistricts } from './sub-districts.ts';
import { subDistrictsOf } from './sub-districts.ts';
import type { TestRow } from './test-sheet.ts';
import { testSheetOf } from './test-sheet.ts';
import type { Track, TrackProblem } from './track.ts';
import { fedIn, isOnlyNamed, trackOf } from './track.ts';
import type { Unread } from './unread.ts';
import { unreadIn } from './unread.ts';
import type { BusReuse, DistrictWires } from './wires.ts';
import { busReuse, wiresOf } from './wires.ts';

export interface Plan extends Parts {
  readonly sheet: Sheet;
  readonly track: Track;
  /** Nothing can be planned before these are put right. */
  readonly stops: readonly TrackProblem[];
  readonly unread: readonly Unread[];
  readonly power: Parts['power'];
  readonly judged: Power;
  readonly wires: readonly DistrictWires[];
  readonly busReuse: BusReuse | undefined;
  readonly steps: readonly PlanStep[];
  readonly tests: readonly TestRow[];
  readonly labels: readonly WireLabels[];
  readonly subDistricts: readonly SubDistricts[];
  /** What keeps “nothing has to be changed” from being said where no remedy is due: a supply only perhaps trips its unit, or something is named below. */
  readonly but: 'trip-perhaps' | 'named-below' | undefined;
}

/** Plans a sheet; wires are told in sizes that are sold where people measure so. Never throws on a sheet that was read. */
export function planOf(sheet: Sheet, system: MeasureSystem = 'metric'): Plan {
  const track = trackOf(sheet);
  const stops = track.problems.filter((problem) => !isOnlyNamed(problem));
  const unread = unreadIn(sheet);
  const fleet = fleetOf(sheet);
  const districts = stops.length > 0 ? [] : track.districts;
  const judged = powerOf({ sheet, districts, unread, fleet });
  const wires = districts.flatMap((district) => {
    const unit = judged.units.find(({ district: letter }) => letter === district.letter);
    return fedIn(district).map((fed) => wiresOf(sheet, fed, district.stage, unit, track.gaps, system));
  });
  const again = busReuse(sheet, wires);
  const built = { sheet, track, power: judged, wires, again };
  const whole = stops.length === 0;
  const listed: Parts = whole ? partsOf(built) : { parts: [], power: unread.length > 0 ? 'unread' : 'remedy-first' };
  const fuses = listed.parts.some(({ id }) => id === 'fuse');
  return {
    ...listed,
    ...{ sheet, track, stops, unread, judged, wires },
    steps: whole ? stepsOf({ ...built, fuses }) : [],
    tests: whole ? testSheetOf(built) : [],
    labels: labelsOf(districts, wires),
    busReuse: again,
    but: butOf(judged, track),
    subDistricts: districts.map((district) => subDistrictsOf(district, sheet)),
  };
}

/** Track that is in pieces or unused, and breakers that have no place yet. */
function butOf({ units }: Power, { problems, districts }: Track): Plan['but'] {
  if (units.some(({ trip }) => trip.kind === 'perhaps')) return 'trip-perhaps';
  const isNamed = problems.some(isOnlyNamed) || districts.some((one) => unplacedBreakers(one) > 0);
  return isNamed ? 'named-below' : undefined;
}
