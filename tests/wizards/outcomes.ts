// Answers that lead to each outcome, one set for each.
import type { EnoughCurrentOutcome } from '../../src/wizards/enough-current/outcomes.ts';
import type { ShareOutOutcome } from '../../src/wizards/share-out/outcomes.ts';
import type { WhichSupplyOutcome } from '../../src/wizards/which-supply-where/outcomes.ts';
import type { WireItOutcome } from '../../src/wizards/wire-it/outcomes.ts';
import { WIRED_HOME } from './homes.ts';

type Texts = Readonly<Record<string, string>>;

const LAYOUT = {
  system: 'two-rail',
  aim: 'enough',
  scale: 'h0',
  draw: 'count',
  modern: '4',
  older: '0',
  sound: '0',
  stored: '0',
  moving: '3',
  evening: '2 h',
  coaches: '0',
  accessories: '0',
};

const POWER = {
  'supply-kind': 'dc',
  'supply-volts': '16 V',
  'supply-amps': '3 A',
  'supply-plug': 'centre-plus',
  'unit-limit': '3 A',
  'unit-input': 'dc',
  'unit-input-volts': '19 V',
  'unit-plug': 'centre-plus',
  'unit-rails': 'set',
  'unit-rail-volts': '15 V',
  'own-use': 'bare',
};

const SMALL = { ...POWER, 'unit-limit': '2 A' };
const DIVIDED = {
  districts: '3',
  'traffic-a': '9',
  'limit-b': '3 A',
  'amps-b': '4 A',
  'traffic-b': '1',
  'limit-c': '3 A',
  'amps-c': '4 A',
  'traffic-c': '0',
};
const FOLLOWS = { 'supply-kind': 'ac', 'supply-volts': '18 V', 'unit-rails': 'follows' };

/** "Is my power enough?" */
export const TO_ENOUGH_CURRENT: Readonly<Record<string, Texts>> = {
  'power-is-enough': { ...LAYOUT, ...POWER },
  'breakers-and-sub-districts': { ...LAYOUT, ...POWER, aim: 'shorts' },
  'calm-the-consumption': { ...LAYOUT, ...SMALL, coaches: '5', lamps: 'filament', moving: '4' },
  'larger-supply': { ...LAYOUT, ...POWER, 'supply-amps': '2.5 A', modern: '6', moving: '6' },
  'leds-and-larger-supply': {
    ...LAYOUT,
    ...POWER,
    'supply-amps': '2.5 A',
    modern: '6',
    moving: '6',
    coaches: '7',
    lamps: 'filament',
  },
  'booster-with-freed-supply': { ...LAYOUT, ...POWER, 'own-use': 'many', modern: '8', moving: '7' },
  'booster-with-own-supply': { ...LAYOUT, ...POWER, modern: '8', moving: '7' },
  // A garden on a unit for 5 A, where 8 A are usual.
  'larger-unit': {
    ...{ ...LAYOUT, ...POWER, scale: '1', modern: '6', moving: '4' },
    ...{ 'supply-volts': '20 V', 'supply-amps': '6 A', 'unit-limit': '5 A', 'unit-input-volts': '24 V' },
    ...{ 'unit-rail-volts': '18 V' },
  },
  'more-districts': { ...LAYOUT, ...POWER, modern: '16', moving: '14' },
  'lopsided-split': { ...LAYOUT, ...POWER, ...DIVIDED, 'supply-amps': '4 A', modern: '8', moving: '7' },
  // Not even six districts carry a quarter of these.
  'fewer-moving': { ...LAYOUT, ...POWER, modern: '100', moving: '100' },
  'mute-and-park': { ...LAYOUT, ...POWER, modern: '14', sound: '14', moving: '2' },
  'put-on-in-two-groups': { ...LAYOUT, ...POWER, modern: '12', stored: '12' },
  'supply-cannot-trip': { ...LAYOUT, ...POWER, 'supply-amps': '2 A' },
  'read-both-labels': { ...LAYOUT, ...POWER, 'supply-amps': 'unknown' },
  'lower-trip-level': { ...LAYOUT, ...POWER, 'unit-limit': '8 A' },
  'wrong-supply': { ...LAYOUT, ...POWER, 'supply-kind': 'ac' },
  'volts-too-low': { ...LAYOUT, ...POWER, 'supply-volts': '9 V' },
  'rail-voltage-too-high': { ...LAYOUT, ...POWER, ...FOLLOWS, 'unit-input': 'ac' },
  'regulated-supply': { ...LAYOUT, ...POWER, ...FOLLOWS, 'unit-input': 'either' },
  'out-of-scope-three-rail': { system: 'three-rail' },
  'out-of-scope-battery': { system: 'battery' },
  'out-of-scope-analogue': { system: 'analogue' },
} satisfies Record<EnoughCurrentOutcome, Texts>;

const unit = (prefix: string, rails: Texts): Texts => ({
  [`${prefix}-limit`]: '3 A',
  [`${prefix}-input`]: 'dc',
  [`${prefix}-input-volts`]: '19 V',
  [`${prefix}-plug`]: 'centre-plus',
  ...rails,
});

const supply = (prefix: string, volts: string, amps: string): Texts => ({
  [`${prefix}-kind`]: 'dc',
  [`${prefix}-volts`]: volts,
  [`${prefix}-amps`]: amps,
  [`${prefix}-plug`]: 'centre-plus',
});

const set = (prefix: string, volts = '15 V'): Texts => ({
  [`${prefix}-rails`]: 'set',
  [`${prefix}-rail-volts`]: volts,
});
const follows = (prefix: string): Texts => ({ [`${prefix}-rails`]: 'follows' });

const PAIR = {
  system: 'two-rail',
  scale: 'h0',
  ...unit('station', set('station')),
  ...unit('booster', set('booster')),
  ...supply('one', '18 V', '2.5 A'),
  ...supply('two', '18 V', '5 A'),
  modern: '10',
  older: '0',
  sound: '0',
  stored: '0',
  moving: '8',
  evening: '2 h',
  busier: 'same',
};

const FOLLOWING = { ...PAIR, ...follows('station'), ...follows('booster') };

/** "Which supply goes on which unit?" */
export const TO_WHICH_SUPPLY: Readonly<Record<WhichSupplyOutcome, Texts>> = {
  'supplies-either-way': { ...PAIR, moving: '2' },
  'larger-to-command-station': { ...PAIR, busier: 'station' },
  'larger-to-booster': { ...PAIR, busier: 'booster' },
  'higher-rails-to-command-station': { ...FOLLOWING, 'one-volts': '16 V', 'two-volts': '17 V' },
  'set-both-outputs-equal': { ...PAIR, ...set('booster', '16.5 V') },
  'two-supplies-alike': { ...FOLLOWING, 'one-volts': '15 V', 'two-volts': '18 V' },
  'measure-rail-volts-first': { ...PAIR, 'booster-rail-volts': 'unknown' },
  'read-both-labels': { ...PAIR, 'two-volts': 'unknown' },
  'wrong-supply': { ...PAIR, 'station-input': 'ac' },
  'supply-cannot-trip': { ...PAIR, 'one-amps': '2 A' },
  'volts-too-low': { ...FOLLOWING, 'one-volts': '9 V', 'two-volts': '9 V', 'one-amps': '5 A' },
  'lower-trip-level': { ...PAIR, scale: 'n', 'station-limit': '5 A' },
  'rail-voltage-too-high': {
    ...FOLLOWING,
    'station-input': 'ac',
    'booster-input': 'ac',
    'one-kind': 'ac',
    'two-kind': 'ac',
  },
  'regulated-supply': {
    ...FOLLOWING,
    'station-input': 'either',
    'booster-input': 'either',
    'one-kind': 'ac',
    'two-kind': 'ac',
  },
  'out-of-scope-three-rail': { system: 'three-rail' },
  'out-of-scope-battery': { system: 'battery' },
  'out-of-scope-analogue': { system: 'analogue' },
} satisfies Record<WhichSupplyOutcome, Texts>;

const OVAL = {
  ...{ system: 'two-rail', scale: 'h0', shape: 'oval', modern: '6', older: '0' },
  ...{ 'station-amps': '3 A', 'booster-amps': '2 A' },
};
/** What stops the placing of supplies stops this too. */
const stopped = (texts: Texts): Texts => {
  const { busier: _, evening: __, ...rest } = texts;
  return { ...OVAL, ...rest };
};

/** "Where do I divide the layout?" */
export const TO_SHARE_OUT: Readonly<Record<ShareOutOutcome, Texts>> = {
  'divide-the-track': OVAL,
  'breakers-and-sub-districts': { ...OVAL, aim: 'shorts' },
  'power-is-enough': { ...OVAL, modern: '0' },
  'more-districts': { ...OVAL, modern: '14' },
  'fewer-moving': { ...OVAL, modern: '100' },
  'wrong-supply': stopped(TO_WHICH_SUPPLY['wrong-supply']),
  'volts-too-low': stopped(TO_WHICH_SUPPLY['volts-too-low']),
  'rail-voltage-too-high': stopped(TO_WHICH_SUPPLY['rail-voltage-too-high']),
  'regulated-supply': stopped(TO_WHICH_SUPPLY['regulated-supply']),
  'lower-trip-level': stopped(TO_WHICH_SUPPLY['lower-trip-level']),
  'supply-cannot-trip': stopped(TO_WHICH_SUPPLY['supply-cannot-trip']),
  'out-of-scope-three-rail': { system: 'three-rail' },
  'out-of-scope-battery': { system: 'battery' },
  'out-of-scope-analogue': { system: 'analogue' },
};

const WIRE = {
  ...WIRED_HOME,
  'bus-length': '5 m',
  'track-length': '5 m',
  'feeder-count': '5',
  'rail-kind': 'code-100',
  'rail-ohms': '100',
  joints: 'fed',
};

/** "How thick must the wire be?" */
export const TO_WIRE_IT: Readonly<Record<WireItOutcome, Texts>> = {
  'wiring-not-known': { ...WIRE, 'bus-wire': 'unknown' },
  'rail-voltage-too-high': { ...WIRE, 'wire-volts': '24 V' },
  'supply-cannot-trip': { ...WIRE, 'supply-amps': '2 A' },
  'volts-too-low': { ...WIRE, 'wire-volts': '7 V' },
  'wiring-good': WIRE,
  'more-feeders': { ...WIRE, 'feeder-count': '1', 'rail-kind': 'code-70', joints: 'plain' },
  'thicker-feeders': { ...WIRE, 'wire-trip': '4 A', 'feeder-wire': '0.14 mm2' },
  'thicker-bus': {
    ...WIRE,
    'bus-shape': 'middle',
    'bus-length': '10 m',
    'track-length': '20 m',
    'bus-wire': '0.5 mm2',
    'feeder-count': '12',
    'wire-amps': '3 A',
  },
  'feed-bus-from-middle': {
    ...WIRE,
    'bus-length': '20 m',
    'track-length': '20 m',
    'bus-wire': '0.75 mm2',
    'feeder-count': '12',
    'wire-amps': '1.5 A',
  },
  'pair-to-the-middle': {
    ...WIRE,
    'feed-by': 'pair',
    'track-shape': 'ends',
    'bus-length': '1 m',
    'track-length': '4 m',
    'wire-amps': '1.5 A',
  },
  'bus-as-a-ring': {
    ...WIRE,
    'bus-length': '140 m',
    'track-length': '140 m',
    'bus-wire': '4 mm2',
    'feeder-count': '50',
    'wire-amps': '3 A',
  },
  'lower-trip-level': { ...WIRE, 'wire-trip': '8 A', 'supply-amps': '10 A' },
  'booster-near-load': {
    ...WIRE,
    'bus-length': '200 m',
    'track-length': '200 m',
    'bus-wire': '0.5 mm2',
    'wire-amps': '3 A',
  },
  'out-of-scope-three-rail': { system: 'three-rail' },
  'out-of-scope-battery': { system: 'battery' },
  'out-of-scope-analogue': { system: 'analogue' },
};
