// Kinds of questions about what is drawn and what is given. Each mistake is one that people make, and gives what that mistake gives.
import { AC_FACTOR, COMMON_RATINGS, trackCurrent } from '../power/index.ts';
import type { Amount, Kind } from './check.ts';

const amps = (value: number): Amount => ({ value, unit: 'A' });
const volts = (value: number): Amount => ({ value, unit: 'V' });
const pieces = (value: number): Amount => ({ value, unit: 'pieces' });
const seconds = (value: number): Amount => ({ value, unit: 's' });

/** The mains of the example label, volts. Source: common-practice. */
const MAINS = 230;
/** Milliamperes in an ampere. Source: own-derivation. */
const THOUSAND = 1000;

/** Questions on supplies and draws: the least and the largest answer asked for, each in its own unit. Source: own-choice. */
export const POWER_KINDS = {
  /** Trains that move, trains that stand: what they draw together. */
  'total-current': {
    range: [0.05, 12],
    make: (draw) => {
      const [moving, parked] = [draw(2, 3, 4, 5), draw(3, 4, 5, 6, 8)];
      const [running, standing] = [draw(0.3, 0.35, 0.4, 0.5), draw(0.05, 0.06, 0.08, 0.1)];
      return {
        given: { moving: pieces(moving), parked: pieces(parked), running: amps(running), standing: amps(standing) },
        unit: 'A',
        right: moving * running + parked * standing,
        mistakes: {
          'as-if-all-ran': (moving + parked) * running,
          'forgot-the-parked': moving * running,
          'one-of-each': running + standing,
        },
      };
    },
  },
  /** A label in volt-amperes: how many amperes it gives. */
  'va-to-amps': {
    range: [0.1, 20],
    make: (draw) => {
      const [output, rating, rails] = [draw(15, 16, 18, 20), draw(2, 3, 4, 5), draw(10, 12, 14)];
      const va = output * rating;
      return {
        given: { va: { value: va, unit: 'VA' }, output: volts(output), rails: volts(rails), mains: volts(MAINS) },
        unit: 'A',
        right: va / output,
        mistakes: {
          'divided-by-the-mains': va / MAINS,
          'divided-by-the-rails': va / rails,
          'took-the-volts': output,
        },
      };
    },
  },
  /** An a.c. supply behind the rectifier of a unit. Source: rectifier-table. */
  'ac-behind-rectifier': {
    range: [0.5, 12],
    make: (draw) => {
      const rating = draw(2, 2.5, 3, 4, 5, 6);
      const stage = { limit: 10, ownUse: 0, rails: { kind: 'follows' } } as const;
      return {
        given: { rating: amps(rating), factor: { value: AC_FACTOR.usual, unit: 'times' } },
        unit: 'A',
        right: trackCurrent({ kind: 'ac', volts: 16, amps: rating }, stage),
        mistakes: { 'as-printed': rating, 'the-wrong-way': rating * AC_FACTOR.usual },
      };
    },
  },
  /** The rating to get so that a short surely trips the unit. */
  'supply-rating': {
    range: [1, 10],
    make: (draw) => {
      const [trip, ownUse] = [draw(2, 2.5, 3, 4, 5), draw(0.2, 0.3, 0.5, 0.6, 0.8)];
      const above = (least: number): number => COMMON_RATINGS.find((rating) => rating > least) ?? Number.NaN;
      return {
        given: { trip: amps(trip), 'own-use': amps(ownUse) },
        unit: 'A',
        right: above(trip + ownUse),
        mistakes: { 'equal-to-the-trip-current': trip, 'less-own-use': below(trip - ownUse), 'largest-there-is': 10 },
      };
    },
  },
  /** What each of two districts carries. */
  'split-between-districts': {
    range: [0.3, 12],
    make: (draw) => {
      const [trains, here, each] = [draw(6, 7, 8, 9, 10), draw(4, 5, 6), draw(0.3, 0.4, 0.5)];
      return {
        given: { trains: pieces(trains), here: pieces(here), each: amps(each) },
        unit: 'A',
        right: here * each,
        mistakes: {
          'shared-evenly': (trains / 2) * each,
          'everything-there': trains * each,
          'the-other-one': (trains - here) * each,
        },
      };
    },
  },
  /** A booster adds amperes to its own part only. */
  'booster-adds': {
    range: [1, 16],
    make: (draw) => {
      const [station, booster] = [draw(2, 3, 3.5, 4, 5), draw(2.5, 3, 4, 5, 6)];
      return {
        given: { station: amps(station), booster: amps(booster) },
        unit: 'A',
        right: booster,
        mistakes: { pooled: station + booster, 'the-other-unit': station, 'the-mean': (station + booster) / 2 },
      };
    },
  },
  /** Lit coaches: lamps in each, milliamperes in each lamp. */
  'coach-lamps': {
    range: [0.005, 12],
    make: (draw) => {
      const [coaches, lamps, each] = [draw(4, 5, 6), draw(2, 3, 4), draw(0.02, 0.03, 0.04)];
      return {
        given: { coaches: pieces(coaches), lamps: pieces(lamps), milliamps: pieces(each * THOUSAND) },
        unit: 'A',
        right: coaches * lamps * each,
        mistakes: {
          'one-lamp-a-coach': coaches * each,
          'one-coach': lamps * each,
          'misplaced-point': coaches * lamps * each * 10,
        },
      };
    },
  },
  /** Parked decoders, each with a few milliamperes. */
  'parked-draw': {
    range: [0.01, 12],
    make: (draw) => {
      const [parked, each] = [draw(6, 8, 10, 12, 15), draw(0.03, 0.04, 0.05, 0.06)];
      return {
        given: { parked: pieces(parked), milliamps: pieces(each * THOUSAND) },
        unit: 'A',
        right: parked * each,
        mistakes: { 'misplaced-point': parked * each * 10, 'only-one': each, 'a-tenth': (parked * each) / 10 },
      };
    },
  },
  /** The ammeter's socket bears its current for seconds, then it needs its pause; the first reading comes at once. */
  'ammeter-socket': {
    range: [5, 4000],
    make: (draw) => {
      const [on, every, evening] = [draw(10, 15, 20, 30), draw(10, 15), draw(30, 45, 60)];
      return {
        given: { on: seconds(on), every: pieces(every), evening: pieces(evening) },
        unit: 's',
        right: Math.ceil(evening / every) * on,
        mistakes: { 'all-the-time': evening * 60, 'once-only': on, 'pause-for-on': every * 60 },
      };
    },
  },
  /** What stands on a programming track together: a locomotive, and lit coaches that nobody took off. */
  'programming-load': {
    range: [0.02, 12],
    make: (draw) => {
      const [locomotive, coaches, each] = [draw(0.05, 0.06, 0.08), draw(3, 4, 5), draw(0.07, 0.08, 0.1)];
      const all = locomotive + coaches * each;
      return {
        given: {
          locomotive: pieces(locomotive * THOUSAND),
          coaches: pieces(coaches),
          milliamps: pieces(each * THOUSAND),
        },
        unit: 'A',
        right: all,
        mistakes: { 'locomotive-only': locomotive, 'one-coach-only': locomotive + each, 'misplaced-point': all * 10 },
      };
    },
  },
  /** What several supplies draw from one socket strip: what their labels say of the input, added up. */
  'strip-load': {
    range: [0.3, 32],
    make: (draw) => {
      const [supplies, input, output] = [draw(3, 4, 5, 6), draw(0.5, 0.6, 0.8, 1, 1.2), draw(2, 3, 4)];
      return {
        given: { supplies: pieces(supplies), input: amps(input), output: amps(output), mains: volts(MAINS) },
        unit: 'A',
        right: supplies * input,
        mistakes: {
          'added-the-outputs': supplies * output,
          'one-only': input,
          'added-both': supplies * (input + output),
        },
      };
    },
  },
  /** One unit has switched off while a train stands across the gap: the other feeds both parts. */
  'survivor-carries': {
    range: [0.3, 6],
    make: (draw) => {
      const [here, there] = [draw(1.8, 2, 2.2, 2.4), draw(0.6, 0.8, 1)];
      return {
        given: { here: amps(here), there: amps(there) },
        unit: 'A',
        right: here + there,
        mistakes: { 'its-own-only': here, 'the-other-part-only': there, 'shared-evenly': (here + there) / 2 },
      };
    },
  },
  /** The first seconds after switching on: what flows at rest, and all stores filling up at once. */
  'at-switch-on': {
    range: [0.2, 4],
    make: (draw) => {
      const [vehicles, each, resting] = [draw(6, 8, 10, 12), draw(0.1, 0.15, 0.2, 0.25), draw(0.3, 0.4, 0.5, 0.6)];
      return {
        given: { vehicles: pieces(vehicles), each: amps(each), resting: amps(resting) },
        unit: 'A',
        right: resting + vehicles * each,
        mistakes: { 'rest-only': resting, 'one-only': resting + each, 'rush-only': vehicles * each },
      };
    },
  },
} as const satisfies Readonly<Record<string, Kind>>;

/** The largest common rating up to so many amperes. */
const below = (most: number): number => COMMON_RATINGS.findLast((rating) => rating <= most) ?? Number.NaN;
