// Faults that mostly answer alike; used to write the checks shorter. No meaning beyond that.
import type { FaultId } from './faults.ts';

const group = <const T extends readonly FaultId[]>(...faults: T): T => faults;

/** The far part gets no power. */
export const UNFED = group('feed-missing', 'feed-wire-broken', 'wrong-output', 'booster-off');
/** Power, but no commands. */
export const NO_SIGNAL = group('link-missing', 'link-wrong-socket', 'link-faulty');
/** The two sides of the gap have their rails the other way round. */
export const PHASE = group('feed-reversed', 'link-inverted');
/** The two sides of the gap have unlike rail voltages. */
export const STEP = group('supplies-swapped', 'unlike-supplies', 'low-setting');
/** The two parts are still joined on a rail or on both. */
export const JOINED = group('forgotten-path', 'old-feeder-left', 'gap-closed');
/** More is drawn than can be given. */
export const LOAD = group('overload-total', 'stage-limit', 'overload-district', 'supply-limit', 'lamps');
/** A reversing section, or a route that works as one. */
export const LOOP = group(
  'loop-not-isolated',
  'loop-too-short',
  'loop-no-device',
  'reverser-grading',
  'two-auto-reversers',
  'reverse-route',
);
/** Metal of a vehicle joins what must stay apart. */
export const WHEELS = group('wheelset-short', 'wheelset-at-turnouts', 'wheel-bridges-frog', 'metal-bodies');
/** A short that needs no vehicle. */
export const STANDING_SHORT = group('metal-across', 'moving-contact', 'crossed-feeder', 'live-frog');
/** A resistive path between the rails, below the trip level. */
export const LEAKS = group('leak', 'wet-ballast');
/** Resistance between the unit and the train. */
export const DROP = group('thin-wire', 'few-feeds', 'loose-joiner');
/** Bad contact at or near the gap. */
export const CONTACT = group('dirty', 'joint-step', 'long-dead-gap', 'pickup');
/** The protection does not act as it should. */
export const PROTECTION = group('high-trip', 'slow-trip', 'breaker-setting');
/** Only turnouts, signals and other accessories suffer. */
export const ACCESSORY = group(
  'sagging-accessories',
  'accessory-reset',
  'accessory-supply-weak',
  'accessory-address',
  'accessory-wiring',
  'accessory-polarity',
);
/** Nothing is wrong but the test. */
export const MISLED = group('stored-energy', 'still-straddling', 'already-fed');
