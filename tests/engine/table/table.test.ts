import { describe, expect, test } from 'vitest';
import type { StageIndex, TableLayout, TableStage, TableSupply } from '../../../src/engine/table/layout.ts';
import { TABLE_PIECES } from '../../../src/engine/table/layout.ts';
import { meterReads } from '../../../src/engine/table/meter.ts';
import { idleVolts } from '../../../src/engine/table/moment.ts';
import { run, worldOf } from '../../../src/engine/table/protection.ts';
import { moveTo, snapshot, startTable, step, throttle } from '../../../src/engine/table/table.ts';
import { inject, TABLE_FAULTS } from '../../judge/injection.ts';
import { across, bridged, coinTest, gapLamps, LAMP_OHMS, loadTest, ohmsBetween } from '../../judge/instruments.ts';
import { makeLayout } from '../../judge/layouts.ts';
import {
  bothRails,
  coachInUnfedPart,
  crossing,
  eachAlone,
  jumperTest,
  pulled,
  runsIntoUnfed,
  standAcross,
  swappedWires,
} from '../../judge/observation.ts';
import { atRest, crossed, evening, throughLoop } from '../../judge/scenes.ts';
import { near } from '../../near.ts';
import { seeded } from '../../seeded.ts';

const SEEDS = Array.from({ length: 40 }, (_, i) => 101 + 7 * i);
const healthy = (seed: number): TableLayout => makeLayout(seeded(seed));
const layouts = (change: (layout: TableLayout) => TableLayout = (layout) => layout): TableLayout[] =>
  SEEDS.map((seed) => change(healthy(seed)));

const floating = (layout: TableLayout): TableLayout => ({ ...layout, common: 'floating' });
const joined = (layout: TableLayout): TableLayout => ({ ...layout, common: 'joined-negatives' });

/** One rail, or both, left uncut at the main gap. */
const uncut = (layout: TableLayout, ...rails: readonly ('a' | 'b')[]): TableLayout => ({
  ...layout,
  joins: layout.joins.map((join) => {
    if (join.from !== 'old-gap' || join.to !== 'new-gap') return join;
    return { ...join, ohmsA: rails.includes('a') ? 0.03 : join.ohmsA, ohmsB: rails.includes('b') ? 0.03 : join.ohmsB };
  }),
});

const stageWith = (layout: TableLayout, stage: StageIndex, change: Partial<TableStage>): TableLayout => ({
  ...layout,
  stages: [
    { ...layout.stages[0], ...(stage === 0 ? change : {}) },
    { ...layout.stages[1], ...(stage === 1 ? change : {}) },
  ],
});
const supplyWith = (layout: TableLayout, stage: StageIndex, change: Partial<TableSupply>): TableLayout => ({
  ...layout,
  supplies: [
    { ...layout.supplies[0], ...(stage === 0 ? change : {}) },
    { ...layout.supplies[1], ...(stage === 1 ? change : {}) },
  ],
});

describe('A layout in working order', () => {
  test('carries every vehicle over the gap, with everything standing and with everything running', () => {
    for (const layout of layouts()) {
      for (const kind of ['locomotive', 'long', 'rake'] as const) {
        for (const traffic of ['standing', 'all'] as const) {
          const { outcome, offs } = crossing(layout, kind, { traffic });
          expect(offs).toEqual([]);
          expect(outcome).toBe('crosses');
        }
      }
    }
  });

  test('keeps its units on for a whole evening', () => {
    for (const layout of layouts()) {
      expect(atRest(layout, 'lifted').offs).toEqual([]);
      expect(evening(layout, 'all').offs).toEqual([]);
    }
  });

  test('leaves the unfed far part dark with a clip on either rail', () => {
    for (const layout of layouts()) {
      expect(jumperTest(layout)).toEqual({ without: false, clipA: false, clipB: false, joined: [] });
    }
  });

  test('is the same for the same seed', () => {
    expect(healthy(5)).toEqual(healthy(5));
    expect(healthy(5)).not.toEqual(healthy(6));
  });
});

describe('Polarity reversed at the gap', () => {
  const reversed = layouts(swappedWires);

  test('lets each part run well alone', () => {
    for (const layout of reversed) {
      const { first, second, together } = eachAlone(layout);
      expect([...first, ...second, ...together]).toEqual([]);
    }
  });

  test('puts at least one unit out as soon as a locomotive bridges both rails', () => {
    for (const layout of reversed) {
      const { outcome, offs } = crossed(layout, 'locomotive');
      expect(outcome).toBe('trips');
      expect(offs[0]?.kind).toBe('trip');
    }
  });

  test('trips the quicker unit of the two in series; the other may show nothing', () => {
    for (const layout of layouts((one) => ({
      ...swappedWires(one),
      reportsShorts: false,
      link: { ...one.link, from: 'bus' },
    }))) {
      const quick = stageWith(stageWith(layout, 0, { tripSeconds: 0.2 }), 1, { tripSeconds: 0.05 });
      const { offs } = standAcross(quick, 'locomotive', 'main', 1);
      expect(new Set(offs.map(({ stage }) => stage))).toEqual(new Set([1]));
    }
  });

  test('goes on for ever with a unit that tries again and a locomotive parked across', () => {
    const retrying = stageWith(swappedWires(healthy(3)), 1, { comesBack: 'retry', retrySeconds: 2, tripSeconds: 0.05 });
    const slow = stageWith(retrying, 0, { tripSeconds: 0.2 });
    expect(standAcross(slow, 'locomotive', 'main', 21).offs.length).toBeGreaterThanOrEqual(10);
  });

  test('comes from the signal pair just as from the track wires, and one of both swaps cures it', () => {
    for (const layout of layouts()) {
      const inverted = { ...layout, link: { ...layout.link, inverted: true } };
      expect(crossed(inverted, 'locomotive').outcome).toBe('trips');
      expect(crossed(swappedWires(inverted), 'locomotive').outcome).toBe('crosses');
    }
  });
});

describe('Lamps across the gap', () => {
  test('a single one stays dark with floating units even where they are reversed: there is no way back', () => {
    for (const layout of layouts((one) => swappedWires(floating(one)))) {
      expect(gapLamps(layout, ['a']).a).toBe('dark');
      expect(gapLamps(layout, ['b']).b).toBe('dark');
    }
  });

  test('two both shine where the units are reversed, floating or with joined negatives', () => {
    for (const common of [floating, joined]) {
      for (const layout of layouts((one) => swappedWires(common(one)))) {
        expect(gapLamps(layout, ['a', 'b'])).toEqual({ a: 'light', b: 'light' });
      }
    }
  });

  test('two both stay dark where the units are in phase', () => {
    for (const common of [floating, joined]) {
      for (const layout of layouts(common)) {
        expect(gapLamps(layout, ['a', 'b'])).toEqual({ a: 'dark', b: 'dark' });
      }
    }
  });

  test('one is dark and the other over-bright where the units are reversed and the dark one has its rail joined', () => {
    for (const layout of layouts((one) => uncut(swappedWires(floating(one)), 'a'))) {
      expect(gapLamps(layout, ['a', 'b'])).toEqual({ a: 'dark', b: 'over-bright' });
    }
  });
});

describe('One rail gapped only', () => {
  test('shows nothing with isolated units in phase: trains cross as if all were well', () => {
    for (const rail of ['a', 'b'] as const) {
      for (const layout of layouts((one) => uncut(floating(one), rail))) {
        const { outcome, blinks } = crossed(layout, 'locomotive');
        expect([outcome, blinks]).toEqual(['crosses', 0]);
      }
    }
  });

  test('is passed by the running test: the locomotive stops all the same', () => {
    for (const layout of layouts((one) => uncut(one, 'b')))
      expect(runsIntoUnfed(layout, 'locomotive').runsOn).toBe(false);
  });

  test('is found by the jumper test, which names the rail', () => {
    for (const rail of ['a', 'b'] as const) {
      for (const layout of layouts((one) => uncut(one, rail))) {
        const { without, joined: rails } = jumperTest(layout);
        expect([without, rails]).toEqual([false, [rail]]);
      }
    }
  });

  test('reads through on that rail alone with everything unplugged', () => {
    for (const layout of layouts((one) => uncut(one, 'a'))) {
      expect(ohmsBetween(layout, ['old-gap', 'a'], ['new-gap', 'a'])).toBeLessThan(0.1);
      expect(ohmsBetween(layout, ['old-gap', 'b'], ['new-gap', 'b'])).toBe(Number.POSITIVE_INFINITY);
    }
  });

  test('trips at switching on with joined negatives and reversed polarity', () => {
    for (const layout of layouts((one) => uncut(swappedWires(joined(one)), 'a'))) {
      expect(atRest(layout, 'lifted').offs.length).toBeGreaterThan(0);
      expect(eachAlone(layout).first).toEqual([]);
      expect(eachAlone(layout).second).toEqual([]);
    }
  });

  test('trips with a phase fault when a locomotive bridges the other rail', () => {
    for (const layout of layouts((one) => uncut(swappedWires(floating(one)), 'a')))
      expect(crossed(layout, 'locomotive').outcome).toBe('trips');
  });
});

describe('The running test with the far part unfed', () => {
  test('is misled by stored energy: it runs on over a perfect gap', () => {
    for (const layout of layouts()) {
      expect(runsIntoUnfed(layout, 'locomotive').runsOn).toBe(false);
      expect(runsIntoUnfed(layout, 'stored').runsOn).toBe(true);
    }
  });

  test('shows a path that joins both rails', () => {
    for (const layout of layouts((one) => uncut(one, 'a', 'b')))
      expect(runsIntoUnfed(layout, 'locomotive').runsOn).toBe(true);
  });

  test('a train that straddles feeds the far part with its own pick-ups: a coach there shines', () => {
    for (const layout of layouts((one) => pulled(one, 1))) {
      const { locomotive, coach } = layout.vehicles;
      const behind = locomotive.pickUps.map((wheel) => wheel.behind);
      const across = (Math.min(...behind) + Math.max(...behind)) / 2;
      const far = { vehicle: coach, route: 'main', front: locomotive.length + coach.length + 0.1, drive: 0 } as const;
      const alone = run(layout, worldOf(layout, [far], 'standing'), 0.1);
      expect(alone.moment.plus.carVolts[0] ?? 9).toBeLessThan(1);
      const straddling = { vehicle: locomotive, route: 'main', front: across, drive: 0 } as const;
      const fed = run(layout, worldOf(layout, [straddling, far], 'standing'), 0.1);
      expect(fed.moment.plus.carVolts[1] ?? 0).toBeGreaterThan(8);
    }
  });

  test('the locomotive goes on until its last feeding wheel has left the near side', () => {
    for (const layout of layouts()) {
      const { front } = runsIntoUnfed(layout, 'long');
      const last = Math.max(...layout.vehicles.long.pickUps.map(({ behind }) => behind));
      near(front, last + layout.vehicles.long.rollsOn, 0.002, 'where it stops');
    }
  });
});

describe('A second path', () => {
  const withPath = layouts((layout) => inject(layout, 'forgotten-path', seeded(1)));

  test('keeps a coach in the unfed part alight, though the gap itself is perfect', () => {
    for (const layout of withPath) expect(coachInUnfedPart(layout)).toBe('lit');
  });

  test('hides behind a perfect gap from the ohms of one joint, and shows in the ohms of the boundary', () => {
    for (const layout of withPath) expect(ohmsBetween(layout, ['old-gap', 'a'], ['new-gap', 'a'])).toBeLessThan(5);
  });

  test('goes unnoticed in phase and trips only with both units on where the polarity is reversed', () => {
    for (const layout of withPath) {
      expect(atRest(layout, 'standing').offs).toEqual([]);
      const { first, second, together } = eachAlone(swappedWires(layout));
      expect([first, second]).toEqual([[], []]);
      expect(together.length).toBeGreaterThan(0);
    }
  });
});

describe('Unequal rail volts in phase', () => {
  // Two stages on one mathematical loop: the locomotive is the only resistance worth naming.
  const table = (high: number, low: number, contact: number, load: number): TableLayout => {
    const layout = floating(healthy(3));
    const plain = { ohms: 1e-4, ownUse: 0, trip: 50, continuous: 50 };
    const strong = { amps: 100, volts: 40, ohms: 0.01, continuous: 100 };
    let made = stageWith(stageWith(layout, 0, { ...plain, setVolts: low }), 1, { ...plain, setVolts: high });
    made = supplyWith(supplyWith(made, 0, strong), 1, strong);
    const stiff = made.feeders.map((feeder) => ({ ...feeder, ohms: 1e-4 }));
    const joins = made.joins.map((join) => (join.kind === 'plain' ? { ...join, ohmsA: 1e-4, ohmsB: 1e-4 } : join));
    const consumer = {
      kind: 'train',
      piece: 'old-gap',
      running: load,
      standing: load,
      inrush: 0,
      inrushSeconds: 0,
    } as const;
    const { locomotive } = made.vehicles;
    const pickUps = [0, 0.1].flatMap((behind) => [{ rail: 'a', behind } as const, { rail: 'b', behind } as const]);
    const bridge = { ...locomotive, pickUps, contact: contact / 4, standing: 0, running: 0 };
    const { guard: _, ...first } = made.stages[0];
    const { guard: __, ...second } = made.stages[1];
    return {
      ...made,
      stages: [first, second],
      feeders: stiff,
      joins,
      consumers: [consumer],
      vehicles: { ...made.vehicles, locomotive: bridge },
      railOhms: 0,
      hasLoop: false,
    };
  };

  // Steady take-over min(dV/R, load of the lower part) and the link of the lower unit: own derivation, supplies that cannot sink.
  const cases = [
    [17, 15, 1, 1, 1, 16],
    [17, 15, 1, 3, 2, 15],
    [16, 15, 0.3, 1, 1, 15.7],
    [17, 15, 0.3, 0.1, 0.1, 16.97],
  ] as const;
  test.each(cases)(
    '%d V against %d V through %d ohms and a load of %d A: %d A taken over, lower rails at %d V',
    (high, low, ohms, load, amps, link) => {
      const layout = table(high, low, ohms, load);
      const { ran } = standAcross(layout, 'locomotive', 'main', 0.01);
      near(ran.moment.plus.stageAmps[1], amps, 0.06, 'taken over');
      near(ran.moment.plus.linkVolts[0], link, 0.06, 'lower link');
      near(ran.moment.plus.supplyAmps[0], load - amps, 0.08, 'left to the lower supply');
    },
  );

  test('one unit passes its limit by what it takes over, and then the other gets both loads: cascade', () => {
    const layout = table(18, 15, 0.3, 2);
    const busy = {
      ...layout,
      consumers: [
        ...layout.consumers,
        { kind: 'train', piece: 'new-gap', running: 2, standing: 2, inrush: 0, inrushSeconds: 0 } as const,
      ],
    };
    const near3 = { trip: 3, comesBack: 'latched' } as const;
    const both = {
      ...stageWith(stageWith(busy, 0, { ...near3, tripSeconds: 0.05 }), 1, { ...near3, tripSeconds: 0.05 }),
      reportsShorts: false,
    };
    const bus = { ...both, link: { ...both.link, from: 'bus' } as const };
    const offs = standAcross(bus, 'locomotive', 'main', 2).offs.map(({ stage, kind }) => [kind, stage]);
    expect(offs).toEqual([
      ['trip', 1],
      ['trip', 0],
    ]);
  });
});

describe('A booster that is off', () => {
  const off = layouts((layout) => supplyWith(layout, 1, { plugged: false }));

  test('leaves the far part dark', () => {
    for (const layout of off)
      expect(snapshot(startTable(layout, [])).rails.find(({ piece }) => piece === 'new-gap')?.volts ?? 9).toBeLessThan(
        3,
      );
  });

  test('has its part come alive while a locomotive bridges the gap, and its own link is fed', () => {
    for (const layout of off) {
      const { moment } = standAcross(layout, 'locomotive', 'main', 0.01).ran;
      expect(moment.plus.linkVolts[1]).toBeGreaterThan(5);
    }
  });

  test('that lacks its signal gives nothing, or plain direct current, as it is built', () => {
    for (const layout of layouts((one) => ({ ...one, link: { ...one.link, state: 'missing' } as const }))) {
      const volts = (withoutSignal: TableStage['withoutSignal']) => {
        const built = stageWith(layout, 1, { withoutSignal });
        return meterReads(built, worldOf(built, [], 'standing'), ...bothRails('new-gap'));
      };
      expect(volts('muted').dc).toBeLessThan(1);
      expect(volts('holds').dc).toBeGreaterThan(8);
      expect(volts('holds').ac).toBeLessThan(2);
    }
  });

  test('a decoder that takes direct current for a command runs off there at full speed', () => {
    const silent = stageWith({ ...healthy(4), link: { ...healthy(4).link, state: 'missing' } as const }, 1, {
      withoutSignal: 'holds',
    });
    const { locomotive } = silent.vehicles;
    for (const dcRunning of [true, false]) {
      const table = startTable(silent, [
        { vehicle: { ...locomotive, dcRunning }, route: 'main', front: 0.6, drive: 0 },
      ]);
      expect((step(table, 1).world.cars[0]?.front ?? 0) > 0.7).toBe(dcRunning);
    }
  });
});

describe('Who goes dark with a short in the new part', () => {
  const shorted = (layout: TableLayout): TableLayout => bridged(layout, across('metal', ...bothRails('new-mid'), 0.1));
  /** Within a second; a unit that blinks may be on again when the second is over. */
  const darkOld = (layout: TableLayout): boolean => {
    let dark = false;
    run(layout, worldOf(layout, [], 'lifted'), 1, ({ stages }) => {
      dark ||= stages[0].mode !== 'ready';
      return dark;
    });
    return dark;
  };

  test('independent units: only that part', () => {
    for (const layout of layouts((one) => shorted({ ...one, reportsShorts: false })))
      expect(darkOld(layout)).toBe(false);
  });

  test('a unit that reports to the command station: everything, by design', () => {
    for (const layout of layouts((one) => shorted({ ...one, reportsShorts: true }))) expect(darkOld(layout)).toBe(true);
  });

  test('a booster that takes its signal from the track output of a shorted command station falls silent too', () => {
    const old = (layout: TableLayout): TableLayout => bridged(layout, across('metal', ...bothRails('old-far'), 0.1));
    for (const from of ['bus', 'track-output'] as const) {
      const layout = stageWith(old({ ...healthy(9), reportsShorts: false, link: { ...healthy(9).link, from } }), 1, {
        withoutSignal: 'muted',
      });
      const { stages } = snapshot(step(startTable(layout, []), 0.5));
      expect(stages[1]?.state).toBe(from === 'bus' ? 'driving' : 'no-signal');
    }
  });

  test('a supply weaker than the trip current collapses, so that the unit starts anew and never sees a short', () => {
    const weak = supplyWith(shorted(healthy(11)), 1, { amps: 0.6 * healthy(11).stages[1].trip });
    const kinds = new Set(run(weak, worldOf(weak, [], 'lifted'), 5).events.map(({ kind }) => kind));
    expect(kinds.has('restart') || kinds.has('supply-off')).toBe(true);
    expect(kinds.has('trip')).toBe(false);
  });
});

describe('An engine that picks up one rail and a tender that picks up the other', () => {
  test('stalls at the gap of floating units and crosses with joined negatives', () => {
    for (const layout of layouts((one) => stageWith(one, 1, { setVolts: idleVolts(one, 0) }))) {
      expect(crossing(floating(layout), 'split').outcome).toBe('stops');
      expect(crossing(joined(layout), 'split').outcome).toBe('crosses');
    }
  });
});

describe('A meter across the gap', () => {
  test('shows mains that strays through the supplies where both units float, and none with joined negatives', () => {
    for (const layout of layouts(floating)) {
      const far = supplyWith(layout, 1, { ghostVolts: -layout.supplies[0].ghostVolts });
      const reads = (one: TableLayout, ohms: number) =>
        meterReads(
          { ...one, meter: { ...one.meter, ohms } },
          worldOf(one, [], 'lifted'),
          ['old-gap', 'a'],
          ['new-gap', 'a'],
        ).ghost;
      expect(reads(far, 10e6)).toBeGreaterThan(20);
      expect(reads(far, 0.5e6)).toBeLessThan(0.5 * reads(far, 10e6));
      expect(reads(joined(far), 10e6)).toBeLessThan(0.1);
    }
  });

  test('tells reversed from right by comparing same rail and diagonal once the other rail is joined by a lamp', () => {
    for (const reversed of [false, true]) {
      for (const layout of layouts((one) => (reversed ? swappedWires(one) : one))) {
        const lit = bridged(layout, across('test-lamp', ['old-gap', 'b'], ['new-gap', 'b'], LAMP_OHMS));
        const world = worldOf(lit, [], 'lifted');
        const same = meterReads(lit, world, ['old-gap', 'a'], ['new-gap', 'a']).ac;
        const diagonal = meterReads(lit, world, ['old-gap', 'a'], ['new-gap', 'b']).ac;
        expect(same > 1.4 * diagonal).toBe(reversed);
        expect(diagonal > 1.4 * same).toBe(!reversed);
      }
    }
  });

  test('reads twice the rail volts on same rails of reversed floating units with the other rail joined, once with joined negatives', () => {
    for (const [common, times] of [
      [floating, 2],
      [joined, 1],
    ] as const) {
      for (const layout of layouts((one) => swappedWires(common(one)))) {
        const lit = bridged(layout, across('test-lamp', ['old-gap', 'b'], ['new-gap', 'b'], LAMP_OHMS));
        const { ac } = meterReads(lit, worldOf(lit, [], 'lifted'), ['old-gap', 'a'], ['new-gap', 'a']);
        near(ac / layout.meter.factor / idleVolts(layout, 0), times, 0.1, 'times the rail volts');
      }
    }
  });

  test('reads near nothing on same rails with a dead far part too: that is no proof of right', () => {
    const dead = supplyWith(joined(healthy(2)), 1, { plugged: false });
    const lit = bridged(pulled(dead, 1), across('test-lamp', ['old-gap', 'a'], ['new-gap', 'a'], LAMP_OHMS));
    expect(meterReads(lit, worldOf(lit, [], 'lifted'), ['old-gap', 'a'], ['new-gap', 'a']).ac).toBeLessThan(1);
  });

  test('an averaging one shows a plain square wave 11 % high (averaging meters are scaled for a sine: pi / (2 sqrt 2))', () => {
    const layout = {
      ...healthy(8),
      meter: { kind: 'averaging', factor: Math.PI / (2 * Math.SQRT2), ohms: 10e6 } as const,
    };
    const { ac } = meterReads(layout, worldOf(layout, [], 'lifted'), ...bothRails('old-gap'));
    near(ac / idleVolts(layout, 0), 1.11, 0.01, 'reading against rail volts');
  });
});

describe('The load test with a resistor', () => {
  test('tells the short-circuit current, whatever the meter makes of the volts', () => {
    for (const layout of layouts()) {
      const found = loadTest({ ...layout, meter: { kind: 'true-rms', factor: 0.7, ohms: 10e6 } }, 'new-gap');
      const right = loadTest({ ...layout, meter: { kind: 'true-rms', factor: 1, ohms: 10e6 } }, 'new-gap');
      near(found.shortAmps / right.shortAmps, 1, 0.01, 'ratio');
      expect(right.shortAmps).toBeGreaterThan(1.5 * layout.stages[1].trip);
    }
  });

  test('finds the far end weak where one feed serves all', () => {
    for (const layout of layouts((one) => inject(one, 'few-feeds', seeded(4)))) {
      const [close, far] = [loadTest(layout, 'new-gap'), loadTest(layout, 'new-far')];
      expect(far.shortAmps).toBeLessThan(0.4 * close.shortAmps);
    }
  });
});

describe('The coin', () => {
  test('puts the unit of its part out in its trip time', () => {
    for (const layout of layouts()) {
      const { trips } = coinTest(layout, 'new-far');
      expect([trips?.stage, trips?.how]).toEqual([1, 'trip']);
      near(trips?.seconds ?? 9, layout.stages[1].tripSeconds, 1e-6, 'seconds');
    }
  });

  test('stays hot on a unit whose trip current no short at the end of poor wiring can reach', () => {
    for (const layout of layouts((one) => inject(one, 'few-feeds', seeded(4)))) {
      const high = supplyWith(stageWith(layout, 1, { trip: 3 * layout.stages[1].trip }), 1, { amps: 30 });
      const { trips, amps } = coinTest(high, 'new-far');
      expect(trips).toBeUndefined();
      expect(amps).toBeGreaterThan(1);
    }
  });
});

describe('A reversing section', () => {
  const loop = (layout: TableLayout): TableLayout => ({ ...layout, hasLoop: true });

  test('with an automatic reverser lets a locomotive go right round', () => {
    for (const layout of layouts(loop)) {
      const { outcome, reversals } = throughLoop(layout, 'locomotive');
      expect([outcome, reversals]).toEqual(['crosses', 1]);
    }
  });

  test('without one puts the unit out when the locomotive leaves', () => {
    for (const layout of layouts((one) => inject(one, 'loop-no-device', seeded(1)))) {
      const { outcome, front } = throughLoop(layout, 'locomotive');
      expect(outcome).toBe('trips');
      near(front, layout.lengths.loop, 0.25, 'where it trips');
    }
  });

  test('too short for a rake with metal wheels trips with the rake and not with a locomotive alone', () => {
    for (const layout of layouts((one) => inject(one, 'loop-too-short', seeded(1)))) {
      expect(throughLoop(layout, 'locomotive').outcome).toBe('crosses');
      expect(throughLoop(layout, 'rake').outcome).toBe('trips');
    }
  });

  test('with a neighbour that reverses as well chatters: both turn at once, and nothing has changed', () => {
    for (const layout of layouts((one) => inject(one, 'two-auto-reversers', seeded(1))))
      expect(throughLoop(layout, 'locomotive').reversals).toBeGreaterThan(3);
  });
});

describe('Playing with the layout', () => {
  test('a throttle moves the locomotive, a slider places it, and steps of any length come to the same place', () => {
    const layout = healthy(21);
    const placed = [{ vehicle: layout.vehicles.locomotive, route: 'main', front: -0.4, drive: 0 } as const];
    const driven = throttle(startTable(layout, placed), 0, 0.5);
    let fine = driven;
    for (let i = 0; i < 40; i++) fine = step(fine, 0.05);
    const coarse = step(driven, 2);
    near(fine.world.cars[0]?.front ?? 9, coarse.world.cars[0]?.front ?? 0, 1e-3, 'front');
    expect(coarse.world.cars[0]?.front ?? 0).toBeGreaterThan(-0.4);
    expect(moveTo(coarse, 0, 0.05).world.cars[0]?.front).toBe(0.05);
    expect(driven.world.time).toBe(0);
  });

  test('backward it drives as well as forward', () => {
    const layout = healthy(21);
    const table = startTable(layout, [{ vehicle: layout.vehicles.locomotive, route: 'main', front: 0.4, drive: -1 }]);
    expect(step(table, 4).world.cars[0]?.front ?? 0).toBeLessThan(-0.1);
  });

  test('a snapshot has volts for every piece, and what flows into a vehicle on one side flows out on the other', () => {
    for (const layout of layouts()) {
      const table = startTable(layout, [{ vehicle: layout.vehicles.long, route: 'main', front: 0.13, drive: 1 }]);
      const { rails, cars, meter } = snapshot(table, bothRails('old-gap'));
      expect(rails.map(({ piece }) => piece)).toEqual([...TABLE_PIECES]);
      const sum = (cars[0]?.pickUps ?? []).reduce((total, { amps }) => total + amps, 0);
      near(sum, 0, 1e-4, 'sum of pick-up currents');
      expect(meter?.ac ?? 0).toBeGreaterThan(3);
    }
  });
});

describe('Every fault', () => {
  test('changes the layout and leaves the one it was given as it was', () => {
    for (const fault of TABLE_FAULTS) {
      const layout = healthy(33);
      const before = structuredClone(layout);
      const wrong = inject(layout, fault, seeded(7), { unfed: true });
      expect(layout).toEqual(before);
      expect(wrong, fault).not.toEqual(layout);
    }
  });
});
