// Kinds of questions about wire, shorts, protection and the work at the rails.
import { twoLamps } from '../crossing/index.ts';
import {
  evenFeeders,
  FEEDER_WIRE,
  gradeBreaker,
  ohmsPerMetre,
  pairLoss,
  railGrowth,
  SHORT_MARGIN,
  shortFromLoadTest,
  shortOver,
  shortTest,
  TEST_RESISTOR,
  worstFaultHeat,
} from '../wiring/index.ts';
import type { Amount, Kind } from './check.ts';

const amps = (value: number): Amount => ({ value, unit: 'A' });
const volts = (value: number): Amount => ({ value, unit: 'V' });
const ohms = (value: number): Amount => ({ value, unit: 'ohm' });
const pieces = (value: number): Amount => ({ value, unit: 'pieces' });
const metres = (value: number): Amount => ({ value, unit: 'm' });
const seconds = (value: number): Amount => ({ value, unit: 's' });

/** Where the engine has no answer; such a draw is never asked, for nothing is above 0. */
const NONE = Number.NaN;
/** The feeder of the questions: metres, and ohms a metre. Source: common-practice, iec-60228. */
const FEEDER = { length: FEEDER_WIRE.length, ohmsPerMetre: ohmsPerMetre(FEEDER_WIRE) };

/** Questions on wires: the least and the largest answer asked for, each in its own unit. Source: own-choice. */
export const WIRING_KINDS = {
  /** Volts that stay in a pair of wires. */
  'wire-loss': {
    range: [0.05, 12],
    make: (draw) => {
      const [length, area, current] = [draw(6, 8, 10, 12), draw(0.75, 1, 1.5, 2.5), draw(1.5, 2, 2.5, 3)];
      const wire = { area: area * 1e-6, make: 'flexible' } as const;
      const each = ohmsPerMetre(wire) * length;
      return {
        given: { length: metres(length), each: ohms(each), current: amps(current), rails: volts(15) },
        unit: 'V',
        right: pairLoss(wire, length, current),
        mistakes: {
          'forgot-the-way-back': each * current,
          'forgot-the-amperes': 2 * each,
          'counted-twice-too-often': 4 * each * current,
        },
      };
    },
  },
  /** How many feeders an oval needs. */
  'feeder-count': {
    range: [1, 60],
    make: (draw) => {
      const [length, spacing] = [draw(7, 9, 10, 13, 15, 16), draw(1.5, 2, 2.5, 3)];
      return {
        given: { length: metres(length), spacing: metres(spacing) },
        unit: 'pieces',
        right: evenFeeders({ spacing }, { length, closed: true }, FEEDER).length,
        mistakes: {
          'rounded-down': Math.floor(length / spacing),
          'half-the-spacing': Math.ceil((2 * length) / spacing),
          'one-is-enough': 1,
        },
      };
    },
  },
  /** How long the resistor may stay across the rails. */
  'resistor-time': {
    range: [1, 120],
    make: (draw) => {
      const rails = draw(12, 14, 15, 16, 18, 20, 22);
      const test = shortTest({ volts: rails, trip: 5 });
      return {
        given: { rails: volts(rails), load: ohms(TEST_RESISTOR.ohms) },
        unit: 's',
        right: test.kind === 'test' ? test.seconds : NONE,
        mistakes: { 'as-long-as-you-like': 60, 'volts-for-seconds': rails, 'too-short-to-read': 1 },
      };
    },
  },
  /** What a short would draw, out of a load test. Source: loop-test. */
  'load-test': {
    range: [0.02, 60],
    make: (draw) => {
      const [open, lost] = [draw(14, 15, 16, 18), draw(1, 1.5, 2, 2.5, 3)];
      const load = TEST_RESISTOR.ohms;
      const found = shortFromLoadTest({ open, loaded: open - lost, ohms: load });
      return {
        given: { open: volts(open), loaded: volts(open - lost), load: ohms(load) },
        unit: 'A',
        right: found.kind === 'measured' ? found.amps : NONE,
        mistakes: { 'the-load-itself': (open - lost) / load, 'loss-over-ohms': lost / load },
      };
    },
  },
  /** What a short draws at the far end, beside the trip current. */
  'short-at-the-end': {
    range: [0.5, 60],
    make: (draw) => {
      const [rails, out, trip] = [draw(14, 15, 16, 18), draw(0.75, 1, 1.25, 1.5, 2), draw(3, 5)];
      return {
        given: { rails: volts(rails), out: ohms(out), trip: amps(trip) },
        unit: 'A',
        right: shortOver({ volts: rails, ohms: 2 * out }),
        mistakes: { 'forgot-the-way-back': rails / out, 'the-trip-current': trip },
      };
    },
  },
  /** The trip current at which a short is surely noticed. Source: common-practice. */
  'surely-trips': {
    range: [0.5, 30],
    make: (draw) => {
      const short = draw(3, 4.5, 6, 7.5);
      return {
        given: { short: amps(short) },
        unit: 'A',
        right: short / SHORT_MARGIN,
        mistakes: { 'no-margin': short, 'margin-the-wrong-way': short * SHORT_MARGIN, 'half-of-it': short / 2 },
      };
    },
  },
  /** Most heat of a fault that trips nothing. */
  'quiet-heat': {
    range: [0.5, 200],
    make: (draw) => {
      const [rails, loop, trip] = [draw(14, 15, 16, 18), draw(2, 2.5, 3, 4), draw(5, 8)];
      const { watts } = worstFaultHeat({ volts: rails, ohms: loop }, trip);
      return {
        given: { rails: volts(rails), loop: ohms(loop), trip: amps(trip) },
        unit: 'W',
        right: watts,
        mistakes: { 'no-loop-at-all': rails * trip, 'all-over-the-loop': rails ** 2 / loop, 'half-again': watts / 2 },
      };
    },
  },
  /** How long a reversing section has to be: what counts is wheels and pick-ups of metal. Source: common-practice. */
  'section-length': {
    range: [0.1, 6],
    make: (draw) => {
      const [locomotive, coaches, coach] = [draw(0.2, 0.22, 0.25), draw(2, 3, 4), draw(0.25, 0.28, 0.3)];
      const [wagons, wagon] = [draw(3, 4, 6), draw(0.12, 0.15)];
      const lit = locomotive + coaches * coach;
      return {
        given: {
          locomotive: metres(locomotive),
          coaches: pieces(coaches),
          coach: metres(coach),
          wagons: pieces(wagons),
          wagon: metres(wagon),
        },
        unit: 'm',
        right: lit,
        mistakes: {
          'locomotive-only': locomotive,
          'one-coach-only': locomotive + coach,
          'counted-plastic': lit + wagons * wagon,
        },
      };
    },
  },
  /** The highest setting of a breaker under its unit. Source: common-practice. */
  'breaker-setting': {
    range: [0.2, 20],
    make: (draw) => {
      const trip = draw(3, 4, 5);
      const { tripAtMost } = gradeBreaker({ trip, seconds: 0.02 }, { trip, seconds: 0.3 });
      return {
        given: { trip: amps(trip) },
        unit: 'A',
        right: tripAtMost,
        mistakes: { 'the-same': trip, 'above-the-unit': 1.5 * trip, 'too-low-to-run': trip / 10 },
      };
    },
  },
  /** How fast a breaker has to be: before its unit, after the inrush. Source: common-practice. */
  'breaker-time': {
    range: [0.0005, 3],
    make: (draw) => {
      const [stage, fast] = [draw(0.1, 0.15, 0.3, 0.5), draw(0.01, 0.015, 0.02, 0.025)];
      const graded = gradeBreaker({ trip: 2, seconds: fast }, { trip: 5, seconds: stage });
      return {
        given: { stage: seconds(stage) },
        unit: 's',
        right: graded.finding === 'well-graded' && !graded.tripsOnInrush ? fast : NONE,
        mistakes: {
          'as-slow-as-the-unit': stage,
          'slower-than-the-unit': 2 * stage,
          'before-the-inrush-is-over': 0.001,
        },
      };
    },
  },
  /** How much a rail grows when the room gets warmer. Source: nickel-silver-data. */
  'rail-grows': {
    range: [1e-6, 0.1],
    make: (draw) => {
      const [length, warmer] = [draw(3, 4, 5, 6, 8, 10), draw(10, 15, 20)];
      const grows = railGrowth(length, warmer);
      return {
        given: { length: metres(length), warmer: { value: warmer, unit: 'degrees' } },
        unit: 'm',
        right: grows,
        mistakes: { 'misplaced-point': grows * 10, 'a-tenth': grows / 10 },
      };
    },
  },
  /** Volts of each of two equal lamps across the gaps of two parts that are turned round, with nothing else in common. */
  'lamps-across': {
    range: [0.5, 60],
    make: (draw) => {
      const [near, far] = [draw(14, 15, 16, 18), draw(13, 17, 19)];
      const seen = twoLamps(near, far, 'reversed', 'floating');
      return {
        given: { near: volts(near), far: volts(far) },
        unit: 'V',
        right: seen.kind === 'lamps' ? seen.railA : NONE,
        mistakes: { 'all-on-each': near + far, 'only-the-difference': Math.abs(near - far) },
      };
    },
  },
  /** What stands across the gap where one side is turned round and the other pair of rails is joined. */
  'volts-across': {
    range: [0.5, 60],
    make: (draw) => {
      const [here, there] = [draw(13, 14, 15), draw(16, 17, 18, 19)];
      return {
        given: { here: volts(here), there: volts(there) },
        unit: 'V',
        right: here + there,
        mistakes: { 'the-difference': there - here, 'one-side-only': there, 'the-half': (here + there) / 4 },
      };
    },
  },
  /** The first moment of a train across the gap, in phase: the difference of the volts, over the ohms of its way. */
  'pulse-across': {
    range: [0.5, 80],
    make: (draw) => {
      const [near, far, way] = [draw(16, 17, 18), draw(14, 14.5, 15), draw(0.5, 0.8, 1.2, 1.5)];
      return {
        given: { near: volts(near), far: volts(far), way: ohms(way) },
        unit: 'A',
        right: (near - far) / way,
        mistakes: {
          'forgot-the-other-side': near / way,
          'added-both': (near + far) / way,
          'times-the-ohms': (near - far) * way,
        },
      };
    },
  },
  /** A pair on each side of every gap, and one for each piece that a cut has left without feed. */
  'pairs-at-the-gaps': {
    range: [2, 60],
    make: (draw) => {
      const [paths, lone] = [draw(2, 3, 4, 5, 6), draw(2, 3, 4, 5)];
      const pairs = 2 * paths + lone;
      return {
        given: { paths: pieces(paths), lone: pieces(lone) },
        unit: 'pieces',
        right: pairs,
        mistakes: { 'one-side-only': paths + lone, 'gaps-only': 2 * paths, 'counted-wires': 2 * pairs },
      };
    },
  },
} as const satisfies Readonly<Record<string, Kind>>;
