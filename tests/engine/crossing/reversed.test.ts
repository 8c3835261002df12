import { describe, expect, test } from 'vitest';
import type { CommonReference, CrossingLoop, LoopInput, RailsBridged } from '../../../src/engine/crossing/loops.ts';
import { crossingLoop } from '../../../src/engine/crossing/loops.ts';
import type { CrossingReversed, ReversedSide } from '../../../src/engine/crossing/reversed.ts';
import { crossingReversed } from '../../../src/engine/crossing/reversed.ts';
import { near } from '../../near.ts';

const side = (more: Partial<ReversedSide> = {}): ReversedSide => ({
  volts: 15,
  trip: 3,
  tripSeconds: 0.5,
  load: 0.5,
  ownUse: 0.1,
  ...more,
});

function reversed(a: ReversedSide, b: ReversedSide, ohms: Parameters<typeof crossingReversed>[2]): CrossingReversed {
  const found = crossingReversed(a, b, ohms);
  if (found.kind !== 'reversed') throw new Error(`no answer: ${found.because}`);
  return found;
}

describe('two sides the wrong way round to each other', () => {
  const found = reversed(side(), side(), { from: 0.3, typical: 1, to: 3 });

  test('drive 10 to 100 A through both stages in series', () => {
    near(found.prospective.span.from, 10, 1e-12);
    near(found.prospective.span.to, 100, 1e-12);
    near(found.prospective.typical, 30, 1e-12);
    expect(found.findings).toContain('both-in-series');
    near(found.power.typical, 900, 1e-9);
  });

  test('are never to be run', () => {
    expect([found.verdict, found.reasons, found.advice]).toEqual(['do-not-run', ['reversed'], ['turn-one-pair-round']]);
  });

  test('the faster protection opens, and the other may show nothing', () => {
    const fast = reversed(side({ trip: 5 }), side({ trip: 5, tripSeconds: 0.01 }), 1);
    expect(fast.opens).toBe('far');
    expect(fast.findings).toContain('other-may-show-nothing');
    near(fast.lasts?.to ?? Number.NaN, 0.01, 1e-12);
  });

  test('of two equally fast ones the one with the lower trip current opens', () => {
    expect(reversed(side({ trip: 2 }), side({ trip: 5 }), 1).opens).toBe('near');
    expect(reversed(side({ trip: 5 }), side({ trip: 2 }), 1).opens).toBe('far');
    expect(reversed(side(), side(), 1).opens).toBe('either');
  });

  test('a slower stage opens where the fast one does not see a short', () => {
    const found = reversed(side({ trip: 8, tripSeconds: 0.01 }), side({ trip: 3 }), 5);
    expect(found.reaches).toEqual({ near: 'no', far: 'yes' });
    expect(found.opens).toBe('far');
    near(found.lasts?.from ?? Number.NaN, 0.5, 1e-12);
  });

  test('a short lasts until that one opens which surely does: one that perhaps does can only make it shorter', () => {
    const found = reversed(side({ trip: 3 }), side({ trip: 8, tripSeconds: 0.01 }), { from: 3, to: 6 });
    expect(found.reaches).toEqual({ near: 'yes', far: 'perhaps' });
    expect(found.lasts).toEqual({ from: 0.01, to: 0.5 });
  });

  test('over poor contacts nothing may trip, and the loop gets hot', () => {
    const poor = reversed(side({ trip: 5 }), side({ trip: 5 }), { from: 4, to: 12 });
    expect(poor.findings).toContain('may-not-trip');
    expect(poor.lasts).toBeUndefined();
    const worse = reversed(side({ trip: 5 }), side({ trip: 5 }), 10);
    expect([worse.opens, worse.findings]).toEqual(['none', ['both-in-series', 'nothing-trips']]);
    near(worse.power.typical, 90, 1e-9);
    expect(worse.afterTrip).toBeUndefined();
  });

  test('after one has opened, the other still feeds it through the train', () => {
    const after = reversed(side({ trip: 2, volts: 15 }), side({ volts: 16 }), 1);
    near(after.afterTrip?.amps ?? Number.NaN, 0.6, 1e-12);
    near(after.afterTrip?.linkVolts ?? Number.NaN, 16 - 0.6 - 1.4, 1e-12);
    expect(after.findings).toContain('tripped-side-comes-alive');
  });

  test('a stage that switches itself on again pulses for as long as the train stands there', () => {
    expect(reversed(side({ retries: true }), side(), 1).findings).toContain('pulses-without-end');
    expect(reversed(side(), side(), 1).findings).not.toContain('pulses-without-end');
  });

  test('an input that no circuit has names its part', () => {
    expect(crossingReversed(side({ trip: 0 }), side(), 1)).toMatchObject({
      because: 'not-positive',
      parts: ['near.trip'],
    });
    expect(crossingReversed(side(), side({ volts: Number.NaN }), 1)).toMatchObject({ parts: ['far.volts'] });
    expect(crossingReversed(side(), side(), 0)).toMatchObject({ because: 'not-positive', parts: ['ohms'] });
    expect(crossingReversed(side(), side({ tripSeconds: -1 }), 1)).toMatchObject({ parts: ['far.trip-seconds'] });
  });
});

describe('what closes the loop', () => {
  const loop = (more: Partial<LoopInput>): CrossingLoop => {
    const found = crossingLoop({
      phase: 'in-phase',
      reference: 'floating',
      gapped: 'both',
      bridged: 'one',
      nearVolts: 16,
      farVolts: 15,
      ohms: 1,
      ...more,
    });
    if (found.kind === 'no-solution') throw new Error(`no answer: ${found.because}`);
    return found;
  };

  test('with floating stages a single wheel closes nothing, not even reversed', () => {
    for (const phase of ['in-phase', 'reversed'] as const) {
      expect(loop({ phase }).kind).toBe('open');
      expect(loop({ phase }).amps.to).toBe(0);
    }
  });

  test('with joined negatives a single wheel does: half of the time the difference, reversed the whole rail voltage', () => {
    const inPhase = loop({ reference: 'joined-negatives' });
    expect([inPhase.kind, inPhase.volts.to, inPhase.share, inPhase.throughCommon]).toEqual([
      'equalising',
      1,
      0.5,
      true,
    ]);
    const turned = loop({ reference: 'joined-negatives', phase: 'reversed' });
    expect([turned.kind, turned.volts.to, turned.share]).toEqual(['short', 16, 1]);
  });

  test('with a common rail a single wheel joins them all the time, reversed with both voltages', () => {
    expect(loop({ reference: 'common-rail' }).volts.to).toBe(1);
    expect(loop({ reference: 'common-rail', phase: 'reversed' }).volts.to).toBe(31);
    expect(loop({ reference: 'common-rail', phase: 'reversed' }).amps.to).toBe(62);
  });

  test.each<readonly [CommonReference, number, number]>([
    ['floating', 1, 31],
    ['joined-negatives', 2, 32],
    ['common-rail', 2, 62],
  ])('both rails bridged, %s: %d A in phase, %d A reversed over one ohm', (reference, inPhase, turned) => {
    near(loop({ reference, bridged: 'both' }).amps.to, inPhase, 1e-12);
    near(loop({ reference, bridged: 'both', phase: 'reversed' }).amps.to, turned, 1e-12);
  });

  test('one rail gapped only, floating: nothing flows until a wheel joins the gapped one', () => {
    for (const phase of ['in-phase', 'reversed'] as const) {
      expect(loop({ phase, gapped: 'one', bridged: 'none' }).kind).toBe('open');
    }
    expect(loop({ gapped: 'one' }).kind).toBe('equalising');
    const turned = loop({ gapped: 'one', phase: 'reversed' });
    expect([turned.kind, turned.volts.to]).toEqual(['short', 31]);
    expect(turned.withoutVehicle).toBe(false);
  });

  test('one rail gapped only, joined negatives: reversed is a short without any vehicle', () => {
    const none = loop({ gapped: 'one', bridged: 'none', reference: 'joined-negatives', phase: 'reversed' });
    expect([none.kind, none.withoutVehicle]).toEqual(['short', true]);
    expect(loop({ reference: 'joined-negatives', phase: 'reversed' }).withoutVehicle).toBe(false);
  });

  test('nothing bridged, both gapped: nothing flows, whatever the common', () => {
    for (const reference of ['floating', 'joined-negatives', 'common-rail'] as const) {
      for (const phase of ['in-phase', 'reversed'] as const) {
        expect(loop({ reference, phase, bridged: 'none' }).kind).toBe('open');
      }
    }
  });

  test('equal volts in phase: nothing flows, whatever is bridged', () => {
    for (const bridged of ['one', 'both'] as const satisfies readonly RailsBridged[]) {
      for (const reference of ['floating', 'joined-negatives', 'common-rail'] as const) {
        expect(loop({ reference, bridged, farVolts: 16 }).kind).toBe('open');
      }
    }
  });

  test('ranges give a range', () => {
    const wide = loop({ bridged: 'both', nearVolts: { from: 15, to: 17 }, ohms: { from: 0.5, typical: 1, to: 2 } });
    expect(wide.volts).toEqual({ from: 0, to: 2 });
    near(wide.amps.to, 4, 1e-12);
    near(wide.typicalAmps, 1, 1e-12);
  });

  test('a loop without resistance, or volts that are no number, are named', () => {
    const bad = { phase: 'reversed', reference: 'floating', gapped: 'both', bridged: 'both' } as const;
    expect(crossingLoop({ ...bad, nearVolts: 15, farVolts: 15, ohms: 0 })).toMatchObject({ parts: ['ohms'] });
    expect(crossingLoop({ ...bad, nearVolts: Number.NaN, farVolts: 15, ohms: 1 })).toMatchObject({
      because: 'not-a-number',
      parts: ['near.volts'],
    });
  });
});

describe('where both sides stand alike', () => {
  test.each(['floating', 'joined-negatives', 'common-rail'] as const)(
    'in phase nothing flows, through no common wire either: %s',
    (reference) => {
      const found = crossingLoop({
        phase: 'in-phase',
        reference,
        gapped: 'both',
        bridged: 'both',
        nearVolts: 15,
        farVolts: 15,
        ohms: 1,
      });
      expect(found).toMatchObject({
        kind: 'open',
        amps: { from: 0, to: 0 },
        throughCommon: false,
        withoutVehicle: false,
      });
    },
  );
});
