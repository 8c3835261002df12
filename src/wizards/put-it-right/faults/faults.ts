// What can be wrong. Minutes are the work of the repair with its proof. Source: common practice, no source.
import type { FaultRow } from '../../../engine/index.ts';

export const FAULTS = [
  // Danger, whatever the cause: switch off first, look for the cause when everything is cold.
  { id: 'unsafe-heat', fixClass: 'switch-off-now', minutes: 10 },
  { id: 'house-protection', fixClass: 'house-protection', minutes: 1 },
  { id: 'tingle', fixClass: 'tingle', minutes: 1 },

  // Power missing
  { id: 'feed-missing', fixClass: 'no-feed', minutes: 20 },
  { id: 'feed-wire-broken', fixClass: 'no-feed', minutes: 20 },
  { id: 'wrong-output', fixClass: 'wrong-output', minutes: 6 },
  { id: 'booster-off', fixClass: 'booster-off', minutes: 5 },
  { id: 'stop-active', fixClass: 'stop-active', minutes: 3 },
  { id: 'turnout-routing', fixClass: 'turnout-routing', minutes: 30 },
  { id: 'module-plug', fixClass: 'board-plug', minutes: 10 },
  { id: 'device-open', fixClass: 'device-open', minutes: 15 },
  { id: 'fuse-blown', fixClass: 'fuse-blown', minutes: 10 },
  { id: 'panel-switch', fixClass: 'old-switch', minutes: 10 },
  { id: 'joiner-forgotten', fixClass: 'joiner-forgotten', minutes: 15 },
  { id: 'brake-section', fixClass: 'brake-section', minutes: 15 },
  { id: 'mains-off', fixClass: 'mains-off', minutes: 5 },

  // Signal missing or spoiled
  { id: 'link-missing', fixClass: 'no-signal', minutes: 6 },
  { id: 'link-wrong-socket', fixClass: 'no-signal', minutes: 6 },
  { id: 'link-faulty', fixClass: 'no-signal', minutes: 8 },
  { id: 'suppressor', fixClass: 'suppressor', minutes: 15 },
  { id: 'long-bus', fixClass: 'long-bus', minutes: 45 },
  { id: 'two-sources', fixClass: 'two-sources', minutes: 10 },
  { id: 'booster-role', fixClass: 'booster-role', minutes: 8 },
  { id: 'wrong-format', fixClass: 'wrong-format', minutes: 5 },

  // Isolation
  { id: 'one-rail', fixClass: 'one-rail', minutes: 30 },
  { id: 'forgotten-path', fixClass: 'second-path', minutes: 40 },
  { id: 'old-feeder-left', fixClass: 'second-path', minutes: 20 },
  { id: 'gap-closed', fixClass: 'gap-closed', minutes: 20 },
  { id: 'shared-wire', fixClass: 'shared-wire', minutes: 15 },
  { id: 'leftover-wiring', fixClass: 'leftover-wiring', minutes: 30 },

  // Polarity and voltage at the gap
  { id: 'feed-reversed', fixClass: 'reversed', minutes: 15 },
  { id: 'link-inverted', fixClass: 'reversed', minutes: 15 },
  { id: 'supplies-swapped', fixClass: 'voltage-step', minutes: 12 },
  { id: 'unlike-supplies', fixClass: 'voltage-step', minutes: 15 },
  { id: 'low-setting', fixClass: 'voltage-step', minutes: 8 },
  { id: 'skew', fixClass: 'skew', minutes: 30 },
  { id: 'no-reference', fixClass: 'no-reference', minutes: 15 },
  { id: 'hidden-common', fixClass: 'hidden-common', minutes: 20 },
  { id: 'cutout-mismatch', fixClass: 'cutout-mismatch', minutes: 15 },
  { id: 'masked-reversal', fixClass: 'masked-reversal', minutes: 40 },
  { id: 'reverser-at-plain-gap', fixClass: 'auto-reverse-off', minutes: 10 },
  { id: 'rail-volts-too-high', fixClass: 'volts-too-high', minutes: 10 },
  { id: 'centre-swapped', fixClass: 'centre-swapped', minutes: 10 },

  // Too little power
  { id: 'overload-total', fixClass: 'not-enough', minutes: 25 },
  { id: 'stage-limit', fixClass: 'not-enough', minutes: 25 },
  { id: 'overload-district', fixClass: 'lopsided-split', minutes: 40 },
  { id: 'supply-limit', fixClass: 'supply-too-small', minutes: 15 },
  { id: 'supply-hiccup', fixClass: 'supply-too-small', minutes: 15 },
  { id: 'binding-locomotive', fixClass: 'binding-locomotive', minutes: 40 },
  { id: 'lamps', fixClass: 'filament-lamps', minutes: 40 },
  { id: 'inrush', fixClass: 'inrush', minutes: 20 },
  { id: 'restart-load', fixClass: 'restart-load', minutes: 20 },
  { id: 'stage-heat', fixClass: 'stage-heat', minutes: 15 },
  { id: 'supply-heat', fixClass: 'supply-heat', minutes: 15 },
  { id: 'mains-sag', fixClass: 'mains-sag', minutes: 6 },
  { id: 'stage-order', fixClass: 'stage-order', minutes: 20 },

  // Wires and rails
  { id: 'thin-wire', fixClass: 'thin-wire', minutes: 60 },
  { id: 'few-feeds', fixClass: 'few-feeds', minutes: 60 },
  { id: 'loose-joiner', fixClass: 'bad-joiner', minutes: 25 },
  { id: 'dead-joint', fixClass: 'bad-joiner', minutes: 25 },
  { id: 'dirty', fixClass: 'dirty', minutes: 20 },
  { id: 'joint-step', fixClass: 'joint-step', minutes: 20 },
  { id: 'long-dead-gap', fixClass: 'long-dead-gap', minutes: 40 },

  // Rolling stock
  { id: 'pickup', fixClass: 'pickup', minutes: 25 },
  { id: 'analogue-mode', fixClass: 'analogue-mode', minutes: 10 },
  { id: 'address', fixClass: 'address', minutes: 8 },
  { id: 'wheelset-short', fixClass: 'wheelset-short', minutes: 15 },
  { id: 'wheelset-at-turnouts', fixClass: 'wheelset-short', minutes: 15 },
  { id: 'metal-bodies', fixClass: 'metal-bodies', minutes: 20 },
  { id: 'loco-short-inside', fixClass: 'loco-short-inside', minutes: 30 },
  { id: 'loco-loose-contact', fixClass: 'loco-loose-contact', minutes: 30 },
  { id: 'decoder-damaged', fixClass: 'decoder-damaged', minutes: 20 },
  { id: 'decoder-muddled', fixClass: 'decoder-muddled', minutes: 10 },
  { id: 'decoder-disturbs', fixClass: 'decoder-disturbs', minutes: 15 },
  { id: 'consist-left-over', fixClass: 'consist-left-over', minutes: 10 },
  { id: 'address-zero', fixClass: 'address-zero', minutes: 5 },
  { id: 'motor-noise', fixClass: 'motor-noise', minutes: 20 },

  // Protection
  { id: 'high-trip', fixClass: 'protection-set-wrong', minutes: 15 },
  { id: 'slow-trip', fixClass: 'protection-set-wrong', minutes: 15 },
  { id: 'breaker-setting', fixClass: 'protection-set-wrong', minutes: 15 },
  { id: 'breaker-wired-unlike', fixClass: 'breakers-alike', minutes: 20 },
  { id: 'fast-breaker-shows', fixClass: 'fast-breaker', minutes: 15 },

  // Reversing sections
  { id: 'loop-not-isolated', fixClass: 'loop-not-isolated', minutes: 40 },
  { id: 'loop-too-short', fixClass: 'loop-too-short', minutes: 60 },
  { id: 'loop-no-device', fixClass: 'loop-no-device', minutes: 45 },
  { id: 'reverser-grading', fixClass: 'reverser-grading', minutes: 15 },
  { id: 'two-auto-reversers', fixClass: 'two-auto-reversers', minutes: 30 },
  { id: 'reverse-route', fixClass: 'reverse-route', minutes: 60 },
  { id: 'turntable-wipers', fixClass: 'turntable', minutes: 25 },

  // Turnouts and track
  { id: 'live-frog', fixClass: 'live-frog', minutes: 30 },
  { id: 'wheel-bridges-frog', fixClass: 'wheel-bridges-frog', minutes: 30 },
  { id: 'frog-cross-district', fixClass: 'frog-cross-district', minutes: 20 },
  { id: 'frog-gap-closed', fixClass: 'frog-gap-closed', minutes: 25 },
  { id: 'frog-unit-slow', fixClass: 'frog-unit-slow', minutes: 20 },
  { id: 'track-piece-faulty', fixClass: 'track-piece-faulty', minutes: 15 },
  { id: 'metal-across', fixClass: 'metal-across', minutes: 15 },
  { id: 'moving-contact', fixClass: 'metal-across', minutes: 20 },
  { id: 'leak', fixClass: 'leak', minutes: 40 },
  { id: 'wet-ballast', fixClass: 'leak', minutes: 30 },
  { id: 'crossed-feeder', fixClass: 'crossed-feeder', minutes: 10 },
  { id: 'program-bridge', fixClass: 'program-bridge', minutes: 30 },
  { id: 'cannot-be-read', fixClass: 'cannot-be-read', minutes: 10 },
  { id: 'read-on-main', fixClass: 'programs-others', minutes: 10 },

  // Accessories and the control bus
  { id: 'sagging-accessories', fixClass: 'sagging-accessories', minutes: 40 },
  { id: 'accessory-reset', fixClass: 'accessory-reset', minutes: 30 },
  { id: 'accessory-supply-weak', fixClass: 'accessory-supply-weak', minutes: 20 },
  { id: 'accessory-address', fixClass: 'accessory-address', minutes: 8 },
  { id: 'accessory-wiring', fixClass: 'accessory-wiring', minutes: 15 },
  { id: 'accessory-polarity', fixClass: 'accessory-polarity', minutes: 6 },
  { id: 'accessory-short', fixClass: 'accessory-short', minutes: 20 },
  { id: 'accessory-random', fixClass: 'accessory-random', minutes: 20 },
  { id: 'detector-false', fixClass: 'detector-false', minutes: 30 },
  { id: 'detector-crosstalk', fixClass: 'detector-crosstalk', minutes: 20 },
  { id: 'detector-drop', fixClass: 'detector-drop', minutes: 30 },
  { id: 'into-control-bus', fixClass: 'into-control-bus', minutes: 20 },
  { id: 'handheld-lost', fixClass: 'handheld-lost', minutes: 5 },
  { id: 'bus-weak', fixClass: 'control-bus-weak', minutes: 20 },
  { id: 'bus-supply-missing', fixClass: 'control-bus-supply', minutes: 10 },
  { id: 'radio-disturbed', fixClass: 'radio-disturbed', minutes: 20 },
  { id: 'computer-acts', fixClass: 'computer-acts', minutes: 10 },

  // Units and supplies
  { id: 'wrong-supply-kind', fixClass: 'wrong-supply-kind', minutes: 10 },
  { id: 'supply-defect', fixClass: 'supply-defect', minutes: 15 },
  { id: 'stage-defect', fixClass: 'stage-defect', minutes: 20 },
  { id: 'unit-cuts-out', fixClass: 'unit-cuts-out', minutes: 20 },
  { id: 'socket-damaged', fixClass: 'socket-damaged', minutes: 15 },

  // Nothing is wrong: the test of the gap misled
  { id: 'stored-energy', fixClass: 'test-misled', minutes: 10 },
  { id: 'still-straddling', fixClass: 'test-misled', minutes: 10 },
  { id: 'already-fed', fixClass: 'test-misled', minutes: 10 },
] as const satisfies readonly FaultRow[];

export type FaultId = (typeof FAULTS)[number]['id'];
export type FixClass = (typeof FAULTS)[number]['fixClass'];
