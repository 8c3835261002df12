import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { Skyline } from '../../../src/engine/circuit/skyline.ts';
import { byMoneyThenTime } from '../../../src/engine/cost.ts';
import type { Rewired } from '../../../src/engine/wiring/changes.ts';
import { changeCost } from '../../../src/engine/wiring/changes.ts';
import type { FeedingPlan } from '../../../src/engine/wiring/plan.ts';
import { evenFeeders, MOST_FEEDERS } from '../../../src/engine/wiring/plan.ts';
import type { PlanCircuit, StandingTrain } from '../../../src/engine/wiring/plan-circuit.ts';
import { solvePlan, voltsAt } from '../../../src/engine/wiring/plan-circuit.ts';
import { feedingNetwork, RETURN_NODE } from '../../../src/engine/wiring/plan-network.ts';
import type { WiringCandidate, WiringNeed } from '../../../src/engine/wiring/remedies.ts';
import { FEEDER_SPACINGS, leastWiring, presentWiring, suggestWiring } from '../../../src/engine/wiring/remedies.ts';
import type { ShortAlong } from '../../../src/engine/wiring/short-circuit.ts';
import { shortAmpsAt } from '../../../src/engine/wiring/short-circuit.ts';
import { weakStretches } from '../../../src/engine/wiring/weak-stretches.ts';
import { METRIC_SIZES, ohmsPerMetre } from '../../../src/engine/wiring/wire.ts';
import { allNear, near } from '../../near.ts';
import { running } from '../../networks.ts';
import { spread } from '../../spread.ts';
import { shortAlong, trainAlong } from './along.ts';

const WIRE = { length: 0.2, ohmsPerMetre: 0.039 };

/** 12 m of code 83 over a bus of 1.5 mm2, fed at its start, four feeders. */
const PLAN: FeedingPlan = {
  source: { volts: 15, ohms: 0.1 },
  bus: { length: 12, ohmsPerMetre: 0.0133, fedAt: 0, ring: false },
  feeders: [1, 4, 8, 11].map((at) => ({ ...WIRE, at })),
  rails: { length: 12, ohmsPerMetre: 0.108, joints: [] },
};

const fails = (what: { readonly kind: string }): never => {
  throw new Error(`no result: ${JSON.stringify(what)}`);
};

function train(plan: FeedingPlan, amps: number, others: Parameters<typeof trainAlong>[2] = [], step?: number) {
  const along = trainAlong(plan, amps, others, step);
  return along.kind === 'along' ? along : fails(along);
}

function short(plan: FeedingPlan, faultOhms = 0, step?: number): ShortAlong {
  const along = shortAlong(plan, faultOhms, step);
  return along.kind === 'along' ? along : fails(along);
}

function network(plan: FeedingPlan, places: readonly number[]) {
  const built = feedingNetwork(plan, places);
  return built.kind === 'network' ? built : fails(built);
}

/** The same with its source as one that pushes. */
function fed(plan: FeedingPlan, places: readonly number[]) {
  const { network: whole, nodes } = network(plan, places);
  const { volts } = plan.source;
  const isSource = ({ id }: { readonly id: string }) => id === 'source';
  const sources = whole.branches
    .filter(isSource)
    .map(({ id, from, to, ohms }) => ({ id, plus: from, minus: to, volts, ohms }));
  expect(sources).toHaveLength(1);
  return { circuit: { ...whole, branches: whole.branches.filter((one) => !isSource(one)), sources }, nodes };
}

const share = spread(0, 1);
const plans: fc.Arbitrary<FeedingPlan> = fc
  .record({
    volts: spread(12, 20),
    sourceOhms: fc.constantFrom(0, 0.05, 0.3),
    length: spread(2, 30),
    extraBus: spread(0, 10),
    busOhms: spread(0.003, 0.04),
    fedAt: share,
    ring: fc.boolean(),
    feeders: fc.array(fc.record({ at: share, length: spread(0.05, 1), ohmsPerMetre: spread(0.005, 0.08) }), {
      minLength: 1,
      maxLength: 6,
    }),
    railOhms: spread(0.02, 0.25),
    joints: fc.array(fc.record({ at: spread(0.01, 0.99), ohms: fc.constantFrom(0, 0.002, 0.05) }), { maxLength: 4 }),
    closed: fc.boolean(),
  })
  .map((one) => ({
    source: { volts: one.volts, ohms: one.sourceOhms },
    bus: {
      length: one.length + one.extraBus,
      ohmsPerMetre: one.busOhms,
      fedAt: one.fedAt * (one.length + one.extraBus),
      ring: one.ring,
    },
    feeders: one.feeders.map((feeder) => ({ ...feeder, at: feeder.at * one.length })),
    rails: {
      length: one.length,
      ohmsPerMetre: one.railOhms,
      joints: one.joints.map((joint) => ({ ...joint, at: joint.at * one.length })),
      closed: one.closed,
    },
  }));

describe('one feeder', () => {
  const one: FeedingPlan = { ...PLAN, feeders: [{ ...WIRE, at: 3 }] };

  test('the far end sees the stage, 3 m of bus, the feeder and 9 m of track, there and back', () => {
    const ohms = 0.1 + 2 * (3 * 0.0133 + 0.2 * 0.039 + 9 * 0.108);
    const { worst } = train(one, 0.5);
    expect(worst.at).toBe(12);
    near(worst.volts, 15 - 0.5 * ohms, 1e-9);
    near(worst.share, (0.5 * ohms) / 15, 1e-12);
    const { weakest } = short(one);
    near(weakest.amps, 15 / ohms, 1e-9);
    expect(weakest.at).toBe(12);
  });

  test('a short draws the less the farther from it', () => {
    fc.assert(
      fc.property(plans, spread(0, 2), (plan, faultOhms) => {
        const [feeder] = plan.feeders;
        if (feeder === undefined) return;
        // A joint just at the feeder has the two sides of it at one place.
        const joints = plan.rails.joints.filter(({ at }) => Math.abs(at - feeder.at) > 1e-5);
        const single = { ...plan, feeders: [feeder], rails: { ...plan.rails, joints, closed: false } };
        const { points } = short(single, faultOhms);
        for (const [way, inOrder] of [
          [1, points],
          [-1, [...points].reverse()],
        ] as const) {
          const along = inOrder.filter(({ at }) => way * (at - feeder.at) >= 0).map(({ amps }) => amps);
          const falling = along.every((amps, i) => i === 0 || amps <= (along[i - 1] ?? 0) * (1 + 1e-9));
          expect(falling).toBe(true);
        }
      }),
    );
  });

  test('joints on the way count once in each rail', () => {
    const jointed = {
      ...one,
      rails: {
        ...one.rails,
        joints: [
          { at: 6, ohms: 0.05 },
          { at: 9, ohms: 0.02 },
        ],
      },
    };
    near(short(jointed).weakest.ohms - short(one).weakest.ohms, 0.14, 1e-9);
    const at6 = train(jointed, 1).points.filter(({ at }) => Math.abs(at - 6) < 1e-9);
    expect(at6.length).toBe(2);
    near((at6[0]?.volts ?? 0) - (at6[1]?.volts ?? 0), 0.1, 1e-9);
  });
});

describe('feeders that resist nothing to speak of, on a bus that does not either', () => {
  const ideal = (ats: readonly number[]): FeedingPlan => ({
    source: { volts: 15, ohms: 0 },
    bus: { length: 12, ohmsPerMetre: 1e-9, fedAt: 0, ring: false },
    feeders: ats.map((at) => ({ at, length: 0.01, ohmsPerMetre: 1e-9 })),
    rails: { length: 12, ohmsPerMetre: 0.1, joints: [] },
  });

  // Two equal feeds a distance s apart: r s / 2 in the middle, where r is that of one rail; a dead end of e: 2 r e.
  test('at both ends: half a rail’s ohms in the middle', () => {
    const { weakest } = short(ideal([0, 12]));
    near(weakest.ohms, (0.1 * 12) / 2, 1e-5);
    near(weakest.at, 6, 1e-3);
  });

  test('at 3 m and 9 m the ends and the middle are not alike: the ends are worse', () => {
    const along = short(ideal([3, 9]), 0, 1);
    near(along.weakest.ohms, 2 * 0.1 * 3, 1e-5);
    near(15 / (along.points.find(({ at }) => at === 6)?.amps ?? 0), (0.1 * 6) / 2, 1e-5);
  });

  test('spread by `evenFeeders` the ends and every middle are alike, and no other place is worse', () => {
    for (const count of [1, 2, 3, 7]) {
      const ats = evenFeeders({ count }, { length: 12 }, WIRE).map(({ at }) => at);
      const spacing = 12 / (count - 0.5);
      near(short(ideal(ats)).weakest.ohms, (0.1 * spacing) / 2, 1e-5);
    }
  });
});

describe('the closed form', () => {
  test('gives what solving the circuit with a train put in by hand gives, at every place', () => {
    const trains = fc.array(fc.record({ at: share, amps: spread(0, 0.4) }), { maxLength: 3 });
    fc.assert(
      fc.property(plans, spread(0.05, 0.5), trains, share, (plan, amps, others, place) => {
        const at = place * plan.rails.length;
        const placed = others.map((one) => ({ ...one, at: one.at * plan.rails.length }));
        const along = trainAlong(plan, amps, [...placed, { at, amps: 0 }]);
        fc.pre(along.kind === 'along');
        if (along.kind !== 'along') return;
        const built = fed(plan, [...placed.map((one) => one.at), at]);
        const here = built.nodes.at(-1) ?? RETURN_NODE;
        const loads = placed.map((one, i) => ({
          id: `${i}`,
          plus: built.nodes[i] ?? RETURN_NODE,
          minus: RETURN_NODE,
          amps: one.amps,
        }));
        const train = { id: 'train', plus: here, minus: RETURN_NODE, amps };
        const volts = running(built.circuit, [...loads, train]).volts(here);
        const found = along.points.filter((point) => Math.abs(point.at - at) < 2e-6);
        expect(found.some((point) => Math.abs(point.volts - volts) < 1e-6)).toBe(true);
        expect(along.worst.volts).toBeLessThanOrEqual(volts + 1e-6);
      }),
      { numRuns: 300 },
    );
  });

  test('gives the short that a resistor put in by hand draws', () => {
    fc.assert(
      fc.property(plans, spread(0.05, 2), share, (plan, faultOhms, place) => {
        const at = place * plan.rails.length;
        const built = fed(plan, [at]);
        const here = built.nodes[0] ?? RETURN_NODE;
        const fault = { id: 'fault', from: here, to: RETURN_NODE, ohms: faultOhms };
        const shorted = { ...built.circuit, branches: [...built.circuit.branches, fault] };
        const amps = running(shorted, []).branchAmps('fault');
        const along = short(plan, faultOhms, plan.rails.length / 400);
        expect(along.weakest.amps).toBeLessThanOrEqual(amps * (1 + 1e-6));
        const piece = along.pieces.find(({ from, to }) => from <= at + 1e-6 && at - 1e-6 <= to);
        if (piece === undefined) return fails({ kind: 'no piece' });
        const t = Math.min(1, Math.max(0, (at - piece.from) / (piece.to - piece.from)));
        const ohms = piece.constant + t * (piece.linear + t * piece.square);
        near(along.volts / (ohms + faultOhms) / amps, 1, 1e-4);
      }),
      { numRuns: 300 },
    );
  });

  test('no point lies below the worst place, nor above what the source gives', () => {
    fc.assert(
      fc.property(plans, spread(0, 0.5), (plan, amps) => {
        const along = trainAlong(plan, amps, [], plan.rails.length / 500);
        if (along.kind !== 'along') return;
        const lowest = Math.min(...along.points.map(({ volts }) => volts));
        expect(lowest).toBeGreaterThanOrEqual(along.worst.volts - 1e-9);
        near(lowest, along.worst.volts, 0.05);
        expect(Math.max(...along.points.map(({ volts }) => volts))).toBeLessThanOrEqual(plan.source.volts + 1e-9);
        for (const { volts, drop } of along.points) near(volts + drop, plan.source.volts, 1e-9);
      }),
    );
  });
});

describe('points for a figure', () => {
  test('run from end to end in order, a step apart', () => {
    const { points } = train(PLAN, 0.5, [], 0.5);
    expect([points[0]?.at, points.at(-1)?.at]).toEqual([0, 12]);
    for (const [i, { at }] of points.entries()) {
      if (i > 0) {
        expect(at - (points[i - 1]?.at ?? 0)).toBeGreaterThan(0);
        expect(at - (points[i - 1]?.at ?? 0)).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
  });

  test.each([0, -1, Number.NaN, 1e-300])('a step of %d is taken for a sensible one', (step) => {
    const { points } = train(PLAN, 0.5, [], step);
    expect(points.length).toBeGreaterThan(50);
    expect(points.length).toBeLessThan(12_000);
  });
});

describe('better wiring never makes it worse', () => {
  const worse = (plan: FeedingPlan, better: FeedingPlan): void => {
    expect(short(better).weakest.ohms).toBeLessThanOrEqual(short(plan).weakest.ohms * (1 + 1e-9));
    const [before, after] = [trainAlong(plan, 0.3), trainAlong(better, 0.3)];
    if (before.kind === 'along') {
      expect(after.kind).toBe('along');
      if (after.kind === 'along') expect(after.worst.volts).toBeGreaterThanOrEqual(before.worst.volts - 1e-9);
    }
  };

  test('a thicker bus', () => {
    fc.assert(
      fc.property(plans, spread(0.1, 1), (plan, factor) => {
        worse(plan, { ...plan, bus: { ...plan.bus, ohmsPerMetre: plan.bus.ohmsPerMetre * factor } });
      }),
    );
  });

  test('thicker rails', () => {
    fc.assert(
      fc.property(plans, spread(0.1, 1), (plan, factor) => {
        worse(plan, { ...plan, rails: { ...plan.rails, ohmsPerMetre: plan.rails.ohmsPerMetre * factor } });
      }),
    );
  });

  test('one feeder more, anywhere', () => {
    fc.assert(
      fc.property(plans, share, (plan, at) => {
        worse(plan, { ...plan, feeders: [...plan.feeders, { ...WIRE, at: at * plan.rails.length }] });
      }),
    );
  });

  test('a ring instead of a line', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        worse({ ...plan, bus: { ...plan.bus, ring: false } }, { ...plan, bus: { ...plan.bus, ring: true } });
      }),
    );
  });

  test('an oval instead of a track with two ends', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        worse(
          { ...plan, rails: { ...plan.rails, closed: false } },
          { ...plan, rails: { ...plan.rails, closed: true } },
        );
      }),
    );
  });

  test('a bus fed in its middle instead of at its end, where feeders are spread evenly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), spread(3, 40), spread(0.003, 0.04), (count, length, busOhms) => {
        const rails = { length, ohmsPerMetre: 0.1, joints: [] };
        const plan: FeedingPlan = {
          source: { volts: 15, ohms: 0.1 },
          bus: { length, ohmsPerMetre: busOhms, fedAt: 0, ring: false },
          feeders: evenFeeders({ count }, rails, WIRE),
          rails,
        };
        worse(plan, { ...plan, bus: { ...plan.bus, fedAt: length / 2 } });
      }),
    );
  });
});

describe('other trains', () => {
  test('pull the train down, each by its own share, in any order', () => {
    const [a, b] = [
      { at: 6, amps: 0.5 },
      { at: 10, amps: 0.8 },
    ];
    const lost = (others: readonly { at: number; amps: number }[]) =>
      15 - (train(PLAN, 0.4, others).points.at(-1)?.volts ?? 0);
    near(lost([a, b]) - lost([]), lost([a]) - lost([]) + lost([b]) - lost([]), 1e-9);
    near(lost([a, b]), lost([b, a]), 1e-12);
    expect(lost([a])).toBeGreaterThan(lost([]));
  });

  test('together they cannot draw more than the source passes', () => {
    const limited = { ...PLAN, source: { ...PLAN.source, limit: 3 } };
    expect(trainAlong(limited, 2, [{ at: 3, amps: 1.5 }])).toEqual({
      kind: 'no-solution',
      because: 'more-than-the-source',
      parts: ['source'],
    });
    expect(trainAlong(limited, 2, [{ at: 3, amps: 1 }]).kind).toBe('along');
  });
});

describe('one circuit of a plan', () => {
  const laid = (plan: FeedingPlan, ...standing: StandingTrain[]): PlanCircuit => {
    const circuit = solvePlan(plan, standing);
    return circuit.kind === 'circuit' ? circuit : fails(circuit);
  };

  test('answers for every train and every short circuit as if it were laid for that one alone', () => {
    const circuit = laid(PLAN);
    for (const amps of [0, 0.4, 2]) expect(circuit.train(amps)).toEqual(train(PLAN, amps));
    for (const ohms of [0, 0.5]) expect(circuit.short(ohms)).toEqual(short(PLAN, ohms));
    const standing = { at: 5, amps: 0.8 };
    const beside = laid(PLAN, standing);
    for (const amps of [0, 0.4, 2]) expect(beside.train(amps)).toEqual(train(PLAN, amps, [standing]));
    near(
      train(PLAN, 2, [standing]).stageDrop,
      0.1 * (2 + 0.8),
      1e-12,
      'what the stage itself loses, by all that trains draw',
    );
  });

  test('tells the volts and the short-circuit current at a spot, not at the next point of a curve', () => {
    const circuit = laid({ ...PLAN, rails: { ...PLAN.rails, joints: [{ at: 6, ohms: 0.1 }] } });
    const coarse = train(circuit.plan, 0.7, [], 5);
    const fine = train(circuit.plan, 0.7, [], 0.01);
    for (const { at, volts } of fine.points.filter(({ at }) => at !== 6)) near(voltsAt(coarse, at), volts, 1e-9);
    const shorts = short(circuit.plan, 0.2, 0.01);
    for (const { at, amps } of shorts.points.filter(({ at }) => at !== 6)) {
      near(shortAmpsAt(short(circuit.plan, 0.2, 5), at), amps, 1e-9);
    }
  });

  test('at a resisting joint the side towards the start counts, beyond the track its end', () => {
    const joined = train({ ...PLAN, rails: { ...PLAN.rails, joints: [{ at: 6, ohms: 0.1 }] } }, 0.7);
    const both = joined.points.filter(({ at }) => at === 6).map(({ volts }) => volts);
    expect(both).toHaveLength(2);
    expect(voltsAt(joined, 6)).toBe(both[0]);
    expect(voltsAt(joined, 40)).toBe(joined.points.at(-1)?.volts);
    expect(voltsAt(joined, -1)).toBe(joined.points[0]?.volts);
  });

  test('is factored once, however often it is asked, and remedies lay each plan once', () => {
    const factor = vi.spyOn(Skyline.prototype, 'factor');
    try {
      const circuit = laid(PLAN);
      for (const amps of [0.1, 0.5, 1]) circuit.train(amps);
      circuit.short();
      circuit.short(0.3);
      expect(factor).toHaveBeenCalledTimes(1);
      const advice = suggestWiring({ plan: PLAN, trainAmps: 0.5, trip: 5, sizes: [] }, circuit);
      if (advice.kind !== 'advice') throw new Error('no advice');
      const plans = new Set(advice.candidates.flatMap((one) => one.plans));
      expect(plans.has(PLAN)).toBe(true);
      const tried = FEEDER_SPACINGS.filter((spacing) => evenFeeders({ spacing }, PLAN.rails, WIRE).length > 4).length;
      const joined = 3;
      expect(factor.mock.calls.length).toBeLessThanOrEqual(1 + joined * (1 + tried) + 2);
    } finally {
      factor.mockRestore();
    }
  });
});

describe('a supply that holds its current', () => {
  test('gives its limit near the stage, what the loop lets through far from it', () => {
    const limited = short({ ...PLAN, source: { ...PLAN.source, limit: 10 }, feeders: [{ ...WIRE, at: 0 }] }, 0, 1);
    expect(limited.points[0]?.amps).toBe(10);
    expect(limited.weakest.amps).toBeLessThan(10);
  });
});

describe('where the coin fails', () => {
  test('a single feed of 12 m: 5 A trip only near it, and thicker rails mend it', () => {
    const poor = { ...PLAN, feeders: [{ ...WIRE, at: 0 }], rails: { ...PLAN.rails, ohmsPerMetre: 0.206 } };
    const stretches = weakStretches(short(poor), 5);
    expect(stretches.map(({ finding }) => finding)).toEqual(['close', 'does-not-trip']);
    near(stretches[1]?.from ?? 0, (15 / 5 - 0.1 - 2 * 0.2 * 0.039) / (2 * 0.206), 1e-6);
    expect(stretches[1]?.to).toBe(12);
    expect(weakStretches(short(PLAN), 5)).toEqual([]);
  });
});

describe('a plan that cannot be', () => {
  const [first, second, ...others] = PLAN.feeders;
  const feeders = (change: Partial<FeedingPlan['feeders'][number]>) =>
    first === undefined || second === undefined ? [] : [first, second, { ...second, ...change }, ...others];
  test.each<[string, Partial<FeedingPlan>, string, string[]]>([
    ['no volts', { source: { volts: 0, ohms: 0.1 } }, 'not-above-zero', ['source']],
    ['no limit', { source: { volts: 15, ohms: 0.1, limit: 0 } }, 'not-above-zero', ['source']],
    ['ohms below 0', { source: { volts: 15, ohms: -1 } }, 'below-zero', ['source']],
    ['a bus without length', { bus: { ...PLAN.bus, length: 0 } }, 'not-above-zero', ['bus']],
    ['a bus of NaN ohms', { bus: { ...PLAN.bus, ohmsPerMetre: Number.NaN } }, 'not-above-zero', ['bus']],
    ['a bus fed beyond its end', { bus: { ...PLAN.bus, fedAt: 13 } }, 'outside-the-bus', ['source']],
    ['a bus that ends before its feeders', { bus: { ...PLAN.bus, length: 9 } }, 'outside-the-bus', ['feeder-4']],
    ['rails of negative length', { rails: { ...PLAN.rails, length: -12 } }, 'not-above-zero', ['rails']],
    ['rails of infinite length', { rails: { ...PLAN.rails, length: Infinity } }, 'not-above-zero', ['rails']],
    ['no feeder', { feeders: [] }, 'no-feeder', ['rails']],
    ['a feeder beyond the track', { feeders: feeders({ at: 12.5 }) }, 'outside-the-track', ['feeder-3']],
    ['a feeder before the track', { feeders: feeders({ at: -0.5 }) }, 'outside-the-track', ['feeder-3']],
    ['a feeder nowhere', { feeders: feeders({ at: Number.NaN }) }, 'outside-the-track', ['feeder-3']],
    ['a feeder without length', { feeders: feeders({ length: 0 }) }, 'not-above-zero', ['feeder-3']],
    ['a feeder of 0 ohm', { feeders: feeders({ ohmsPerMetre: 0 }) }, 'not-above-zero', ['feeder-3']],
    [
      'a joint at the end',
      {
        rails: {
          ...PLAN.rails,
          joints: [
            { at: 5, ohms: 0 },
            { at: 12, ohms: 0 },
          ],
        },
      },
      'outside-the-track',
      ['joint-2'],
    ],
    ['a joint below 0 ohm', { rails: { ...PLAN.rails, joints: [{ at: 5, ohms: -1 }] } }, 'below-zero', ['joint-1']],
  ])('%s: named', (_, change, because, parts) => {
    const expected = { kind: 'no-solution', because, parts };
    const plan = { ...PLAN, ...change };
    expect(feedingNetwork(plan)).toEqual(expected);
    expect(trainAlong(plan, 0.5)).toEqual(expected);
    expect(shortAlong(plan)).toEqual(expected);
  });

  test.each([
    ['more ohms than any number has', 1e200],
    ['fewer than any number has', 1e-323],
  ])('rails of %s', (_, ohmsPerMetre) => {
    const length = ohmsPerMetre > 1 ? 1e200 : 0.1;
    const [feeder] = PLAN.feeders;
    const plan = { ...PLAN, feeders: [{ ...WIRE, ...feeder, at: 0 }], rails: { length, ohmsPerMetre, joints: [] } };
    const expected = { kind: 'no-solution', because: 'too-far-apart', parts: ['rails'] };
    expect(trainAlong(plan, 0.5)).toEqual(expected);
    expect(shortAlong(plan)).toEqual(expected);
  });

  test('a stage of more volts than anything has', () => {
    const plan = { ...PLAN, source: { ...PLAN.source, volts: 1e13 } };
    const expected = { kind: 'no-solution', because: 'too-far-apart', parts: ['source'] };
    expect(trainAlong(plan, 0.5)).toEqual(expected);
    expect(shortAlong(plan)).toEqual(expected);
    expect(shortAlong({ ...PLAN, source: { ...PLAN.source, volts: 1e12 } }).kind).toBe('along');
  });

  test('a feeder of more ohms than any number has is too far from anything', () => {
    const plan = { ...PLAN, feeders: [{ at: 3, length: 1e200, ohmsPerMetre: 1e200 }] };
    const expected = { kind: 'no-solution', because: 'too-far-apart', parts: ['feeder-1'] };
    expect(trainAlong(plan, 0.5)).toEqual(expected);
    expect(shortAlong(plan)).toEqual(expected);
  });

  test.each<[number, { at: number; amps: number }[], string, string[]]>([
    [-1, [], 'below-zero', ['train']],
    [Number.NaN, [], 'below-zero', ['train']],
    [1, [{ at: 3, amps: -1 }], 'below-zero', ['train-1']],
    [
      1,
      [
        { at: 3, amps: 1 },
        { at: 20, amps: 1 },
      ],
      'outside-the-track',
      ['train-2'],
    ],
    [40, [], 'no-operating-point', ['train']],
  ])('a train of %d A with %j', (amps, others, because, parts) => {
    expect(trainAlong(PLAN, amps, others)).toEqual({ kind: 'no-solution', because, parts });
  });

  test('a short of less than nothing', () => {
    expect(shortAlong(PLAN, -1)).toEqual({ kind: 'no-solution', because: 'below-zero', parts: ['short'] });
  });

  test('any numbers whatever: a finite answer or a named part', () => {
    const any = fc.oneof(fc.double(), fc.double({ min: 0, max: 20 }), fc.constantFrom(0, 1e-12, 1e12, 12));
    const wild = fc.record({
      source: fc.record({ volts: any, ohms: any, limit: any }),
      bus: fc.record({ length: any, ohmsPerMetre: any, fedAt: any, ring: fc.boolean() }),
      feeders: fc.array(fc.record({ at: any, length: any, ohmsPerMetre: any }), { maxLength: 3 }),
      rails: fc.record({
        length: any,
        ohmsPerMetre: any,
        joints: fc.array(fc.record({ at: any, ohms: any }), { maxLength: 2 }),
        closed: fc.boolean(),
      }),
    });
    fc.assert(
      fc.property(wild, any, (plan, amps) => {
        for (const along of [trainAlong(plan, amps), shortAlong(plan, amps)]) {
          if (along.kind === 'no-solution') expect(along.parts.length).toBeGreaterThan(0);
          else expect(along.points.every((point) => Object.values(point).every(Number.isFinite))).toBe(true);
        }
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the limits of what one place is', () => {
  test('two feeders, a joint and the stage at the very same place', () => {
    const at = 6;
    const plan: FeedingPlan = {
      ...PLAN,
      bus: { ...PLAN.bus, fedAt: at },
      feeders: [
        { ...WIRE, at },
        { ...WIRE, at: at + 1e-9 },
      ],
      rails: { ...PLAN.rails, joints: [{ at, ohms: 0.1 }] },
    };
    // Towards the start the feeders feed directly, towards the end through the joint.
    const along = short(plan);
    near(along.weakest.ohms, 0.1 + 0.2 * 0.039 + 0.2 + 2 * 6 * 0.108, 1e-5);
    expect(along.weakest.at).toBe(12);
  });

  test('one feeder on a ring, and an oval with a feeder at its seam', () => {
    const one = { ...PLAN, bus: { ...PLAN.bus, ring: true }, feeders: [{ ...WIRE, at: 0 }] };
    near(short(one).weakest.ohms, 0.1 + 2 * 0.2 * 0.039 + 2 * 12 * 0.108, 1e-6);
    const oval = short({ ...one, rails: { ...one.rails, closed: true } });
    near(oval.weakest.ohms, 0.1 + 2 * 0.2 * 0.039 + (12 * 0.108) / 2, 1e-6);
    near(oval.weakest.at, 6, 1e-6);
  });
});

describe('feeders spread evenly', () => {
  test('by number: a quarter of their distance from the ends', () => {
    expect(evenFeeders({ count: 3 }, { length: 10 }, WIRE).map(({ at }) => at)).toEqual([1, 5, 9]);
    expect(evenFeeders({ count: 1 }, { length: 10 }, WIRE)).toEqual([{ ...WIRE, at: 5 }]);
    expect(evenFeeders({ count: 2 }, { length: 10, closed: true }, WIRE).map(({ at }) => at)).toEqual([2.5, 7.5]);
  });

  test('by distance: never farther apart, and no more than are needed', () => {
    fc.assert(
      fc.property(spread(0.3, 6), spread(0.5, 50), fc.boolean(), (spacing, length, closed) => {
        const ats = evenFeeders({ spacing }, { length, closed }, WIRE).map(({ at }) => at);
        fc.pre(ats.length < MOST_FEEDERS);
        for (const [i, at] of ats.entries())
          if (i > 0) expect(at - (ats[i - 1] ?? 0)).toBeLessThanOrEqual(spacing + 1e-6);
        const needed = closed ? length / spacing : length / spacing + 0.5;
        expect(ats.length).toBeLessThan(needed + 1);
        expect(ats.every((at) => at >= 0 && at <= length)).toBe(true);
      }),
    );
  });

  test.each([{ count: 0 }, { count: Number.NaN }, { spacing: -1 }, { spacing: Number.NaN }])('%j: none', (how) => {
    expect(evenFeeders(how, { length: 10 }, WIRE)).toEqual([]);
  });

  test('on no track: none, however many are asked for', () => {
    for (const length of [0, -1, Number.NaN]) expect(evenFeeders({ count: 3 }, { length }, WIRE)).toEqual([]);
  });

  test('there is an end to it', () => {
    expect(evenFeeders({ spacing: 1e-9 }, { length: 10 }, WIRE).length).toBe(MOST_FEEDERS);
    expect(evenFeeders({ count: Infinity }, { length: 10 }, WIRE).length).toBe(MOST_FEEDERS);
  });
});

describe('advice on wiring', () => {
  const sizes = METRIC_SIZES.map((area) => ({ area, make: 'flexible' as const }));
  const thin = (length: number, count: number): FeedingPlan => ({
    source: { volts: 15, ohms: 0.1 },
    bus: { length, ohmsPerMetre: 0.039, fedAt: 0, ring: false },
    feeders: evenFeeders({ count }, { length }, WIRE),
    rails: { length, ohmsPerMetre: 0.108, joints: [] },
  });
  const advise = (need: Partial<WiringNeed> & Pick<WiringNeed, 'plan'>) => {
    const advice = suggestWiring({ trainAmps: 0.5, trip: 3, sizes, ...need });
    return advice.kind === 'advice' ? advice : fails(advice);
  };
  const of = (candidates: readonly WiringCandidate[], kind: WiringCandidate['change']['kind']) =>
    candidates.filter(({ change }) => change.kind === kind);
  /** What lays just these parts anew. */
  const anew = (candidates: readonly WiringCandidate[], ...parts: readonly (keyof Rewired)[]) =>
    candidates.flatMap((one) =>
      one.change.kind === 'rewired' && Object.keys(one.change).sort().join() === ['kind', ...parts].sort().join()
        ? [{ ...one, change: one.change }]
        : [],
    );

  test('a protection is set as low as trips at the weakest spot with the margin, no lower, and never above what the supply surely trips', () => {
    const steps = [1, 1.5, 2, 2.5, 3, 4, 5, 8, 10];
    for (const bears of [1, 1.4, 2, 2.5, 3, 20]) {
      const { candidates } = advise({ plan: thin(40, 8), trip: 5, tripMost: bears });
      const [now] = candidates;
      const does = steps.filter((step) => step < 5 && step <= bears && 1.5 * step <= (now?.loopAmps ?? Number.NaN));
      expect(
        of(candidates, 'lower-trip').map(({ trip }) => trip),
        `${bears} A`,
      ).toEqual(does.slice(-1));
      // A breaker below a unit of 5 A: at most 0.7 of it, and it has to trip there too.
      const below = does.filter((step) => step <= 3.5);
      expect(
        of(candidates, 'breakers').map(({ trip }) => trip),
        `${bears} A`,
      ).toEqual(below.slice(-1));
    }
  });

  test('a unit is not set to what its supply only just gives', () => {
    const { candidates } = advise({ plan: thin(40, 8), trip: 5, supplyGives: 2 });
    expect(of(candidates, 'lower-trip').map(({ trip }) => trip)).toEqual([1.5]);
  });

  test('a small district is good as it is', () => {
    const { first, firstGood, candidates } = advise({ plan: thin(4, 3) });
    expect(first?.change).toEqual({ kind: 'as-it-is' });
    expect(firstGood).toBe(first);
    expect(candidates[0]).toBe(first);
  });

  test('a 40 m district on 0.5 mm2 fails at its far end, and says by which rule', () => {
    const { candidates, first } = advise({ plan: thin(40, 8), trainAmps: 1, trip: 4 });
    const [now] = candidates;
    expect(now?.change.kind).toBe('as-it-is');
    expect(now?.fails).toEqual(['drop', 'short-circuit']);
    expect(now?.voltsAt).toBe(40);
    expect(now?.shortAt).toBe(40);
    expect(first?.fails).toEqual([]);
    expect(first?.verdict).not.toBe('fails');
  });

  test('every candidate is what reckoning its own plan gives', () => {
    const { candidates } = advise({ plan: thin(24, 5), trainAmps: 0.8 });
    expect(new Set(candidates.map(({ change }) => Object.keys(change).join())).size).toBeGreaterThan(4);
    for (const { plans, volts, shortAmps, trip, verdict, fails: rules } of candidates) {
      near(volts, Math.min(...plans.map((plan) => train(plan, 0.8).worst.volts)), 1e-9);
      near(shortAmps, Math.min(...plans.map((plan) => short(plan).weakest.amps)), 1e-9);
      expect(rules.includes('short-circuit')).toBe(shortAmps < 1.5 * trip);
      expect(rules.includes('drop')).toBe(15 - volts > 1.5);
      expect(verdict === 'fails').toBe(rules.length > 0);
    }
  });

  test('a thicker bus is the thinnest that does, else the thickest there is, and none where it is thick already', () => {
    // Fed from its middle already, so that a thicker wire is what is left.
    const fedAtMiddle = (bus: Partial<FeedingPlan['bus']>): FeedingPlan => ({
      ...thin(30, 12),
      bus: { ...thin(30, 12).bus, fedAt: 15, ...bus },
    });
    const need = { trainAmps: 1, trip: 3, sizes };
    const [found] = anew(advise({ ...need, plan: fedAtMiddle({}) }).candidates, 'bus');
    expect(found?.verdict).toBe('good');
    const thinner = METRIC_SIZES.findLast((area) => area < (found?.change.bus?.area ?? 0)) ?? 0;
    const one = presentWiring({
      ...need,
      plan: fedAtMiddle({ ohmsPerMetre: ohmsPerMetre({ area: thinner, make: 'flexible' }) }),
    });
    expect('verdict' in one && one.verdict).not.toBe('good');
    const thick = { ...thin(30, 6), bus: { ...PLAN.bus, length: 30, ohmsPerMetre: 0.004 } };
    expect(anew(advise({ plan: thick, trainAmps: 1.5 }).candidates, 'bus')).toEqual([]);
  });

  test('more feeders are more than there are, at a distance from the list', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), spread(4, 40), (count, length) => {
        for (const { change, plans } of anew(advise({ plan: thin(length, count) }).candidates, 'feeders')) {
          expect(FEEDER_SPACINGS).toContain(change.feeders?.spacing);
          expect(change.feeders?.count).toBe(count + (change.feeders?.added ?? 0));
          expect(change.feeders?.added).toBeGreaterThan(0);
          expect(plans[0]?.feeders.length).toBe(change.feeders?.count);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('where neither feeders nor a bus alone suffice, both together are tried', () => {
    const poor = { ...thin(45, 3), rails: { length: 45, ohmsPerMetre: 0.206, joints: [] } };
    const { candidates } = advise({ plan: poor, trainAmps: 1 });
    expect([...anew(candidates, 'feeders'), ...anew(candidates, 'bus')].map(({ verdict }) => verdict)).toEqual([
      'fails',
      'fails',
    ]);
    expect(anew(candidates, 'feeders', 'bus')[0]?.verdict).not.toBe('fails');
    // Of what does not suffice the most is told that can be done: the closest feeders, the thickest wire.
    expect(anew(candidates, 'feeders')[0]?.change.feeders?.spacing).toBe(FEEDER_SPACINGS.at(-1));
    expect(anew(candidates, 'bus')[0]?.change.bus?.area).toBe(METRIC_SIZES.at(-1));
  });

  // planning.md 15: what an experienced person does first. Common practice, no source.
  test('one lead to the middle of the bus comes before two dozen feeders', () => {
    const { candidates, first } = advise({ plan: thin(30, 12), trainAmps: 1 });
    expect(first?.change).toEqual({ kind: 'rewired', middle: 15 });
    const [feeders] = anew(candidates, 'feeders');
    const dearer = feeders !== undefined && first !== undefined && byMoneyThenTime(feeders.cost, first.cost) > 0;
    expect(feeders === undefined || feeders.verdict === 'fails' || dearer).toBe(true);
  });

  test('the middle goes together with thicker wire and with feeders where alone it does not reach', () => {
    const { candidates } = advise({ plan: thin(60, 10), trainAmps: 1.5 });
    expect(anew(candidates, 'middle')[0]?.verdict).toBe('fails');
    const together = candidates.filter(
      ({ change }) => change.kind === 'rewired' && change.middle !== undefined && change.bus !== undefined,
    );
    expect(together.some(({ verdict }) => verdict !== 'fails')).toBe(true);
  });

  test('a ring of the same wire does better than its middle', () => {
    const { candidates } = advise({ plan: thin(40, 12), trainAmps: 1 });
    const [ring] = anew(candidates, 'ring');
    const [middle] = anew(candidates, 'middle');
    expect(ring?.drop).toBeLessThan(middle?.drop ?? 0);
  });

  test('new wiring comes by money and then by time, both told as bands', () => {
    const costs = of(advise({ plan: thin(60, 10), trainAmps: 1.5 }).candidates, 'rewired').map(({ cost }) => cost);
    expect(costs.length).toBeGreaterThan(3);
    expect(costs).toEqual([...costs].sort(byMoneyThenTime));
    for (const { money, hours } of costs) {
      expect(money.from).toBeLessThan(money.to);
      expect(hours.from > 0 && hours.from < hours.to).toBe(true);
    }
  });

  test('a change never costs less than one that is part of it', () => {
    const found = advise({ plan: thin(60, 10), trainAmps: 1.5 }).candidates;
    const [middle] = anew(found, 'middle');
    const more = found.filter(({ change }) => change.kind === 'rewired' && Object.keys(change).length > 2);
    const withMiddle = more.filter(({ change }) => change.kind === 'rewired' && change.middle !== undefined);
    expect(withMiddle.length).toBeGreaterThan(0);
    for (const { cost } of withMiddle) {
      expect(cost.money.to).toBeGreaterThan(middle?.cost.money.to ?? 0);
      expect(cost.hours.from).toBeGreaterThan(middle?.cost.hours.from ?? 0);
    }
  });

  test('a second unit costs most, a lower trip current nothing', () => {
    const found = advise({ plan: thin(30, 6), trainAmps: 0.4 }).candidates;
    const money = (kind: WiringCandidate['change']['kind']): number[] =>
      of(found, kind).map(({ cost }) => cost.money.to);
    expect(money('lower-trip')).toEqual([0]);
    expect(Math.max(...found.map(({ cost }) => cost.money.to))).toBe(money('second-stage')[0]);
  });

  // 10 A for each square millimetre: 0.14 mm2 bear 1.4 A.
  test('thin feeders behind a high trip current are a fault, however little is lost: all of them get thicker wire', () => {
    const feeder = { area: 0.14e-6, make: 'flexible' as const };
    const plan = {
      ...thin(4, 6),
      feeders: evenFeeders({ count: 6 }, { length: 4 }, { length: 0.2, ohmsPerMetre: ohmsPerMetre(feeder) }),
      bus: { ...thin(4, 6).bus, ohmsPerMetre: ohmsPerMetre({ area: 1.5e-6, make: 'flexible' }) },
    };
    const { candidates, first } = advise({ plan, trip: 5, feeder });
    expect(candidates[0]?.fails).toEqual(['feeder-heat']);
    expect(first?.change).toEqual({ kind: 'rewired', feederWire: { area: 0.5e-6, make: 'flexible' } });
    expect(advise({ plan, trip: 1, feeder }).first?.change.kind).toBe('as-it-is');
  });

  test('one pair moves to the middle of its track, and is no ring', () => {
    const plan = { ...thin(8, 1), feeders: [{ ...WIRE, at: 0 }] };
    const { candidates } = advise({ plan, pair: true, trainAmps: 1 });
    const [middle] = anew(candidates, 'middle');
    expect(middle?.plans[0]?.feeders).toEqual([{ ...WIRE, at: 4 }]);
    expect(candidates.some(({ change }) => change.kind === 'rewired' && change.ring === true)).toBe(false);
  });

  test('a lower trip current is one that trips at the weakest place and still runs the trains', () => {
    const { candidates } = advise({ plan: thin(30, 6), trainAmps: 0.4 });
    const [now] = candidates;
    const [lower] = of(candidates, 'lower-trip');
    expect(lower?.trip).toBeLessThan(3);
    expect(1.5 * (lower?.trip ?? 9)).toBeLessThanOrEqual(now?.shortAmps ?? 0);
    expect(lower?.fails).not.toContain('short-circuit');
    const [breakers] = of(candidates, 'breakers');
    expect(breakers?.trip).toBeLessThanOrEqual(0.7 * 3);
    const [hungry] = of(advise({ plan: thin(30, 6), trainAmps: 2.4 }).candidates, 'lower-trip');
    expect(hungry?.fails).toContain('trip-too-low');
  });

  test('a supply that cannot pass the trip current is mended by no wire', () => {
    const weak = { ...thin(12, 4), source: { volts: 15, ohms: 0.1, limit: 3 } };
    const { candidates } = advise({ plan: weak });
    for (const { change, fails: rules } of candidates) {
      const lowered = change.kind === 'lower-trip' || change.kind === 'breakers';
      expect(rules.includes('supply-below-trip')).toBe(!lowered);
    }
    expect(advise({ plan: weak }).first?.change.kind).toBe('lower-trip');
  });

  test('a bus too thin for the heat of the trip current is said so', () => {
    const need = { plan: thin(4, 3), trip: 8, bus: { area: 0.5e-6, make: 'flexible' as const } };
    const { candidates, first } = advise(need);
    expect(candidates[0]?.fails).toContain('bus-heat');
    expect(first?.change).toEqual({ kind: 'rewired', bus: { area: 1e-6, make: 'flexible' } });
  });

  test('is judged by what wires and rails lose: 4 A through a stage of 0.2 ohms is good wherever the wire is thick enough', () => {
    const source = { volts: 15, ohms: 0.2 };
    const plan = {
      ...thin(4, 4),
      source,
      bus: { ...thin(4, 4).bus, ohmsPerMetre: ohmsPerMetre({ area: 4e-6, make: 'flexible' }) },
    };
    const now = presentWiring({ plan, trainAmps: 4, trip: 5, sizes: [] });
    const bare = presentWiring({
      plan: { ...plan, source: { volts: 15, ohms: 0.1 } },
      trainAmps: 4,
      trip: 5,
      sizes: [],
    });
    if ('because' in now || 'because' in bare) throw new Error('no operating point');
    near(now.drop, bare.drop, 1e-9);
    near(now.volts, bare.volts - 0.4, 1e-9);
    expect(now.verdict).toBe('good');
  });

  test('a second stage at the far end: both halves reckoned, places counted on the whole track', () => {
    const [second] = of(advise({ plan: thin(30, 6) }).candidates, 'second-stage');
    expect(second?.plans.length).toBe(2);
    expect(second?.change).toEqual({ kind: 'second-stage', cutAt: 15, fedAt: 30 });
    const [near_, far] = second?.plans ?? [];
    // Feeders stand on both sides of the new gap.
    expect(near_?.feeders.some(({ at }) => at === 15)).toBe(true);
    expect(far?.feeders.some(({ at }) => at === 0)).toBe(true);
    near(second?.shortAmps ?? 0, Math.min(...(second?.plans ?? []).map((plan) => short(plan).weakest.amps)), 1e-12);
    expect(second?.voltsAt).toBeGreaterThan(5);
    expect(second?.voltsAt).toBeLessThan(25);
  });

  test('a second stage at the far end: each half keeps its own joints, the joint at the cut is gone', () => {
    const joints = [5, 15, 20].map((at, i) => ({ at, ohms: 0.01 * (i + 1) }));
    const plan = { ...thin(30, 6), rails: { ...thin(30, 6).rails, joints } };
    const [second] = of(advise({ plan }).candidates, 'second-stage');
    expect(second?.plans.map(({ rails }) => rails)).toEqual([
      { ...plan.rails, length: 15, joints: [{ at: 5, ohms: 0.01 }] },
      { ...plan.rails, length: 15, joints: [{ at: 5, ohms: 0.03 }] },
    ]);
    expect(second?.plans.map(({ source }) => source)).toEqual([plan.source, plan.source]);
  });

  test.each([
    ['at its start', 0, 30, [0, 15]],
    ['in its first half', 10, 30, [10, 15]],
    ['just at its middle', 15, 30, [15, 15]],
    ['in its second half', 20, 0, [0, 5]],
    ['at its end', 30, 0, [0, 15]],
  ])('a bus fed %s gets its second stage at the end that is farther', (_, fedAt, far, each) => {
    const plan = { ...thin(30, 6), bus: { ...thin(30, 6).bus, fedAt } };
    const [second] = of(advise({ plan }).candidates, 'second-stage');
    expect(second?.change).toEqual({ kind: 'second-stage', cutAt: 15, fedAt: far });
    expect(second?.plans.map(({ bus }) => bus.fedAt)).toEqual(each);
    expect(second?.plans.map(({ bus }) => bus.length)).toEqual([15, 15]);
  });

  test.each([
    [
      'too far from it on both sides: each half gets one',
      [5, 14.8, 15.2, 25],
      [
        [5, 14.8, 15],
        [0.2, 10, 0],
      ],
    ],
    [
      'near it on both sides: they serve',
      [5, 14.95, 15.05, 25],
      [
        [5, 14.95],
        [0.05, 10],
      ],
    ],
    [
      'just at the cut and at the very end: both belong to the far half',
      [5, 15, 30],
      [
        [5, 15],
        [0, 15],
      ],
    ],
  ])('feeders that stand %s', (_, ats, halves) => {
    const plan = { ...thin(30, 6), feeders: ats.map((at) => ({ ...WIRE, at })) };
    const [second] = of(advise({ plan }).candidates, 'second-stage');
    for (const [i, half] of halves.entries()) allNear(second?.plans[i]?.feeders.map(({ at }) => at) ?? [], half, 1e-9);
  });

  test.each<[string, Partial<FeedingPlan>]>([
    ['an oval', { rails: { ...thin(20, 4).rails, closed: true } }],
    ['a ring', { bus: { ...thin(20, 4).bus, ring: true } }],
    ['a bus that does not reach the far end', { bus: { ...thin(20, 4).bus, length: 19.5 } }],
  ])('%s is not halved', (_, change) => {
    expect(of(advise({ plan: { ...thin(20, 4), ...change } }).candidates, 'second-stage')).toEqual([]);
    expect(of(advise({ plan: thin(20, 4) }).candidates, 'second-stage')).toHaveLength(1);
  });

  test('of two halves that do alike the one towards the start is named', () => {
    const base = thin(32, 8);
    const plan = {
      ...base,
      bus: { ...base.bus, ohmsPerMetre: 1e-6 },
      feeders: [4, 12, 20, 28].map((at) => ({ ...WIRE, at })),
    };
    const [second] = of(advise({ plan }).candidates, 'second-stage');
    const [one, two] = (second?.plans ?? []).map((half) => short(half).weakest);
    near(one?.amps ?? 0, two?.amps ?? 1, 1e-2);
    expect(second?.shortAt).toBeLessThanOrEqual(16);
  });

  test('rules hold at their borders: a drop just as large as is allowed, and just what is wanted', () => {
    const plan = thin(16, 6);
    const now = presentWiring({ plan, trainAmps: 0.5, trip: 3, sizes });
    if ('because' in now) throw new Error('no operating point');
    const judged = (wanted: number, most: number) => {
      const one = presentWiring({ plan, trainAmps: 0.5, trip: 0.5, sizes, wanted, most });
      return 'because' in one ? one.because : [one.verdict, ...one.fails];
    };
    expect(judged(now.drop, now.drop)).toEqual(['good']);
    expect(judged(0.99 * now.drop, now.drop)).toEqual(['bearable']);
    expect(judged(0.99 * now.drop, 0.99 * now.drop)).toEqual(['fails', 'drop']);
  });

  test('a short that draws just the margin trips, a supply that gives just the trip current does not do', () => {
    const plan = thin(16, 6);
    const now = presentWiring({ plan, trainAmps: 0.5, trip: 1, sizes });
    if ('because' in now) throw new Error('no operating point');
    const fails = (trip: number, limit?: number) => {
      const source = limit === undefined ? plan.source : { ...plan.source, limit };
      const one = presentWiring({ plan: { ...plan, source }, trainAmps: 0.1, trip, sizes, margin: 1.25 });
      return 'because' in one ? [one.because] : one.fails;
    };
    expect(fails(now.loopAmps / 1.25)).toEqual([]);
    expect(fails(now.loopAmps / 1.24)).toEqual(['short-circuit']);
    expect(fails(1, 1)).toEqual(['supply-below-trip']);
    expect(fails(1, 1.01)).toEqual([]);
  });

  test('a lower trip current leaves trains all but a tenth of it, to the last of it; as it is, nothing is lowered', () => {
    const lowest = (trainAmps: number) =>
      of(advise({ plan: thin(40, 8), trip: 5, trainAmps, tripMost: 2 }).candidates, 'lower-trip');
    expect(lowest(1.8)[0]).toMatchObject({ trip: 2 });
    expect(lowest(1.8)[0]?.fails).not.toContain('trip-too-low');
    expect(lowest(1.81)[0]?.fails).toContain('trip-too-low');
    const short = advise({ plan: thin(4, 3), trip: 1, trainAmps: 0.99 }).candidates;
    expect(short[0]?.fails).toEqual([]);
    expect(short.filter(({ fails }) => fails.includes('trip-too-low'))).toEqual(
      short.filter(({ change: { kind }, fails }) => (kind === 'lower-trip' || kind === 'breakers') && fails.length > 0),
    );
  });

  test('what is fed at its middle already is not moved there; a pair on an oval stays as it is joined', () => {
    const moved = (candidates: readonly WiringCandidate[]) =>
      candidates.filter(({ change }) => change.kind === 'rewired' && change.middle !== undefined);
    const plan = { ...thin(40, 8), bus: { ...thin(40, 8).bus, fedAt: 20 } };
    expect(moved(advise({ plan, trainAmps: 1 }).candidates)).toEqual([]);
    expect(moved(advise({ plan: thin(40, 8), trainAmps: 1 }).candidates).length).toBeGreaterThan(0);
    const oval = { ...thin(40, 1), rails: { ...thin(40, 1).rails, closed: true } };
    expect(moved(advise({ plan: oval, pair: true, trainAmps: 1 }).candidates)).toEqual([]);
    expect(moved(advise({ plan: oval, trainAmps: 1 }).candidates).length).toBeGreaterThan(0);
  });

  test('where nothing does, there is no first; where something only bears, no good one', () => {
    const none = advise({ plan: thin(40, 8), trainAmps: 3, trip: 10, sizes: [] });
    expect(none.candidates.every(({ verdict }) => verdict === 'fails')).toBe(true);
    expect(Object.keys(none)).toEqual(['kind', 'candidates']);
    const found = advise({ plan: thin(4, 3) });
    expect(Object.keys(found)).toEqual(['kind', 'candidates', 'first', 'firstGood']);
    const bearable = advise({ plan: thin(4, 3), wanted: 0 });
    expect(bearable.first?.verdict).toBe('bearable');
    expect(Object.keys(bearable)).toEqual(['kind', 'candidates', 'first']);
  });

  test('where nothing is left for a train as it is, only what is laid anew or joined is told', () => {
    const { candidates } = advise({ plan: thin(60, 3), trainAmps: 4, trip: 5 });
    expect(of(candidates, 'as-it-is')).toEqual([]);
    expect(of(candidates, 'lower-trip')).toEqual([]);
    expect(candidates.length).toBeGreaterThan(0);
  });

  test('trains that draw more than the source passes are no matter of wires: that is said instead', () => {
    const plan = { ...thin(4, 3), source: { volts: 15, ohms: 0.1, limit: 1 } };
    expect(suggestWiring({ plan, trainAmps: 2, trip: 3, sizes })).toEqual({
      kind: 'no-solution',
      because: 'more-than-the-source',
      parts: ['source'],
    });
  });

  test('a bus costs more the thicker and the longer it is, and lead counts as bus', () => {
    const cost = (area: number, length: number, lead = 0): number => {
      const plan = { ...thin(length, 4), bus: { ...thin(length, 4).bus, lead } };
      return changeCost({ kind: 'rewired', bus: { area, make: 'flexible' } }, plan, false).money.to;
    };
    expect(cost(2.5e-6, 10)).toBeGreaterThan(cost(1.5e-6, 10) + 1);
    expect(cost(1.5e-6, 20)).toBeGreaterThan(cost(1.5e-6, 10) + 1);
    near(cost(1.5e-6, 10, 10), cost(1.5e-6, 20), 1e-9);
    // What wire of one square millimetre costs a metre, by each further one.
    near(cost(2e-6, 10) - cost(1e-6, 10), cost(3e-6, 10) - cost(2e-6, 10), 1e-9);
  });

  test('thicker feeder wire costs the laying of every feeder, new feeders only those that are new', () => {
    const feeder = { area: 0.14e-6, make: 'flexible' as const };
    const plan = {
      ...thin(4, 6),
      feeders: evenFeeders({ count: 6 }, { length: 4 }, { length: 0.2, ohmsPerMetre: ohmsPerMetre(feeder) }),
      bus: { ...thin(4, 6).bus, ohmsPerMetre: ohmsPerMetre({ area: 1.5e-6, make: 'flexible' }) },
    };
    const [rewired] = anew(advise({ plan, trip: 5, feeder }).candidates, 'feederWire');
    expect(rewired?.cost).toEqual(
      changeCost({ kind: 'rewired', feeders: { spacing: 1, count: 12, added: 6 } }, plan, false),
    );
    expect(rewired?.cost).not.toEqual(
      changeCost({ kind: 'rewired', feeders: { spacing: 1, count: 7, added: 1 } }, plan, false),
    );
  });

  test('a ring or an oval is not fed from its middle nor halved', () => {
    const plan = thin(20, 4);
    const ring = { ...plan, bus: { ...plan.bus, ring: true }, rails: { ...plan.rails, closed: true } };
    const { candidates } = advise({ plan: ring });
    expect([...anew(candidates, 'middle'), ...of(candidates, 'second-stage')]).toEqual([]);
  });

  test('what is warmer resists more: the bus is compared at the temperature given', () => {
    const plan = {
      ...thin(30, 6),
      bus: { ...PLAN.bus, length: 30, ohmsPerMetre: ohmsPerMetre({ area: 1e-6, make: 'flexible' }, 60) },
    };
    const thicker = advise({
      plan: { ...plan, bus: { ...plan.bus, fedAt: 15 } },
      degrees: 60,
      trainAmps: 2.5,
    }).candidates.flatMap(({ change }) =>
      change.kind === 'rewired' && change.bus !== undefined ? [change.bus.area] : [],
    );
    expect(thicker.length).toBeGreaterThan(0);
    expect(Math.min(...thicker)).toBeGreaterThan(1e-6);
  });

  test('nothing to go by: the part is named', () => {
    const plan = thin(10, 3);
    expect(suggestWiring({ plan, trainAmps: 0, trip: 3, sizes })).toMatchObject({
      because: 'not-above-zero',
      parts: ['train'],
    });
    expect(suggestWiring({ plan, trainAmps: 1, trip: Number.NaN, sizes })).toMatchObject({
      because: 'not-above-zero',
      parts: ['trip'],
    });
    expect(suggestWiring({ plan: { ...plan, feeders: [] }, trainAmps: 1, trip: 3, sizes })).toMatchObject({
      because: 'no-feeder',
    });
  });
});

describe('wire between the stage and its bus', () => {
  const led = (lead: number): FeedingPlan => ({ ...PLAN, bus: { ...PLAN.bus, lead } });

  test('loses there and back what its metres lose, wherever the train stands', () => {
    const lost = 2 * 3 * 0.0133 * 2;
    const [without, behind] = [train(PLAN, 2), train(led(3), 2)];
    near(without.worst.volts - behind.worst.volts, lost, 1e-9);
    expect(behind.worst.at).toBe(without.worst.at);
  });

  test('of no metres changes nothing, and of less than none it is refused', () => {
    expect(train(led(0), 2)).toEqual(train(PLAN, 2));
    expect(trainAlong(led(-1), 2)).toMatchObject({ because: 'below-zero', parts: ['bus'] });
  });
});

describe('the least wiring that is good', () => {
  const sizes = METRIC_SIZES.map((area) => ({ area, make: 'flexible' as const }));
  const need = (length: number): WiringNeed => ({
    plan: { ...PLAN, bus: { ...PLAN.bus, length }, rails: { ...PLAN.rails, length }, feeders: [{ ...WIRE, at: 0 }] },
    trainAmps: 1,
    trip: 3,
    sizes,
  });

  test('is found among every size and distance: no thinner wire is good at any, no wider distance with that wire', () => {
    for (const length of [2, 5, 9, 14]) {
      const least = leastWiring(need(length), 1);
      if (least?.change.kind !== 'rewired') throw new Error('nothing found');
      const { bus: conductor, feeders } = least.change;
      const good = sizes.flatMap(({ area, make }) =>
        FEEDER_SPACINGS.filter((one) => one >= 1).flatMap((one) => {
          const { plan, ...rest } = need(length);
          const bus = { ...plan.bus, ohmsPerMetre: ohmsPerMetre({ area, make }) };
          const laid = { ...plan, bus, feeders: evenFeeders({ spacing: one }, plan.rails, WIRE) };
          const judged = presentWiring({ ...rest, plan: laid, bus: { area, make } });
          return 'verdict' in judged && judged.verdict === 'good' ? [{ area, spacing: one }] : [];
        }),
      );
      const thinnest = Math.min(...good.map(({ area }) => area));
      expect(conductor?.area).toBe(thinnest);
      expect(feeders?.spacing).toBe(
        Math.max(...good.filter(({ area }) => area === thinnest).map((one) => one.spacing)),
      );
    }
  });

  test('never asks for thinner wire on a longer track', () => {
    const sizesFor = [3, 5, 8, 12, 16, 20, 25, 30, 40].map((length) => {
      const { change } = leastWiring(need(length), 1) ?? {};
      return change?.kind === 'rewired' ? (change.bus?.area ?? 0) : Number.POSITIVE_INFINITY;
    });
    expect(sizesFor).toEqual([...sizesFor].sort((a, b) => a - b));
  });

  test('is none where no size reaches, and none without a feeder to go by', () => {
    expect(leastWiring(need(200), 1)).toBeUndefined();
    expect(leastWiring({ ...need(5), plan: { ...need(5).plan, feeders: [] } }, 1)).toBeUndefined();
  });
});
