// The two charts along a track with the levels they are read against: volts at a train, amperes of a short.
import type { ShortAlong, TrainAlong } from '../../../engine/index.ts';
import { sureTrip, trainLevels, weakStretches } from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import type { Feed } from './Along.tsx';
import { Along } from './Along.tsx';

interface Shared {
  readonly id: string;
  readonly caption: string;
  /** Metres of track. */
  readonly length: number;
  readonly feeds: readonly Feed[];
  readonly say: Say;
  readonly numbers: Numbers;
}

/** Air below the lowest line, as a share of what stands above it, and above the highest; enough for a label. */
const AIR = { below: 0.2, above: 1.1 } as const;
/** Where a short draws more than so many trip currents an even scale would lay the trip current on the ground. */
const MOST_TRIPS = 8;

/** A picture from its lowest value, with air below for a label, to its top. */
const withAir = (low: number, top: number) => ({ from: low - AIR.below * (top - low), to: top });

/** What reaches a train wherever it stands. `volts`: without load; `at`: where it stands now, metres, and what it has there. */
export function VoltsAlong({
  along,
  volts,
  spot,
  ...rest
}: Shared & {
  readonly along: TrainAlong;
  readonly volts: number;
  readonly spot: { readonly at: number; readonly volts: number };
}) {
  const { say, numbers } = rest;
  const { wanted, least } = trainLevels(volts, along.stageDrop);
  const lowest = Math.min(along.worst.volts, least);
  return (
    <Along
      {...common(rest)}
      title={say('along-voltage-title')}
      points={along.points.map(({ at, volts: value }) => ({ at, value }))}
      levels={[
        { value: wanted, label: say('along-level-wanted'), strong: false },
        { value: least, label: say('along-level-most'), strong: true },
      ]}
      range={withAir(lowest, volts)}
      spot={{ at: spot.at, value: spot.volts, label: numbers.voltsExactly(spot.volts) }}
      weak={[]}
      show={(value) => numbers.voltsExactly(value)}
      valueColumn={say('along-volts')}
    />
  );
}

/** What a short draws wherever it is, against a trip current; `show` writes amperes. */
export function ShortsAlong({
  along,
  trip,
  spot,
  show,
  ...rest
}: Shared & {
  readonly along: ShortAlong;
  readonly trip: number;
  readonly spot: { readonly at: number; readonly amps: number };
  readonly show: (amps: number) => string;
}) {
  const { say } = rest;
  const sure = sureTrip(trip);
  const highest = Math.max(sure, ...along.points.map(({ amps }) => amps));
  const doubling = highest > MOST_TRIPS * trip;
  const levels = [trip, along.weakest.amps];
  return (
    <Along
      {...common(rest)}
      caption={doubling ? `${rest.caption} ${say('along-doubling')}` : rest.caption}
      title={say('along-short-title')}
      points={along.points.map(({ at, amps: value }) => ({ at, value }))}
      levels={[
        { value: trip, label: say('along-level-trip', { amps: show(trip) }), strong: true },
        { value: sure, label: say('along-level-margin', { amps: show(sure) }), strong: false },
      ]}
      doubling={doubling}
      range={{ from: doubling ? Math.min(...levels) / 2 : 0, to: highest * AIR.above }}
      spot={{ at: spot.at, value: spot.amps, label: show(spot.amps) }}
      weak={weakStretches(along, trip)}
      show={show}
      valueColumn={say('along-amps')}
    />
  );
}

const common = ({ numbers, ...rest }: Shared) => ({
  ...rest,
  metres: (value: number) => numbers.metres(value),
  axis: rest.say('along-axis'),
});
