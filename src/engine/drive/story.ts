// What a drive across the gap comes to: what happens there, by name and with its values, read off the table.
import type { StageIndex } from '../table/index.ts';
import { DRIVE_RETRY, DRIVE_TRIP } from './layout.ts';
import type { DriveFrame, Tripped } from './run.ts';
import { FELT, throughTrain, wayOf } from './run.ts';

/** One thing that happens: its words are `drive-<id>`. Letters name the parts and their stages; amperes and seconds are numbers. */
export interface Happening {
  readonly id: string;
  readonly values: {
    readonly stage?: 'A' | 'B';
    readonly other?: 'A' | 'B';
    readonly from?: 'A' | 'B';
    readonly to?: 'A' | 'B';
    readonly amps?: number;
    readonly trip?: number;
    readonly seconds?: number;
  };
}

/** What a stage may give beyond its own trains before another part must be hanging on it, amperes. Source: from-memory. */
const BEYOND_OWN = 0.3;
/** What a vehicle in its part, and a capacitor across the rails, may draw besides, amperes. Source: from-memory. */
const WITH_VEHICLE = 0.6;
const WITH_CAPACITOR = 0.3;
/** From here on a stage still feeds something, amperes. Source: from-memory. */
const STILL_GIVES = 0.2;

const STAGES = [0, 1] as const;
const letter = (stage: StageIndex): 'A' | 'B' => (stage === 0 ? 'A' : 'B');
const other = (stage: StageIndex): StageIndex => (stage === 0 ? 1 : 0);

/** One or two sentences: what happens with the train where it is. */
export function happenings(frame: DriveFrame): Happening[] {
  const tripped = STAGES.filter((stage) => isWorthAWord(frame, stage));
  if (tripped.length > 0) return tellTrips(frame, tripped);
  const strained = tellStrain(frame);
  if (strained.length > 0) return strained;
  if (frame.where === 'across') return tellAcross(frame);
  if (frame.where === 'dead') return [told('dead-piece')];
  const inside = tellInside(frame, frame.where === 'a' ? 0 : 1);
  return inside.some(({ id }) => id === 'fed-by-other') ? inside : [...inside, ...tellJoined(frame)];
}

// A trip is spoken of while it lasts, and where it happened also while the stage tries again.
function isWorthAWord({ trips, where, table }: DriveFrame, stage: StageIndex): boolean {
  const trip = trips[stage];
  return trip !== undefined && (trip.where === where || table.world.stages[stage].mode !== 'ready');
}

function tellStrain({ shot }: DriveFrame): Happening[] {
  const amps = Math.max(...shot.stages.map((stage) => stage.amps));
  return amps > DRIVE_TRIP ? [told('strain', { amps, trip: DRIVE_TRIP })] : [];
}

function tellTrips(frame: DriveFrame, tripped: readonly StageIndex[]): Happening[] {
  const [first = 0] = tripped;
  const trip = frame.trips[first];
  const both = tripped.length === 2;
  const values = {
    stage: letter(first),
    other: letter(other(first)),
    amps: trip?.amps ?? 0,
    trip: DRIVE_TRIP,
    seconds: DRIVE_RETRY,
  };
  const because = trip?.because ?? 'over';
  const state = hereIs(frame);
  if (trip?.byTrain === true && (trip.where === 'across' || both)) {
    const crosses = frame.where === 'across' ? 'across-trips' : 'across-tripped';
    const happened = told(`${both ? 'both-trip' : crosses}-${because}`, values);
    const again = told(both ? 'both-retry' : 'retries', values);
    return frame.where === 'across' ? [happened, again] : [happened, told(state, values)];
  }
  return [told(byItself(frame, trip), values), told(state, values)];
}

function byItself({ settings }: DriveFrame, trip: Tripped | undefined): string {
  if (trip?.because === 'lifted') return 'trips-lifted';
  if (trip?.byTrain !== true) return 'trips-over';
  return settings.vehicle === 'shorted' ? 'shorted-trips' : 'trips-with-train';
}

/** How the train does after a trip. */
function hereIs({ shot: { cars } }: DriveFrame): string {
  return cars[0]?.lit === true ? 'train-lit' : 'train-dark';
}

function tellAcross(frame: DriveFrame): Happening[] {
  const { shot, settings } = frame;
  const lit = shot.cars[0]?.lit ?? false;
  if (!lit) return [told(settings.vehicle === 'split' ? 'across-split' : 'across-dark')];
  const { amps, from } = throughTrain(frame);
  const values = { amps, from: from === 'a' ? 'A' : 'B', to: from === 'a' ? 'B' : 'A' } as const;
  if (amps < FELT) return [told('across-nothing')];
  const to = shot.stages[from === 'a' ? 1 : 0];
  const gives = (to?.amps ?? 0) > STILL_GIVES;
  return [told('across-flow', values), told(gives ? 'across-shares' : 'across-carries', values)];
}

function tellInside(frame: DriveFrame, stage: StageIndex): Happening[] {
  const { shot, settings } = frame;
  const [car] = shot.cars;
  const state = shot.stages[stage]?.state;
  const values = { stage: letter(stage), other: letter(other(stage)), seconds: DRIVE_RETRY };
  if (car === undefined) return [];
  if (!car.lit) {
    const runsOn = settings.vehicle === 'stored' && car.speed !== 0;
    return [told(runsOn ? 'runs-on-stored' : `dark-${whyDark(state)}`, values)];
  }
  if (state !== 'driving' && state !== 'holding') return [told('fed-by-other', values)];
  if (car.hears !== 'commands') return [told(car.hears === 'garbled' ? 'garbled' : 'deaf', values)];
  if (settings.vehicle === 'coach') return [told('coach-lit', values)];
  return [told(wayOf(frame) === 0 ? 'stands-well' : 'runs-well', values)];
}

function whyDark(state: string | undefined): 'off' | 'no-signal' | 'not-fed' {
  if (state === 'no-power') return 'off';
  return state === 'no-signal' ? 'no-signal' : 'not-fed';
}

// With no train across, a stage that gives more than its own trains draw feeds the other part by some other way.
function tellJoined({ shot, settings, where }: DriveFrame): Happening[] {
  const amps = (stage: StageIndex): number => shot.stages[stage]?.amps ?? 0;
  const own = (stage: StageIndex): number => {
    const car = where === (stage === 0 ? 'a' : 'b') ? WITH_VEHICLE : 0;
    return (
      (stage === 0 ? settings.loadA : settings.loadB) + car + (stage === 1 && settings.capacitor ? WITH_CAPACITOR : 0)
    );
  };
  const giver = STAGES.find((stage) => amps(stage) > own(stage) + BEYOND_OWN);
  if (giver === undefined) return [];
  return [told('joined', { stage: letter(giver), other: letter(other(giver)) })];
}

const told = (id: string, values: Happening['values'] = {}): Happening => ({ id, values });
