// Causes that look alike from afar: what a practitioner tells them apart by speaks clearly for the one and against the other.
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../src/engine/at-once.ts';
import { believeInParts } from '../../src/engine/diagnosis/sign-belief.ts';
import { signTables } from '../../src/engine/diagnosis/sign-tables.ts';
import type { CauseId } from '../../src/wizards/put-it-right/model/causes/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import type { SignId } from '../../src/wizards/put-it-right/model/signs.ts';

// Each sign read as it is, by somebody who never slips.
const TABLES = atOnce(
  signTables(
    {
      ...SIGN_MODEL,
      openings: [],
      checks: SIGN_MODEL.signs.map(({ id, values }) => ({
        id,
        minutes: 1,
        tool: 'eyes',
        risk: 0,
        needs: [],
        source: 'memory',
        reads: id,
        options: values,
        reading: Object.fromEntries(values.map((value) => [value, value])),
      })),
    },
    { memory: 0, eye: 0, instrument: 0 },
  ),
);

/** How much likelier a layout shows this under the one cause than under the other. */
function speaksFor(sign: SignId, value: string, cause: CauseId, other: CauseId): number {
  const { likelihood } = atOnce(believeInParts(TABLES, [{ check: sign, option: value }]));
  const chance = (id: CauseId): number => likelihood[SIGN_MODEL.causes.findIndex((one) => one.id === id)] ?? 0;
  return chance(cause) / chance(other);
}

const CLEARLY = 3;

const NEIGHBOURS: readonly (readonly [
  says: string,
  sign: SignId,
  value: string,
  cause: CauseId,
  ...others: readonly CauseId[],
])[] = [
  ['lit coaches lifted', 'fewer', 'lit-do-it', 'lamps', 'overload-total', 'stage-limit', 'overload-district'],
  ['one locomotive alone does it', 'fewer', 'one-does-it', 'binding-locomotive', 'overload-total', 'supply-limit'],
  ['well with trains moved over', 'moved-trains', 'cured', 'overload-district', 'overload-total', 'binding-locomotive'],
  ['the supply hot, not the unit', 'hot', 'supply', 'supply-heat', 'stage-heat'],
  ['the unit starts anew', 'unit-shows', 'restarts', 'supply-hiccup', 'overload-total', 'stage-limit'],
  ['a room lamp dips', 'mains', 'dips', 'mains-sag', 'supply-hiccup', 'supply-limit'],
  ['nothing comes back after a short', 'when', 'after-a-short', 'restart-load', 'inrush', 'overload-total'],
  ['volts lost in the wire', 'loss', 'bus', 'thin-wire', 'few-feeds', 'loose-joiner'],
  ['volts lost along the rails', 'loss', 'rails', 'few-feeds', 'thin-wire', 'loose-joiner'],
  ['volts lost at one joint', 'loss', 'joint', 'loose-joiner', 'thin-wire', 'few-feeds'],
  ['a plastic joiner found', 'contact', 'insulated', 'joiner-forgotten', 'dead-joint', 'long-dead-gap'],
  ['pressing the joint helps', 'contact', 'flickers', 'dead-joint', 'joiner-forgotten', 'dirty'],
  ['a wagon pushed by hand catches', 'contact', 'plain-step', 'joint-step', 'dirty', 'long-dead-gap'],
  ['only one way, lit', 'way', 'one-way', 'brake-section', 'joiner-forgotten', 'dirty'],
  ['late, with marks', 'protection-near', 'late', 'slow-trip', 'high-trip', 'breaker-setting'],
  ['breakers wired unlike', 'feed-wires', 'wrong-socket', 'breaker-wired-unlike', 'breaker-setting', 'stage-order'],
  ['one rail not cut', 'cut', 'one-joined', 'loop-not-isolated', 'loop-too-short', 'loop-no-device'],
  ['long trains only', 'loop', 'trips-long-only', 'loop-too-short', 'loop-not-isolated', 'loop-no-device'],
  ['the reverser stays silent', 'reverser', 'silent', 'reverser-grading', 'loop-not-isolated', 'loop-no-device'],
  [
    'the reversers answer each other',
    'reverser',
    'chatters',
    'two-auto-reversers',
    'loop-no-device',
    'reverser-grading',
  ],
  ['by one route only', 'way', 'one-route', 'reverse-route', 'loop-no-device', 'feed-reversed'],
  [
    'no cut beyond the frog',
    'turnout-cuts',
    'missing',
    'live-frog',
    'frog-gap-closed',
    'moving-contact',
    'metal-across',
  ],
  ['a cut in a turnout closed', 'turnout-cuts', 'closed', 'frog-gap-closed', 'live-frog', 'metal-across'],
  ['one piece shorts by itself', 'piece-alone', 'shorted', 'track-piece-faulty', 'metal-across', 'crossed-feeder'],
  ['gone with one feeder', 'short', 'feeder', 'crossed-feeder', 'metal-across', 'moving-contact', 'frog-gap-closed'],
  ['one setting only', 'setting-matters', 'short-in-one', 'moving-contact', 'metal-across', 'crossed-feeder'],
  ['varnish at the frog cures', 'varnish', 'cured', 'wheel-bridges-frog', 'frog-unit-slow', 'frog-cross-district'],
  ['its frog wire unplugged', 'unplugging', 'frog-wire', 'frog-cross-district', 'wheel-bridges-frog', 'reverse-route'],
  ['wet or freshly glued', 'along-the-track', 'wet', 'wet-ballast', 'leak', 'detector-false'],
  ['the breaker opens, the unit does not', 'unit-shows', 'only-breaker', 'fast-breaker-shows', 'breaker-setting'],
  ['on the turntable', 'where', 'turntable', 'turntable-wipers', 'dead-joint', 'dirty'],
  [
    'low everywhere, at the unit too',
    'settings',
    'volts-low',
    'unit-set-low',
    'few-feeds',
    'supply-limit',
    'mains-sag',
  ],
  ['its frog wire pulled', 'unplugging', 'frog-wire', 'frog-upsets-motor', 'accessory-wiring', 'accessory-reset'],
  ['wrong with either setting', 'unplugging', 'frog-wire', 'frog-wrong-rail', 'wheel-bridges-frog', 'live-frog'],
  ['right by hand', 'control', 'only-by-computer', 'program-cuts-pulse', 'accessory-supply-weak', 'accessory-wiring'],
  ['the computer alone is silent', 'control', 'computer-silent', 'computer-silent', 'bus-weak', 'handheld-lost'],
  [
    'well without one device',
    'handheld-exchanged',
    'with-a-device',
    'accessory-on-bus',
    'bus-weak',
    'bus-supply-missing',
  ],
  ['a number of blinks', 'unit-shows', 'code', 'unit-guards-itself', 'stage-defect', 'false-short', 'metal-across'],
  ['a fault with the track unplugged', 'short', 'only-shown', 'false-short', 'metal-across', 'stage-defect', 'inrush'],
  [
    'it is told to wait',
    'settings',
    'stays-off',
    'waits-for-button',
    'unit-cuts-out',
    'stage-defect',
    'breaker-setting',
  ],
  ['it reverses to and fro', 'reverser', 'chatters', 'parked-across-loop', 'loop-no-device'],
  ['well with vehicles lifted', 'short', 'vehicle', 'parked-across-loop', 'loop-too-short', 'reverser-grading'],
  ['no volts at its frog', 'frog-feed', 'none', 'frog-not-fed', 'long-dead-gap', 'dirty', 'joiner-forgotten', 'pickup'],
  [
    'its frog has none with one setting',
    'frog-feed',
    'one-setting',
    'frog-not-fed',
    'long-dead-gap',
    'turnout-routing',
  ],
  ['its frog is plastic', 'frog-feed', 'plastic', 'long-dead-gap', 'frog-not-fed', 'frog-wrong-rail'],
  [
    'set below what trains draw',
    'settings',
    'trip-low',
    'breaker-low',
    'fast-breaker-shows',
    'wheelset-short',
    'high-trip',
  ],
  ['one, and only there', 'one-loco', 'at-one-place', 'wheel-bridges-frog', 'wheelset-short', 'loco-short-inside'],
  ['only in the cold', 'weather', 'cold', 'dead-joint', 'gap-closed', 'pickup', 'device-open'],
];

describe('Told apart from its neighbours', () => {
  const pairs = NEIGHBOURS.flatMap(([says, sign, value, cause, ...others]) =>
    others.map((other) => ({ says, sign, value, cause, other })),
  );
  test.each(pairs)('$says: $cause, not $other', ({ sign, value, cause, other }) => {
    expect(speaksFor(sign, value, cause, other)).toBeGreaterThan(CLEARLY);
  });
});
