// What a page tells of how a number came about: the formula, put to the inputs that are named beside it, gives the number again.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gapExpected } from '../../../src/engine/crossing/expected.ts';
import { crossingLoop } from '../../../src/engine/crossing/loops.ts';
import { gapReadings } from '../../../src/engine/crossing/meters.ts';
import { crossingReversed } from '../../../src/engine/crossing/reversed.ts';
import type { CrossingPush, CrossingSide } from '../../../src/engine/crossing/sides.ts';
import { pushFrom } from '../../../src/engine/crossing/sides.ts';
import { crossingSkew } from '../../../src/engine/crossing/skew.ts';
import { bridgingTime } from '../../../src/engine/crossing/time.ts';
import type { Working } from '../../../src/engine/workings.ts';
import { near } from '../../near.ts';
import { spread } from '../../spread.ts';

type Values = Readonly<Record<string, number>>;
interface Line {
  readonly unit: Working['unit'];
  /** What it is reckoned of, by name, each with its unit. */
  readonly of: Readonly<Record<string, Working['unit']>>;
  readonly value: (values: Values) => number;
  readonly sources: readonly string[];
}

/** By the circuit: a stage behind a loop, a diode in the lower supply, and nothing that blocks on the way back. */
const LINES: Readonly<Record<string, Line>> = {
  'crossing-step': {
    unit: 'V',
    of: { 'higher-volts': 'V', 'lower-volts': 'V' },
    value: (v) => by(v, 'higher-volts') - by(v, 'lower-volts'),
    sources: ['own-derivation'],
  },
  'crossing-pulse': {
    unit: 'A',
    of: { step: 'V', ohms: 'ohm', 'back-drop': 'V' },
    value: (v) => Math.max(0, by(v, 'step') - by(v, 'back-drop')) / by(v, 'ohms'),
    sources: ['own-derivation'],
  },
  'crossing-charge': {
    unit: 'C',
    of: { step: 'V', 'link-farads': 'F', 'back-drop': 'V' },
    value: (v) => Math.max(0, by(v, 'step') - by(v, 'back-drop')) * by(v, 'link-farads'),
    sources: ['own-derivation'],
  },
  'crossing-time-constant': {
    unit: 's',
    of: { ohms: 'ohm', 'link-farads': 'F' },
    value: (v) => by(v, 'ohms') * by(v, 'link-farads'),
    sources: ['own-derivation'],
  },
  'crossing-take-over': {
    unit: 'A',
    of: { step: 'V', ohms: 'ohm', 'lower-load': 'A', 'lower-own-use': 'A', 'back-drop': 'V' },
    value: (v) => Math.max(0, Math.min(by(v, 'step') / by(v, 'ohms'), by(v, 'lower-load') + by(v, 'lower-own-use'))),
    sources: ['own-derivation', 'parallel-sources'],
  },
  'crossing-sinking': {
    unit: 'A',
    of: { step: 'V', ohms: 'ohm', 'lower-load': 'A', 'lower-own-use': 'A', 'back-drop': 'V' },
    value: (v) => Math.max(0, by(v, 'step') / by(v, 'ohms')),
    sources: ['own-derivation', 'parallel-sources'],
  },
  'crossing-link': {
    unit: 'V',
    of: { 'higher-volts': 'V', 'take-over': 'A', ohms: 'ohm', 'back-drop': 'V', 'lower-volts': 'V' },
    value: (v) => Math.max(by(v, 'higher-volts') - by(v, 'ohms') * by(v, 'take-over'), by(v, 'lower-volts')),
    sources: ['own-derivation', 'back-fed-supplies'],
  },
  'crossing-lift': {
    unit: 'V',
    of: { link: 'V', 'lower-volts': 'V' },
    value: (v) => by(v, 'link') - by(v, 'lower-volts'),
    sources: ['own-derivation'],
  },
  'crossing-carries': {
    unit: 'A',
    of: { 'higher-load': 'A', 'take-over': 'A', limit: 'A' },
    value: (v) => by(v, 'higher-load') + by(v, 'take-over'),
    sources: ['own-derivation'],
  },
  'crossing-loop': {
    unit: 'A',
    of: { 'near-volts': 'V', 'far-volts': 'V', 'driving-volts': 'V', ohms: 'ohm' },
    value: (v) => by(v, 'driving-volts') / by(v, 'ohms'),
    sources: ['own-derivation'],
  },
  'crossing-bridging-time': {
    unit: 's',
    of: { 'pick-up-span': 'm', gap: 'm', 'metres-a-second': 'm' },
    value: (v) => (by(v, 'pick-up-span') - by(v, 'gap')) / by(v, 'metres-a-second'),
    sources: ['own-derivation'],
  },
};

const by = (values: Values, name: string): number => values[name] ?? Number.NaN;

function givesItsNumber({ formula, unit, inputs, value, sources }: Working): void {
  const line = LINES[formula];
  if (line === undefined) throw new Error(`no line for ${formula}`);
  expect({ unit, sources }).toEqual({ unit: line.unit, sources: line.sources });
  expect(Object.fromEntries(inputs.map((one) => [one.name, one.unit])), formula).toEqual(line.of);
  near(value, line.value(Object.fromEntries(inputs.map((one) => [one.name, one.value]))), 1e-9, formula);
}

/** The rows of a push, by what each is called in its working. */
const rowsOf = ({ step, pulse, charge, timeConstant, takeOver, link, lift, carries }: CrossingPush) =>
  [
    ['crossing-step', step],
    ['crossing-pulse', pulse],
    ['crossing-charge', charge],
    ['crossing-time-constant', timeConstant],
    [undefined, takeOver],
    ['crossing-link', link],
    ['crossing-lift', lift],
    ['crossing-carries', carries],
  ] as const;

describe('each line of the workings gives its number again', () => {
  const side = fc.record({
    load: spread(0, 4),
    ownUse: spread(0, 0.5),
    limit: spread(1, 6),
    linkFarads: spread(1e-4, 5e-3),
    sinks: fc.boolean(),
  });
  const volts = spread(10, 20);

  test('of a train over the gap, for the worst of all cases, and in between for the usual one', () => {
    fc.assert(
      fc.property(side, side, volts, volts, spread(0, 2), spread(0.2, 3), (a, b, high, low, more, ohms) => {
        const higher: CrossingSide & { volts: { from: number; to: number } } = {
          ...a,
          volts: { from: high, to: high + more },
        };
        const lower = { ...b, volts: { from: low, to: low + more / 2 } };
        const push = pushFrom('far', higher, lower, { from: ohms, to: 2 * ohms });
        expect([push.from, push.limit]).toEqual(['far', a.limit]);
        for (const [formula, { span, typical, working }] of rowsOf(push)) {
          expect(working.formula).toBe(formula ?? (b.sinks ? 'crossing-sinking' : 'crossing-take-over'));
          expect(working.value).toBe(span.to);
          expect(typical).toBeGreaterThanOrEqual(span.from - 1e-9);
          expect(typical).toBeLessThanOrEqual(span.to + 1e-9);
          if (b.sinks && formula === 'crossing-link') continue;
          givesItsNumber(working);
        }
      }),
    );
  });

  test('of a detector: what the rails of either side stand at is told, not what its stage holds', () => {
    const plain = { load: 1, ownUse: 0, limit: 3, detectorVolts: 0.7 };
    const push = pushFrom('near', { ...plain, volts: 17 }, { ...plain, volts: 15 }, 1);
    const told = Object.fromEntries(push.step.working.inputs.map(({ name, value }) => [name, value]));
    near(by(told, 'higher-volts'), 16.3, 1e-12);
    near(by(told, 'lower-volts'), 14.3, 1e-12);
    near(push.step.working.value, 2, 1e-12);
    // Back through the stage the detector is passed twice more: 0.6 A flow back only from 1.4 V on, so that 1 A are taken over.
    near(push.takeOver.working.value, 1, 1e-12);
    near(push.lift.working.value, push.link.working.value - 15, 1e-9);
  });

  test('of a loop that a vehicle or a wire closes', () => {
    const anyLoop = fc.record({
      phase: fc.constantFrom('in-phase', 'reversed'),
      reference: fc.constantFrom('floating', 'joined-negatives', 'common-rail'),
      gapped: fc.constantFrom('one', 'both'),
      bridged: fc.constantFrom('none', 'one', 'both'),
      nearVolts: volts,
      farVolts: volts,
      ohms: spread(0.2, 3),
    });
    fc.assert(
      fc.property(anyLoop, (input) => {
        const loop = crossingLoop(input);
        if ('because' in loop) throw new Error(loop.because);
        expect(loop.working.formula).toBe('crossing-loop');
        expect(loop.working.value).toBe(loop.amps.to);
        givesItsNumber(loop.working);
      }),
    );
  });

  test('of the seconds for which a vehicle joins both sides: the longest, at its slowest', () => {
    const time = bridgingTime(0.101, { from: 0.05, to: 0.2 });
    if (time.kind !== 'seconds') throw new Error(time.kind);
    near(time.seconds.from, 0.5, 1e-12);
    near(time.seconds.to, 2, 1e-12);
    expect(time.working.formula).toBe('crossing-bridging-time');
    givesItsNumber(time.working);
  });

  test('of two units that switch apart: current, charge, heat of an edge, and the heat of all edges of a second', () => {
    const volts_ = 30;
    const [ohms, henries, seconds] = [0.5, 2e-6, 5e-6];
    const found = crossingSkew({ volts: volts_, ohms, henries, seconds, edges: 10_000 });
    if (found.kind !== 'skew') throw new Error(found.kind);
    const inputs = [
      { name: 'volts', value: 30, unit: 'V' },
      { name: 'ohms', value: 0.5, unit: 'ohm' },
      { name: 'henries', value: 2e-6, unit: 'H' },
      { name: 'seconds', value: 5e-6, unit: 's' },
    ];
    const sources = ['own-derivation'];
    expect(found.workings).toEqual([
      { formula: 'crossing-skew-current', value: found.peak, unit: 'A', inputs, sources },
      { formula: 'crossing-skew-charge', value: found.wholeCharge, unit: 'C', inputs, sources },
      { formula: 'crossing-skew-energy', value: found.energy, unit: 'J', inputs, sources },
      {
        formula: 'crossing-skew-power',
        value: found.power,
        unit: 'W',
        inputs: [...inputs, { name: 'edges', value: 10_000, unit: 'times' }],
        sources,
      },
    ]);
    near(found.power, (found.energy + (henries * found.peak ** 2) / 2) * 10_000, 1e-9);
    near(found.meanCurrent, (volts_ / ohms) * seconds * 10_000, 1e-9);
  });

  test('of two sides the wrong way round: both volts over the least of the loop', () => {
    const turned = { volts: { from: 14, to: 16 }, trip: 3, tripSeconds: 0.5, load: 0.5, ownUse: 0.1 };
    const found = crossingReversed(turned, { ...turned, volts: 15 }, { from: 0.5, to: 2 });
    if (found.kind !== 'reversed') throw new Error(found.kind);
    const inputs = [
      { name: 'near-volts', value: 16, unit: 'V' },
      { name: 'far-volts', value: 15, unit: 'V' },
      { name: 'ohms', value: 0.5, unit: 'ohm' },
    ];
    const sources = ['own-derivation'];
    expect(found.prospective.working).toEqual({ formula: 'crossing-reversed', value: 62, unit: 'A', inputs, sources });
    expect(found.power.working).toEqual({
      formula: 'crossing-reversed-power',
      value: 31 * 62,
      unit: 'W',
      inputs,
      sources,
    });
    expect(found.prospective.span).toEqual({ from: 14.5, to: 62 });
    expect(found.power.span).toEqual({ from: 29 * 14.5, to: 31 * 62 });
  });

  test('of all that is to be measured at a gap: how long a train joins it, an ordinary meter, a short', () => {
    expect(gapExpected('h0', 15, 15)?.workings.map(({ formula }) => formula)).toEqual([
      ...['crossing-bridging-time', 'crossing-meter-same-rail', 'crossing-loop'],
    ]);
    for (const [near_, far] of [
      [0, 15],
      [15, 0],
      [-1, 15],
      [15, Number.NaN],
    ] as const)
      expect(gapExpected('h0', near_, far)).toBeUndefined();
  });

  test('of what a meter shows across the gap: both readings, with what they were reckoned of', () => {
    const found = gapReadings({
      nearVolts: 15,
      farVolts: 16,
      phase: 'in-phase',
      tie: 'other-pair',
      meter: 'true-rms',
      skew: 1e-6,
    });
    if (found.kind !== 'readings') throw new Error(found.kind);
    const shown = [found.sameRail, found.diagonal].map((one) => (one.kind === 'shows' ? one.volts : Number.NaN));
    const inputs = [
      { name: 'near-volts', value: 15, unit: 'V' },
      { name: 'far-volts', value: 16, unit: 'V' },
      { name: 'skew', value: 1e-6, unit: 's' },
      { name: 'half-bit', value: 58e-6, unit: 's' },
    ];
    const sources = ['own-derivation', 'moving-average-meter'];
    expect(found.workings).toEqual([
      { formula: 'crossing-meter-same-rail', value: shown[0], unit: 'V', inputs, sources },
      { formula: 'crossing-meter-diagonal', value: shown[1], unit: 'V', inputs, sources },
    ]);
  });
});
