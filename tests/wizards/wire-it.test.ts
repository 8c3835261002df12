import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DROP_LIMIT, loadedVolts, SHORT_MARGIN } from '../../src/engine/index.ts';
import type { Answers } from '../../src/wizards/answers.ts';
import { WIRE_IT_OUTCOMES } from '../../src/wizards/outcomes.ts';
import { QUESTIONS } from '../../src/wizards/questions.ts';
import { WIRE_IT_QUESTIONS } from '../../src/wizards/wire-it.ts';
import type { Wiring } from '../../src/wizards/wire-it-result.ts';
import { wire } from '../../src/wizards/wire-it-result.ts';
import { near } from '../near.ts';
import { answerTo } from './arbitrary.ts';
import { TO_WIRE_IT } from './outcomes.ts';
import { told } from './told.ts';

const LAYOUT = TO_WIRE_IT['wiring-good'] ?? {};
function wired(more: Readonly<Record<string, string>> = {}): Wiring {
  const found = wire(told({ ...LAYOUT, ...more }));
  if (found.kind !== 'wiring') throw new Error(`${found.because}: ${found.parts.join()}`);
  return found;
}

const anyAnswers: fc.Arbitrary<Answers> = fc
  .tuple(
    ...WIRE_IT_QUESTIONS.filter((id) => id !== 'system').flatMap((id) =>
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
        expect(found.chosen.shortAmps).toBeGreaterThanOrEqual(SHORT_MARGIN * found.chosen.trip - 1e-9);
      }),
      { numRuns: 50 },
    );
  });

  test('by hand: 15 V, one feeder at the end of nothing but bus, loses what two wires of 1.5 mm2 lose', () => {
    // IEC 60228 class 5: 13.3 ohm/km. Stage 0.2 ohm, 5 m there and back, a feeder of 0.3 m of 0.5 mm2 (39 ohm/km).
    const { now, plan } = wired({ 'feeder-count': '1', 'rail-kind': 'measured', 'rail-ohms': '1', 'wire-amps': '2 A' });
    const at = plan.feeders[0]?.at ?? Number.NaN;
    const ohms = 0.2 + 2 * (at * 0.0133 + 0.3 * 0.039 + (5 - at) * 0.001);
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
    const { outcome, chosen, now } = wired({ 'wire-trip': '8 A' });
    expect(now?.verdict).toBe('good');
    expect([outcome, chosen?.trip]).toEqual(['lower-trip-level', 5]);
  });

  test('the load test foretells what the meter shows at the weakest spot', () => {
    const { test: ahead, short, plan } = wired();
    const ohms = ahead?.resistor.ohms ?? Number.NaN;
    near(ahead?.far ?? Number.NaN, loadedVolts({ volts: 15, ohms: short.weakest.ohms }, ohms), 1e-12);
    expect(ahead?.near).toBeGreaterThan(ahead?.far ?? Number.NaN);
    expect(plan.source.volts / ohms).toBeLessThan(1.5);
  });

  test('a bus fed from its middle or joined to a ring leaves more at the worst spot than one fed at its end', () => {
    const [end, middle, ring] = ['end', 'middle', 'ring'].map(
      (shape) => wired({ 'bus-shape': shape, 'bus-length': shape === 'end' ? '10 m' : '5 m' }).now?.volts ?? 0,
    );
    expect(middle).toBeGreaterThan(end ?? 99);
    expect(ring).toBeGreaterThan(end ?? 99);
  });

  test('wire in American gauge is answered in American gauge', () => {
    const { candidates } = wired({ 'bus-wire': '20 AWG', 'bus-length': '15 m', 'feeder-count': '10' });
    const thicker = candidates.flatMap(({ change }) => (change.kind === 'thicker-bus' ? [change.conductor.area] : []));
    expect(thicker.length).toBeGreaterThan(2);
    near(thicker[0] ?? Number.NaN, 0.823e-6, 1e-9);
  });
});
