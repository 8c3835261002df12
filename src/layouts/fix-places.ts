// Where on the layout each fix is done: the list of all fixes goes by it, as a person stands in front of a thing and not of a question.

/** Fixes by their place, in the order in which current comes to a train. */
export const FIX_PLACES = {
  supply: [
    ...[
      'larger-supply',
      'leds-and-larger-supply',
      'supply-too-small',
      'not-enough',
      'power-is-enough',
      'read-both-labels',
    ],
    ...[
      'wrong-supply',
      'wrong-supply-kind',
      'supply-heat',
      'supply-defect',
      'mains-sag',
      'mains-off',
      'house-protection',
      'tingle',
      'two-sources',
      'hidden-common',
    ],
    ...[
      'larger-to-booster',
      'larger-to-command-station',
      'supplies-either-way',
      'two-supplies-alike',
      'higher-rails-to-command-station',
    ],
    ...[
      'exchange-a-supply',
      'regulated-supply',
      'supply-cannot-trip',
      'volts-too-low',
      'switch-off-now',
      'on-again-after-heat',
    ],
  ],
  unit: [
    ...[
      'booster-with-freed-supply',
      'booster-with-own-supply',
      'booster-near-load',
      'more-districts',
      'booster-off',
      'booster-role',
    ],
    ...[
      'no-signal',
      'no-reference',
      'stage-order',
      'stage-heat',
      'stage-defect',
      'unit-cuts-out',
      'skew',
      'into-control-bus',
      'handheld-lost',
      'control-bus-weak',
      'control-bus-supply',
      'radio-disturbed',
      'computer-acts',
      'wrong-output',
      'socket-damaged',
    ],
    ...['connect-a-booster', 'divide-the-track', 'load-test-and-coin', 'measure-the-amperes'],
  ],
  settings: [
    ...[
      'lower-trip-level',
      'protection-set-wrong',
      'rail-voltage-too-high',
      'set-both-outputs-equal',
      'measure-rail-volts-first',
    ],
    ...[
      'voltage-step',
      'volts-too-high',
      'auto-reverse-off',
      'cutout-mismatch',
      'wrong-format',
      'stop-active',
      'breakers-and-sub-districts',
      'breakers-alike',
      'fast-breaker',
      'reverser-grading',
    ],
  ],
  wires: [
    ...[
      'thicker-bus',
      'more-feeders',
      'feed-bus-from-middle',
      'wiring-good',
      'wiring-not-known',
      'no-feed',
      'few-feeds',
      'crossed-feeder',
      'board-plug',
      'device-open',
      'fuse-blown',
      'old-switch',
      'centre-swapped',
    ],
    ...['thin-wire', 'long-bus', 'leftover-wiring', 'shared-wire', 'suppressor'],
    ...['lay-a-feeder', 'thicker-feeders', 'bus-as-a-ring', 'pair-to-the-middle'],
  ],
  gap: [
    ...[
      'one-rail',
      'gap-closed',
      'reversed',
      'masked-reversal',
      'second-path',
      'do-not-stop-across-the-gap',
      'long-dead-gap',
      'joint-step',
      'test-misled',
    ],
    ...['lopsided-split', 'program-bridge', 'frog-cross-district', 'gap-both-rails', 'prove-the-gap'],
  ],
  track: [
    ...[
      'bad-joiner',
      'joiner-forgotten',
      'brake-section',
      'track-piece-faulty',
      'dirty',
      'metal-across',
      'leak',
      'live-frog',
      'wheel-bridges-frog',
      'turnout-routing',
      'frog-gap-closed',
      'frog-unit-slow',
      'detector-drop',
      'detector-false',
      'detector-crosstalk',
    ],
    ...['reverse-route', 'loop-no-device', 'loop-not-isolated', 'loop-too-short', 'two-auto-reversers', 'turntable'],
  ],
  trains: [
    ...[
      'fewer-moving',
      'mute-and-park',
      'fewer-trains-there',
      'put-on-in-two-groups',
      'calm-the-consumption',
      'filament-lamps',
      'inrush',
      'restart-load',
    ],
    ...['binding-locomotive', 'wheelset-short', 'metal-bodies', 'pickup', 'address', 'analogue-mode'],
    ...[
      'loco-short-inside',
      'loco-loose-contact',
      'decoder-damaged',
      'decoder-muddled',
      'decoder-disturbs',
      'consist-left-over',
      'address-zero',
      'motor-noise',
      'cannot-be-read',
      'programs-others',
    ],
  ],
  accessories: [
    'accessory-address',
    'accessory-polarity',
    'accessory-reset',
    'accessory-supply-weak',
    'accessory-wiring',
    'accessory-short',
    'accessory-random',
    'sagging-accessories',
  ],
  whole: ['something-else', 'out-of-scope-analogue', 'out-of-scope-battery', 'out-of-scope-three-rail'],
} as const;

type FixPlace = keyof typeof FIX_PLACES;

const PLACES: ReadonlyMap<string, FixPlace> = new Map(
  Object.entries(FIX_PLACES).flatMap(([place, fixes]) =>
    isPlace(place) ? fixes.map((fix): [string, FixPlace] => [fix, place]) : [],
  ),
);

function isPlace(text: string): text is FixPlace {
  return text in FIX_PLACES;
}

/** The place of a fix. */
export const placeOf = (fix: string): FixPlace => PLACES.get(fix) ?? 'whole';

export const PLACE_IDS: readonly FixPlace[] = Object.keys(FIX_PLACES).filter(isPlace);
