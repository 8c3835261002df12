// What a repair asks for, whom it could harm, and whether it leaves something to put back. Source: common practice, no source (judgement).
import type { Price } from '../../../engine/index.ts';
import type { CauseId, FixClass } from './causes/index.ts';

/**
 * A plug, a setting or a look; what is bought, sent in, cut or laid anew. Every other class is work on track, wires or vehicles; so is one
 * whose own steps exchange what is suspected for a sound one before anything is bought or sent in.
 */
export const PRICES = {
  'wrong-output': 'cheap',
  'booster-off': 'cheap',
  'stop-active': 'cheap',
  'no-signal': 'cheap',
  'two-sources': 'cheap',
  'booster-role': 'cheap',
  'wrong-format': 'cheap',
  'analogue-mode': 'cheap',
  address: 'cheap',
  'mains-sag': 'cheap',
  'test-misled': 'cheap',
  'accessory-address': 'cheap',
  'accessory-polarity': 'cheap',
  'cutout-mismatch': 'cheap',
  dirty: 'cheap',
  'board-plug': 'cheap',
  'auto-reverse-off': 'cheap',
  'volts-too-high': 'cheap',
  'old-switch': 'cheap',
  'centre-swapped': 'cheap',
  'mains-off': 'cheap',
  'restart-load': 'cheap',
  'decoder-muddled': 'cheap',
  'consist-left-over': 'cheap',
  'address-zero': 'cheap',
  'handheld-lost': 'cheap',
  'control-bus-supply': 'cheap',
  'computer-acts': 'cheap',
  'cannot-be-read': 'cheap',
  'programming-not-fed': 'cheap',
  'no-decoder': 'cheap',
  'programs-others': 'cheap',
  'volts-set-low': 'cheap',
  'parked-across-loop': 'cheap',
  'program-cuts-pulse': 'cheap',
  'computer-not-connected': 'cheap',
  'blink-code': 'cheap',
  'waits-for-button': 'cheap',
  'wheels-slip': 'cheap',
  'false-short': 'cheap',
  'not-enough': 'dear',
  'supply-too-small': 'dear',
  'filament-lamps': 'dear',
  'socket-damaged': 'dear',
  'unit-cuts-out': 'dear',
  'track-piece-faulty': 'dear',
  'loop-too-short': 'dear',
  'loop-no-device': 'dear',
  'turntable-reversed': 'dear',
  'reverse-route': 'dear',
} as const satisfies Readonly<Partial<Record<FixClass, Price>>>;

/** Nothing was changed that would have to be put back: a look, cleaning, something switched on, or what is better that way anyhow. */
const NO_TRACE: ReadonlySet<string> = new Set<FixClass>([
  ...(['switch-off-now', 'booster-off', 'stop-active', 'dirty', 'test-misled', 'mains-off', 'pickup'] as const),
  ...(['binding-locomotive', 'cannot-be-read', 'handheld-lost', 'house-protection', 'tingle', 'mains-sag'] as const),
  ...(['stage-heat', 'supply-heat', 'restart-load', 'turntable', 'metal-across', 'wheelset-short'] as const),
  ...(['parked-across-loop', 'blink-code', 'no-decoder'] as const),
]);

/** To switch off in a danger mends nothing: whoever did it has not tried a repair in vain. */
export const isRepair = (fixClass: string): boolean => fixClass !== ('switch-off-now' satisfies FixClass);

/** Whether a repair that did not help is undone first, so that it does not become a second fault. */
export const leavesATrace = (fixClass: string): boolean => !NO_TRACE.has(fixClass);

/** Work on track wires, cuts, links and units, where real conversions often hold a second fault. */
const LOOKED_AT_AGAIN: ReadonlySet<string> = new Set<FixClass>([
  ...([
    'reversed',
    'masked-reversal',
    'second-path',
    'one-rail',
    'gap-closed',
    'shared-wire',
    'reverse-route',
  ] as const),
  ...(['no-feed', 'no-signal', 'wrong-output', 'crossed-feeder', 'leftover-wiring', 'frog-cross-district'] as const),
  ...(['voltage-step', 'no-reference', 'hidden-common', 'booster-role', 'two-sources', 'board-plug'] as const),
  ...(['frog-gap-closed', 'live-frog', 'loop-not-isolated', 'lopsided-split', 'skew', 'cutout-mismatch'] as const),
]);

/** Whether isolation and phase are looked at once more after a repair that helped. */
export const needsLastLook = (fixClass: string): boolean => LOOKED_AT_AGAIN.has(fixClass);

/** A bad contact on the mains side only gets hotter with a stronger supply behind it. */
const BAD_CONTACT = ['mains-sag', 'socket-damaged'] as const;
/** A resistive path between the rails, below the trip level. */
const LEAKS = ['leak', 'wet-ballast'] as const;

/**
 * Repairs that do harm while another cause is the true one: not proposed while such a cause is still possible. First comes what harms nobody, an
 * inspection, or a check that tells the two apart. See decision 009.
 */
export const HARMS = {
  // Its page puts power on, a load and a coin across the rails: with a leak that is what already glows.
  'protection-set-wrong': LEAKS,
  'supply-too-small': [...BAD_CONTACT, ...LEAKS],
  'not-enough': [...BAD_CONTACT, ...LEAKS],
} as const satisfies Readonly<Partial<Record<FixClass, readonly CauseId[]>>>;
