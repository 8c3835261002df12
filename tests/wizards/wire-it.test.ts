import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rewired } from '../../src/engine/index.ts';
import { DRAWS, SCALE_RANGE } from '../../src/engine/index.ts';
import { gaugeOf } from '../../src/engine/units.ts';
import { DROP_LIMIT } from '../../src/engine/wiring/limits.ts';
import { loadedVolts } from '../../src/engine/wiring/load-test.ts';
import { SHORT_MARGIN } from '../../src/engine/wiring/trips.ts';
import type { Conductor } from '../../src/engine/wiring/wire.ts';
import { METRIC_SIZES } from '../../src/engine/wiring/wire.ts';
import type { Answers } from '../../src/wizards/planning/answers.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { questionsIn, replay } from '../../src/wizards/planning/replay.ts';
import { wireIt } from '../../src/wizards/wire-it/flow.ts';
import type { WireItOutcome } from '../../src/wizards/wire-it/outcomes.ts';
import { WIRE_IT_OUTCOMES } from '../../src/wizards/wire-it/outcomes.ts';
import type { NotKnown, Wiring } from '../../src/wizards/wire-it/result.ts';
import { inOrderOfWork, isMuchCheaper, partsOf, wire } from '../../src/wizards/wire-it/result.ts';
import type { Untold } from '../../src/wizards/wire-it/sure.ts';
import { taking, untold } from '../../src/wizards/wire-it/sure.ts';
import { near } from '../near.ts';
import { answerTo } from './arbitrary.ts';
import { TO_WIRE_IT } from './outcomes.ts';
import { told } from './told.ts';

const LAYOUT = TO_WIRE_IT['wiring-good'] ?? {};
function wired(more: Readonly<Record<string, string>> = {}): Wiring {
  const found = wire(told({ ...LAYOUT, ...more }));
  if (found.kind !== 'wiring') throw new Error(`no verdict: ${JSON.stringify(found)}`);
  return found;
}

function notKnown(more: Readonly<Record<string, string>> = {}): NotKnown {
  const found = wire(told({ ...LAYOUT, ...more }));
  if (found.kind !== 'not-known') throw new Error(`a verdict: ${found.outcome}`);
  return found;
}

function bought(one: NotKnown['enough'][number] | undefined): { conductor: Conductor; count: number } {
  const change = one?.least?.change;
  if (change?.kind !== 'rewired' || change.bus === undefined || change.feeders === undefined)
    throw new Error('nothing to buy');
  return { conductor: change.bus, count: change.feeders.count };
}

function optionIn(assumptions: NotKnown['assumptions'], field: string): string {
  const answer = assumptions.find((one) => one.field === field)?.answer;
  return answer?.kind === 'choice' ? answer.option : 'unknown';
}

const anyAnswers: fc.Arbitrary<Answers> = fc
  .tuple(
    ...questionsIn(wireIt)
      .filter((id) => id !== 'system')
      .flatMap((id) =>
        QUESTIONS[id].fields.map((field) => answerTo(field).map((answer) => [field.id, answer] as const)),
      ),
  )
  .map((entries) => Object.fromEntries(entries));

describe('"How thick must the wire be?"', () => {
  test('always comes to one of its outcomes, with sound numbers', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const found = wire(answers);
        expect(WIRE_IT_OUTCOMES).toContain(found.outcome);
        if (found.kind !== 'wiring') return;
        for (const one of found.candidates) {
          expect(Number.isFinite(one.volts) && one.volts > 0).toBe(true);
          expect(Number.isFinite(one.shortAmps) && one.shortAmps > 0).toBe(true);
        }
        if (found.chosen !== undefined) expect(found.candidates).toContain(found.chosen);
      }),
      { numRuns: 50 },
    );
  });

  test('what it chooses keeps every rule: at most a tenth lost, and every short half as much again as the trip current', () => {
    fc.assert(
      fc.property(anyAnswers, (answers) => {
        const found = wire(answers);
        if (found.kind !== 'wiring' || found.chosen === undefined) return;
        if (found.tripLevel.finding === 'above-ceiling') return;
        expect(found.chosen.fails).toEqual([]);
        expect(found.chosen.drop).toBeLessThanOrEqual(DROP_LIMIT + 1e-9);
        expect(found.chosen.loopAmps).toBeGreaterThanOrEqual(SHORT_MARGIN * found.chosen.trip - 1e-9);
        expect(found.chosen.trip).toBeLessThan(found.supply?.gives.to ?? Number.POSITIVE_INFINITY);
      }),
      { numRuns: 50 },
    );
  });

  test('by hand: 15 V, one feeder at the end of nothing but bus, loses what two wires of 1.5 mm2 lose', () => {
    // IEC 60228 class 5: 13.3 ohm/km. Unit and supply 0.4 ohm at the most, 5 m there and back, a feeder of 0.3 m of 0.5 mm2 (39 ohm/km).
    const { now, plan } = wired({ 'feeder-count': '1', 'rail-kind': 'measured', 'rail-ohms': '1', 'wire-amps': '2 A' });
    const at = plan.feeders[0]?.at ?? Number.NaN;
    const ohms = 0.4 + 2 * (at * 0.0133 + 0.3 * 0.039 + (5 - at) * 0.001);
    near(now?.volts ?? Number.NaN, 15 - 2 * ohms, 1e-9);
  });

  test('"I don’t know" is said to be assumed: volts, trip current and amperes of the scale', () => {
    const { assumptions, plan, trip, trainAmps } = wired({
      'wire-volts': 'unknown',
      'wire-trip': 'unknown',
      'wire-amps': 'unknown',
    });
    expect(assumptions.map(({ field }) => field)).toEqual(['wire-volts', 'wire-trip', 'wire-amps']);
    expect([plan.source.volts, trip, trainAmps]).toEqual([15, 3, 1]);
  });

  test('trains cannot draw more than the unit lets through before it trips', () => {
    const { trainAmps, assumptions } = wired({ 'wire-amps': '9 A' });
    expect(trainAmps).toBe(3);
    expect(assumptions.map(({ field }) => field)).toEqual(['wire-amps']);
  });

  test('a unit that trips above what the scale bears is set lower, however good its wires are', () => {
    const { outcome, chosen, now } = wired({ 'wire-trip': '8 A', 'supply-amps': '10 A', 'feeder-wire': '1 mm2' });
    expect(now?.fails).toEqual(['trip-above-scale']);
    expect([outcome, chosen?.trip]).toEqual(['lower-trip-level', 5]);
    const { others } = wired({ 'wire-trip': '8 A', 'supply-amps': '10 A', 'feeder-wire': '1 mm2' });
    expect(others.map(({ change }) => change.kind)).not.toContain('as-it-is');
  });

  test('the load test foretells what the meter shows at the weakest spot', () => {
    const { test: ahead, short, plan } = wired();
    const ohms = ahead?.test.ohms ?? Number.NaN;
    near(ahead?.far ?? Number.NaN, loadedVolts({ volts: 15, ohms: short.weakest.ohms }, ohms), 1e-12);
    expect(ahead?.near).toBeGreaterThan(ahead?.far ?? Number.NaN);
    expect(plan.source.volts / ohms).toBeLessThan(3);
  });

  test('a bus fed from its middle or joined to a ring leaves more at the worst spot than one fed at its end', () => {
    const [end, middle, ring] = ['end', 'middle', 'ring'].map(
      (shape) =>
        wired({ 'bus-shape': shape, 'bus-length': shape === 'end' ? '10 m' : '5 m', 'track-length': '10 m' }).now
          ?.volts ?? 0,
    );
    expect(middle).toBeGreaterThan(end ?? 99);
    expect(ring).toBeGreaterThan(end ?? 99);
  });

  test('wire in American gauge is answered in American gauge', () => {
    const { candidates } = wired({
      'bus-wire': '20 AWG',
      'bus-shape': 'middle',
      'bus-length': '15 m',
      'track-length': '30 m',
      'feeder-count': '20',
      'wire-amps': '2 A',
    });
    const thicker = candidates.flatMap(({ change }) =>
      change.kind === 'rewired' && change.bus !== undefined ? [gaugeOf(change.bus.area)] : [],
    );
    expect(thicker.length).toBeGreaterThan(0);
    for (const gauge of thicker) expect([18, 16, 14, 12, 10]).toContain(gauge);
  });

  test('feet typed and no wire known: what to buy is a gauge; the switch of the page decides over what was typed', () => {
    const inFeet = told({
      ...LAYOUT,
      'bus-wire': 'unknown',
      'feeder-wire': 'unknown',
      'bus-length': '40 ft',
      'track-length': '40 ft',
    });
    const wires = (found: ReturnType<typeof wire>): number[] => {
      if (found.kind !== 'not-known') throw new Error(found.kind);
      return found.enough.flatMap(({ least }) =>
        least?.change.kind === 'rewired' && least.change.bus !== undefined ? [least.change.bus.area] : [],
      );
    };
    expect(wires(wire(inFeet)).map(gaugeOf)).toEqual([expect.any(Number)]);
    expect(wires(wire(inFeet, 'feet-and-gauge'))).toEqual(wires(wire(inFeet)));
    const [metric = Number.NaN, ...more] = wires(wire(inFeet, 'metric'));
    expect(more).toEqual([]);
    expect(METRIC_SIZES).toContain(metric);
  });
});

describe('wiring that nobody has described', () => {
  const ALL_UNKNOWN = Object.fromEntries(
    questionsIn(wireIt).flatMap((id) => QUESTIONS[id].fields.map((field) => [field.id, 'unknown'])),
  );

  test('is never called good: with everything unknown it is not known yet', () => {
    const found = wire(told(ALL_UNKNOWN));
    expect(found).toMatchObject({ kind: 'not-known', missing: ['trip', 'supply', 'wire', 'way', 'track', 'feeders'] });
  });

  test.each([
    ['bus-wire', 'wire'],
    ['bus-length', 'way'],
    ['track-length', 'track'],
  ] as const)('gets no verdict without %s, whatever else is told', (field, part) => {
    expect(notKnown({ [field]: 'unknown' }).missing).toEqual([part]);
  });

  test('a link from before the track was asked for gets no verdict on a track as long as its wire', () => {
    const { 'track-length': _, 'feed-by': __, ...before } = LAYOUT;
    expect(wire(told({ ...before, 'bus-length': '1 m', 'feeder-count': '1' })).outcome).toBe('wiring-not-known');
  });

  test('such a link asks for the track alone, and then goes where it went', () => {
    const { 'track-length': _, 'feed-by': __, ...before } = LAYOUT;
    expect(replay(wireIt, told(before)).question?.id).toBe('track');
    const after = replay(wireIt, told({ ...before, 'track-length': '5 m', 'feed-by': 'bus' }));
    expect([after.question, after.snapshot.value]).toEqual([undefined, 'surer']);
  });

  test('is not good on feeders that nobody has counted, unless one is enough', () => {
    const uncounted = { 'feeder-count': 'unknown', 'rail-kind': 'unknown', joints: 'unknown' };
    expect(wired({ 'feeder-count': '3', 'rail-kind': 'unknown' }).outcome).toBe('wiring-good');
    expect(notKnown(uncounted).missing).toEqual(['feeders']);
    expect(wired({ ...uncounted, 'bus-length': '1 m', 'track-length': '1 m' }).outcome).toBe('wiring-good');
  });

  test('bad wiring is bad with every number of feeders that one may have', () => {
    const thin = { 'bus-length': '12 m', 'track-length': '12 m', 'bus-wire': '0.5 mm2', 'wire-amps': '1.5 A' };
    for (const count of ['unknown', '1', '3', '30'])
      expect(wired({ ...thin, 'feeder-count': count }).now?.verdict).not.toBe('good');
  });

  test('of any answers, none is good without a wire, a way and a track', () => {
    fc.assert(
      fc.property(anyAnswers, fc.constantFrom('bus-wire', 'bus-length', 'track-length'), (answers, field) => {
        const { kind, outcome } = wire({ ...answers, [field]: { kind: 'unknown' } });
        expect(kind === 'stopped' || outcome === 'wiring-not-known').toBe(true);
      }),
      { numRuns: 20 },
    );
  });

  test.each(['z', 'n', 'tt', 'h0', '0', '1'])('speaks of five and of ten metres at scale %s', (scale) => {
    expect(notKnown({ ...ALL_UNKNOWN, scale }).enough.map(({ track }) => track)).toEqual([5, 10]);
  });

  // Judged by what wires and rails lose: what the stage takes off the volts no wire gives back.
  test.each([
    ['z', 5, 'good'],
    ['z', 10, 'good'],
    ['n', 5, 'good'],
    ['n', 10, 'good'],
    ['tt', 5, 'good'],
    ['tt', 10, 'good'],
    ['h0', 5, 'good'],
    ['h0', 10, 'good'],
    ['0', 5, 'good'],
    ['0', 10, 'good'],
    ['1', 5, 'good'],
    ['1', 10, 'good'],
  ] as const)(
    'what it says to buy at scale %s for %i m is %s by the same rules, told as laid',
    (scale, track, verdict) => {
      const { enough, assumptions } = notKnown({ ...ALL_UNKNOWN, scale });
      const one = enough.find(({ track: metres }) => metres === track);
      if (one === undefined) throw new Error('no such track');
      const { conductor, count } = bought(one);
      const { now, trip } = wired({
        ...ALL_UNKNOWN,
        scale,
        'bus-wire': `${conductor.area * 1e6} mm2`,
        'bus-length': `${one.way} m`,
        'track-length': `${track} m`,
        'feeder-count': String(count),
        'rail-kind': optionIn(assumptions, 'rail-kind'),
        'feeder-wire': `${one.feeder.area * 1e6} mm2`,
      });
      expect(now?.verdict).toBe(verdict);
      near(now?.drop ?? Number.NaN, one.least?.drop ?? 0, 1e-9);
      expect(now?.shortAmps).toBeGreaterThanOrEqual(SHORT_MARGIN * trip);
    },
  );

  test('what it says to buy is the least: with the next thinner wire no spacing down to a metre is good', () => {
    const [, ten] = notKnown({ ...ALL_UNKNOWN, system: 'two-rail', scale: 'h0' }).enough;
    const thinner = METRIC_SIZES.findLast((area) => area < bought(ten).conductor.area);
    expect(thinner).toBeDefined();
    for (const count of ['3', '5', '8', '11']) {
      const laid = wired({
        'wire-volts': 'unknown',
        'wire-trip': 'unknown',
        'wire-amps': 'unknown',
        'bus-wire': `${(thinner ?? 0) * 1e6} mm2`,
        'bus-length': '10 m',
        'track-length': '10 m',
        'feeder-count': count,
        'rail-kind': 'code-70',
        joints: 'plain',
      });
      expect(laid.now?.verdict).not.toBe('good');
    }
  });

  test('a wire that is there is kept where it is thick enough', () => {
    const [five] = notKnown({ 'bus-wire': '2.5 mm2', 'track-length': 'unknown' }).enough;
    expect(bought(five).conductor.area).toBe(2.5e-6);
  });

  test('with the track told, it speaks of that track', () => {
    expect(notKnown({ 'bus-wire': 'unknown', 'track-length': '7 m' }).enough.map(({ track }) => track)).toEqual([7]);
  });

  test('a trip current above what the scale bears is not reckoned with', () => {
    const found = notKnown({ 'bus-wire': 'unknown', 'wire-trip': '8 A' });
    expect([found.tripLevel.finding, found.trip]).toEqual(['above-ceiling', 5]);
  });

  test('no wire reaches two hundred metres, and it says so', () => {
    const { enough } = notKnown({ 'bus-wire': 'unknown', 'bus-length': '200 m', 'track-length': '200 m' });
    expect(enough.map(({ least }) => least)).toEqual([undefined]);
  });
});

describe('one pair of wires to the track, without a bus', () => {
  const PAIR = { 'feed-by': 'pair', 'bus-length': '1 m', 'rail-kind': 'measured', 'rail-ohms': '100', joints: 'fed' };

  test('is asked for no shape of a bus and no number of feeders', () => {
    const { 'bus-shape': __, 'feeder-count': ___, ...rest } = LAYOUT;
    const asked = replay(wireIt, told({ ...rest, 'feed-by': 'pair', 'track-shape': 'ends' })).trail.map(({ id }) => id);
    expect(asked).toEqual(['system', 'scale', 'wire-need', 'supply-label', 'bus', 'track', 'rail-kind']);
  });

  test('by hand: the far end of four metres hangs on the pair and on all of the rails', () => {
    const { now } = wired({ ...PAIR, 'track-shape': 'ends', 'track-length': '4 m' });
    near(now?.volts ?? Number.NaN, 15 - (0.4 + 2 * (1 * 0.0133 + 4 * 0.1)), 1e-9);
  });

  test('by hand: on an oval of four metres the farthest place has two ways of two metres', () => {
    const { now } = wired({ ...PAIR, 'track-shape': 'oval', 'track-length': '4 m' });
    near(now?.volts ?? Number.NaN, 15 - (0.4 + 2 * (1 * 0.0133 + (2 * 0.1) / 2)), 1e-9);
  });

  test('a metre of pair is no metre of track: the longer the track, the less is left', () => {
    const volts = ['1 m', '3 m', '9 m'].map((length) => wired({ ...PAIR, 'track-length': length }).now?.volts ?? 0);
    expect(volts[0]).toBeGreaterThan(volts[1] ?? 99);
    expect(volts[1]).toBeGreaterThan(volts[2] ?? 99);
    expect(wired({ ...PAIR, 'track-length': '9 m' }).outcome).not.toBe('wiring-good');
  });

  test('is not told to move to the middle of a bus that is not there', () => {
    const { candidates } = wired({ ...PAIR, 'track-length': '30 m' });
    const rewired = candidates.flatMap(({ change }) => (change.kind === 'rewired' ? [change] : []));
    for (const change of rewired)
      expect(partsOf(change, true).includes('feed-bus-from-middle')).toBe(
        change.middle !== undefined && change.feeders !== undefined,
      );
    expect(rewired.some(({ feeders }) => feeders !== undefined)).toBe(true);
  });
});

describe('a wire that is longer than its track', () => {
  test('by hand: what it is longer lies between the unit and the rails', () => {
    const feeders = { 'feeder-count': '1', 'rail-kind': 'measured', 'rail-ohms': '1' };
    const { now, plan } = wired({ ...feeders, 'bus-length': '8 m', 'track-length': '5 m' });
    const at = plan.feeders[0]?.at ?? Number.NaN;
    near(now?.volts ?? Number.NaN, 15 - (0.4 + 2 * ((3 + at) * 0.0133 + 0.3 * 0.039 + (5 - at) * 0.001)), 1e-9);
  });

  test('the load test is told for each kind of meter: the ordinary one shows a ninth more at every spot', () => {
    const { test: ahead } = wired();
    if (ahead === undefined) throw new Error('no test');
    const read = (kind: string) => ahead.meters.find(({ meter }) => meter === kind);
    for (const spot of ['open', 'near', 'far'] as const) {
      expect(read('true-rms')?.[spot]).toEqual({ kind: 'shows', volts: expect.closeTo(ahead[spot], 9) });
      expect(read('averaging')?.[spot]).toEqual({ kind: 'shows', volts: expect.closeTo(1.1107 * ahead[spot], 2) });
    }
  });
});

describe('what each outcome carries', () => {
  /** A change in words: its parts, sizes in square millimetres, feeders by number and distance. */
  function said(one: Wiring['now']): string {
    if (one === undefined) return 'none';
    const { change, verdict } = one;
    if (change.kind !== 'rewired')
      return [change.kind, ...('trip' in change ? [`${change.trip} A`] : [])].join(' ').concat(`: ${verdict}`);
    return `${rewired(change).join(', ')}: ${verdict}`;
  }

  function rewired(change: Rewired): string[] {
    const { middle, ring, bus, feeders, feederWire } = change;
    return [
      ...(middle === undefined ? [] : [`middle ${middle} m`]),
      ...(ring === true ? ['ring'] : []),
      ...(bus === undefined ? [] : [`bus ${(bus.area * 1e6).toFixed(1)}`]),
      ...(feeders === undefined ? [] : [`${feeders.count} feeders every ${feeders.spacing} m`]),
      ...(feederWire === undefined ? [] : [`feeder wire ${(feederWire.area * 1e6).toFixed(1)}`]),
    ];
  }

  test.each<
    [
      WireItOutcome,
      { sure: Wiring['sure']['kind']; now: string; chosen: string; others?: readonly string[]; tonight?: number },
    ]
  >([
    ['wiring-good', { sure: 'surely', now: 'as-it-is: good', chosen: 'as-it-is: good' }],
    ['more-feeders', { sure: 'surely', now: 'as-it-is: bearable', chosen: '2 feeders every 5 m: good' }],
    ['thicker-feeders', { sure: 'surely-not', now: 'as-it-is: fails', chosen: 'feeder wire 0.5: good' }],
    [
      'thicker-bus',
      {
        ...{ sure: 'surely-not', now: 'as-it-is: fails', chosen: 'bus 2.5: good', tonight: 2.58 },
        others: ['ring: bearable', 'ring, bus 1.0: good'],
      },
    ],
    ['feed-bus-from-middle', { sure: 'surely', now: 'as-it-is: bearable', chosen: 'middle 10 m: good' }],
    ['pair-to-the-middle', { sure: 'surely', now: 'as-it-is: bearable', chosen: 'middle 2 m: good' }],
    ['bus-as-a-ring', { sure: 'surely-not', now: 'as-it-is: fails', chosen: 'ring: bearable', tonight: 1.05 }],
    [
      'lower-trip-level',
      { sure: 'surely-not', now: 'as-it-is: fails', chosen: 'lower-trip 5 A: good', others: ['breakers 5 A: good'] },
    ],
    ['booster-near-load', { sure: 'surely-not', now: 'none', chosen: 'none' }],
  ])('%s', (outcome, { sure, now, chosen, others = [], tonight }) => {
    const found = wire(told(TO_WIRE_IT[outcome]), 'metric');
    if (found.kind !== 'wiring') throw new Error(found.kind);
    expect([found.outcome, found.sure, said(found.now), said(found.chosen), found.others.map(said)]).toEqual([
      ...[outcome, { kind: sure, on: [] }, now, chosen, others],
    ]);
    expect(found.tonight === undefined ? undefined : Number(found.tonight.toFixed(2))).toBe(tonight);
    expect([found.pair, found.feedersTold, found.supply?.kind]).toEqual([
      outcome === 'pair-to-the-middle',
      true,
      'surely',
    ]);
    expect(found.train === undefined).toBe(outcome === 'booster-near-load');
    near(found.loopLimit.value, 15 / (1.5 * found.trip), 1e-9);
  });

  test.each([
    ['rail-voltage-too-high', 24, false],
    ['volts-too-low', 7, true],
    ['supply-cannot-trip', 15, true],
  ] as const)('%s stops it, at %d V; another supply may do it: %s', (outcome, volts, buys) => {
    expect(wire(told(TO_WIRE_IT[outcome]))).toMatchObject({
      kind: 'stopped',
      outcome,
      scale: 'h0',
      volts,
      trip: 3,
      buys,
    });
  });

  test('trains far away may draw as much less as more is lost than may be', () => {
    const found = wire(told(TO_WIRE_IT['thicker-bus']));
    if (found.kind !== 'wiring' || found.now === undefined) throw new Error('no wiring');
    near(found.tonight ?? 0, (3 * DROP_LIMIT) / found.now.drop, 1e-9);
    expect(found.way).toBe(10);
  });

  test('the load test: a resistor of 15 ohms at the unit, and where least is left', () => {
    const { test: ahead, plan, short } = wired();
    near(ahead?.near ?? 0, (15 * 15) / (15 + plan.source.ohms), 1e-9);
    near(ahead?.far ?? 0, (15 * 15) / (15 + short.weakest.ohms), 1e-9);
    expect(ahead?.meters.map(({ meter }) => meter)).toEqual(['averaging', 'true-rms', 'cheapest']);
  });
});

describe('the plan that is solved is what was told', () => {
  // One rail, the most that was measured on its kind, ohms a metre; a code by the square of its height.
  test.each([
    ['code-55', 0.206 * (70 / 55) ** 2],
    ['code-70', 0.206],
    ['code-80', 0.076 * (100 / 80) ** 2],
    ['code-83', 0.108],
    ['code-100', 0.076],
    ['brass', 0.0189],
    ['large-nickel-silver', 0.076 / 4],
    ['large-brass', 0.0189 * (100 / 250) ** 2],
  ])('rails of %s resist %d ohms a metre', (kind, ohms) => {
    near(wired({ 'rail-kind': kind }).plan.rails.ohmsPerMetre, ohms, 1e-9);
  });

  test('steel rails resist most of their size, and a rail that was measured what was measured', () => {
    const ohms = (kind: string, more = {}) => wired({ 'rail-kind': kind, ...more }).plan.rails.ohmsPerMetre;
    expect(ohms('steel')).toBeGreaterThan(ohms('brass'));
    expect(ohms('large-steel')).toBeGreaterThan(ohms('large-brass'));
    near(ohms('measured', { 'rail-ohms': '120 mohm/m' }), 0.12, 1e-9);
    near(ohms('measured', { 'rail-ohms': 'unknown' }), 0.108, 1e-9);
  });

  test.each([
    ['fed', 0, 0, 0],
    ['soldered', 5, 0.001, 0.9],
    ['plain', 5, 0.02, 0.9],
    ['sectional', 21, 0.02, 0.23],
  ])('five metres with joints %s: %d joints of %d ohms in each rail, one every %d m', (joints, count, ohms, piece) => {
    const { rails } = wired({ joints }).plan;
    expect(rails.joints).toHaveLength(count);
    expect(rails.joints.every((one) => one.ohms === ohms)).toBe(true);
    near(rails.joints[0]?.at ?? 0, piece, 1e-12);
  });

  test('a bus from its end, its middle or as a ring; what its way is longer than the track is lead', () => {
    const bus = (more: Readonly<Record<string, string>>) =>
      wired({ 'track-length': '8 m', 'bus-length': '10 m', ...more }).plan.bus;
    expect(bus({})).toMatchObject({ length: 8, fedAt: 0, ring: false, lead: 2 });
    expect(bus({ 'bus-shape': 'middle', 'bus-way': '5 m' })).toMatchObject({
      length: 8,
      fedAt: 4,
      ring: false,
      lead: 1,
    });
    expect(bus({ 'bus-shape': 'middle' })).toMatchObject({ fedAt: 4, lead: 2 });
    expect(bus({ 'bus-shape': 'ring', 'bus-way': '4 m' })).toMatchObject({ fedAt: 0, ring: true, lead: 0 });
    expect(bus({ 'bus-shape': 'ring', 'bus-way': '3 m' })).toMatchObject({ lead: 0 });
  });

  test('one pair: its last stretch stands for a feeder, of no more than half of it; an oval is closed', () => {
    const pair = (way: string, shape: string) =>
      wired({ 'feed-by': 'pair', 'bus-length': way, 'track-shape': shape }).plan;
    expect(pair('1 m', 'ends')).toMatchObject({
      bus: { lead: 0.7 },
      feeders: [{ at: 0, length: 0.3 }],
      rails: { closed: false },
    });
    expect(pair('0.4 m', 'oval')).toMatchObject({
      bus: { lead: 0.2 },
      feeders: [{ at: 0, length: 0.2 }],
      rails: { closed: true },
    });
    expect(wired({ 'track-shape': 'oval' }).plan.rails.closed).toBe(false);
  });

  test('where nobody has counted, a feeder every three metres, and at least one', () => {
    const counted = (track: string): number | undefined => {
      const found = wire(
        told({
          ...LAYOUT,
          'feeder-count': 'unknown',
          'track-length': track,
          'bus-length': track,
          'rail-kind': 'code-70',
          'wire-amps': '3 A',
        }),
      );
      const laid = found.kind === 'not-known' ? found.uncounted : found;
      if (found.kind === 'wiring' || found.kind === 'not-known') {
        const usual = Math.max(1, Math.ceil(Number.parseFloat(track) / 3));
        const assumed = found.assumptions.find(({ field }) => field === 'feeder-count')?.answer;
        expect(assumed).toEqual({ kind: 'number', span: { from: usual, to: usual } });
      }
      return laid !== undefined && 'plan' in laid ? laid.plan.feeders.length : undefined;
    };
    expect(['2 m', '3 m', '3.1 m', '9 m'].map(counted)).toEqual([1, 1, 2, 3]);
  });

  test('feeder wire that nobody has told of is the usual one, or the next that bears the trip current', () => {
    const area = (trip: string): number => {
      const found = wire(told({ ...LAYOUT, 'feeder-wire': 'unknown', 'wire-trip': trip, 'supply-amps': '10 A' }));
      const assumed =
        found.kind === 'wiring' ? found.assumptions.find(({ field }) => field === 'feeder-wire')?.answer : undefined;
      return assumed?.kind === 'number' ? Number((assumed.span.from * 1e6).toFixed(2)) : Number.NaN;
    };
    expect(['3 A', '5 A'].map(area)).toEqual([0.5, 0.5]);
  });
});

describe('whether the supply trips the unit', () => {
  const supply = (volts: string, amps: string, kind = 'dc') =>
    wired({ 'supply-volts': volts, 'supply-amps': amps, 'supply-kind': kind }).supply;

  test('through a step-down unit it may give more amperes than it takes: where that decides it is perhaps', () => {
    // 18 V and 2.9 A behind 15 V of rails: 2.9 A if they follow, up to a fifth more where the unit steps down.
    expect(supply('18 V', '2.9 A')).toMatchObject({ kind: 'perhaps' });
    // From 15 % above the rails on it may step down, and then give a little less than the label says.
    expect(['17.2 V', '17.25 V'].map((volts) => (supply(volts, '2.7 A')?.gives.from ?? 0) < 2.7)).toEqual([
      false,
      true,
    ]);
    expect(supply('16 V', '5 A')).toMatchObject({ kind: 'surely', trip: 3, gives: { from: 5 } });
    const [near16, far24] = [supply('17 V', '5 A'), supply('24 V', '5 A')];
    expect(near16?.gives.from).toBe(5);
    expect(far24?.gives.from).toBe(5);
    expect(far24?.gives.to).toBeGreaterThan(near16?.gives.to ?? 0);
    expect(supply('16 V', 'unknown')).toBeUndefined();
  });
});

describe('work that is laid together', () => {
  test('is done in the order in which each part is joined to the one before', () => {
    expect(
      inOrderOfWork(['more-feeders', 'bus-as-a-ring', 'thicker-feeders', 'feed-bus-from-middle', 'thicker-bus'], false),
    ).toEqual([...['thicker-bus', 'thicker-feeders', 'feed-bus-from-middle', 'bus-as-a-ring', 'more-feeders']]);
    expect(inOrderOfWork(['pair-to-the-middle'], true)).toEqual(['pair-to-the-middle']);
  });

  test('on one pair the new feeders come first, for they lay the bus', () => {
    expect(inOrderOfWork(['thicker-bus', 'feed-bus-from-middle', 'more-feeders'], true)).toEqual([
      'more-feeders',
      'feed-bus-from-middle',
    ]);
    expect(inOrderOfWork(['thicker-bus', 'pair-to-the-middle'], true)).toEqual(['thicker-bus', 'pair-to-the-middle']);
  });

  test('a change is told by its parts, and the middle of a pair without feeders is the pair’s', () => {
    const all = {
      kind: 'rewired',
      middle: 2,
      ring: true,
      bus: { area: 1e-6, make: 'flexible' },
      feederWire: { area: 1e-6, make: 'flexible' },
    } as const;
    const feeders = { spacing: 1, count: 3, added: 2 };
    expect(partsOf({ ...all, feeders }, true)).toEqual([
      'feed-bus-from-middle',
      'bus-as-a-ring',
      'thicker-bus',
      'more-feeders',
      'thicker-feeders',
    ]);
    expect(partsOf(all, true)).toEqual(['pair-to-the-middle', 'bus-as-a-ring', 'thicker-bus', 'thicker-feeders']);
    expect(partsOf(all, false)[0]).toBe('feed-bus-from-middle');
    expect(partsOf({ kind: 'rewired' }, false)).toEqual([]);
  });
});

describe('a ring, for which both ends of the bus must meet', () => {
  const cost = (euros: number, hours: number) => ({
    cost: { money: { from: 0, to: euros }, hours: { from: 0, to: hours } },
  });
  test.each([
    ['31 euros less', cost(20, 5), cost(51, 5), true],
    ['30 euros less', cost(20, 5), cost(50, 5), false],
    ['seven hours less', cost(20, 2), cost(20, 9), true],
    ['six hours less', cost(20, 3), cost(20, 9), false],
    ['half of money and of hours, where the other takes more than an evening', cost(20, 4), cost(40, 8), true],
    ['half of both, where the other takes no more than an evening', cost(20, 3), cost(40, 6), false],
    ['half of the money, and an hour of eight', cost(20, 7), cost(40, 8), false],
    ['a third of both, and no more', cost(20, 6), cost(30, 9), false],
    ['half of the hours, and a euro of twenty', cost(19, 4), cost(20, 8), false],
    ['just a third of the money, and half of the hours', cost(20, 4), cost(30, 8), false],
    ['half of the money, and just a third of the hours', cost(15, 6), cost(30, 9), false],
    ['31 euros less, and an hour more', cost(20, 5), cost(51, 4), false],
    ['seven hours less, and a euro more', cost(21, 2), cost(20, 9), false],
  ] as const)('spares %s', (_, ring, other, spares) => {
    expect(isMuchCheaper(ring, other)).toBe(spares);
  });
});

describe('what nobody has told, at its worst and at its best', () => {
  const ends = (field: Untold, end: 'worst' | 'best', more: Readonly<Record<string, string>> = {}) => {
    const answer = taking(told({ ...LAYOUT, ...more }), [field], end)[field];
    if (answer?.kind === 'choice') return answer.option;
    return answer?.kind === 'number'
      ? Number((answer.span.from * (field === 'feeder-wire' ? 1e6 : 1)).toFixed(3))
      : undefined;
  };

  test.each<[Untold, unknown, unknown]>([
    ['track-shape', 'ends', 'oval'],
    ['bus-shape', 'end', 'ring'],
    ['bus-way', 5, 2.5],
    ['feeder-count', 1, 10],
    ['feeder-wire', 0.14, 1],
    ['rail-kind', 'code-70', 'code-100'],
    ['joints', 'sectional', 'fed'],
  ])('%s: %s, or %s', (field, worst, best) => {
    expect([ends(field, 'worst'), ends(field, 'best')]).toEqual([worst, best]);
  });

  test('volts, trip current and amperes are those of the scale', () => {
    for (const [scale, rail] of [
      ['n', 'code-80'],
      ['z', 'code-55'],
      ['tt', 'code-100'],
      ['1', 'large-brass'],
    ] as const) {
      expect(ends('rail-kind', 'best', { scale })).toBe(rail);
      const { trip, modern, older } = DRAWS[scale];
      expect([ends('wire-trip', 'worst', { scale }), ends('wire-trip', 'best', { scale })]).toEqual([
        trip.to,
        trip.from,
      ]);
      near(Number(ends('wire-amps', 'worst', { scale })), 2 * older.to, 1e-3);
      near(Number(ends('wire-amps', 'best', { scale })), modern.to, 1e-3);
      expect([ends('wire-volts', 'worst', { scale }), ends('wire-volts', 'best', { scale })]).toEqual([
        SCALE_RANGE[scale].from,
        SCALE_RANGE[scale].to,
      ]);
    }
  });

  test('a pair has no bus and no feeders to count, a bus no track that is an oval; the way is asked again only off the end', () => {
    const open = (more: Readonly<Record<string, string>>) => {
      const bare = Object.fromEntries(
        Object.entries(LAYOUT).filter(([id]) =>
          ['system', 'scale', 'feed-by', 'bus-length', 'track-length'].includes(id),
        ),
      );
      return untold(told({ ...bare, ...more }));
    };
    expect(open({ 'feed-by': 'pair' })).toEqual([
      'wire-volts',
      'wire-trip',
      'wire-amps',
      'track-shape',
      'rail-kind',
      'joints',
    ]);
    expect(open({})).toEqual([
      ...[
        'wire-volts',
        'wire-trip',
        'wire-amps',
        'bus-shape',
        'bus-way',
        'feeder-count',
        'feeder-wire',
        'rail-kind',
        'joints',
      ],
    ]);
    expect(open({ 'bus-shape': 'end', joints: 'unknown' })).not.toContain('bus-way');
    expect(open({ 'bus-shape': 'middle' })).toContain('bus-way');
    expect(untold(told(LAYOUT))).toEqual([]);
  });
});
