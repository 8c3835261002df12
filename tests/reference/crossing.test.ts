// A crossing against textbook examples and against circuits that ngspice solves. The netlists are written here, not by the engine.
import { describe, expect, test } from 'vitest';
import type { LoopInput } from '../../src/engine/crossing/loops.ts';
import { crossingLoop } from '../../src/engine/crossing/loops.ts';
import type { GapMeasurement } from '../../src/engine/crossing/meters.ts';
import { gapReadings, SINE_FACTOR } from '../../src/engine/crossing/meters.ts';
import type { PushInput } from '../../src/engine/crossing/push.ts';
import { pushAt } from '../../src/engine/crossing/push.ts';
import { crossingReversed, FLYBACK_DROP } from '../../src/engine/crossing/reversed.ts';
import { crossingSkew } from '../../src/engine/crossing/skew.ts';
import { pushCurrentAt } from '../engine/crossing/push-course.ts';
import { near } from '../near.ts';
import { seeded } from '../seeded.ts';
import { hasNgspice, measure, operatingPoint, transient } from './ngspice.ts';

const amps = (values: ReadonlyMap<string, number>, name: string): number => values.get(name) ?? Number.NaN;

describe('two sources in parallel, which may take current back', () => {
  /** The load of the given resistance at the lower source: its current and volts by bisection, since `pushAt` takes amperes. */
  function atLoad(input: Omit<PushInput, 'load' | 'ownUse' | 'linkFarads'>, loadOhms: number) {
    let [low, high] = [0, 1000];
    for (let i = 0; i < 100; i += 1) {
      const load = (low + high) / 2;
      const { link } = pushAt({ ...input, load, ownUse: 0, linkFarads: 0, sinks: true });
      if (link > load * loadOhms) low = load;
      else high = load;
    }
    return pushAt({ ...input, load: low, ownUse: 0, linkFarads: 0, sinks: true });
  }

  // A textbook question with its answer, as discussed in an electronics forum (thread 287259): two batteries of 100 V, 5 ohms and
  // 95 V, 3 ohms on 80 ohms.
  test('100 V with 5 ohms and 95 V with 3 ohms on 80 ohms: 1.069 A, 0.115 A, 94.66 V', () => {
    const found = atLoad({ higherVolts: 100, lowerVolts: 95, ohms: 5, supplyOhms: 3 }, 80);
    near(found.takeOver, 1.069, 0.0005);
    near(found.lowerGives, 0.115, 0.0006);
    near(found.link, 94.66, 0.005);
    near(found.takeOver, 1.068702, 5e-7);
    near(found.lowerGives, 0.114504, 5e-7);
    near(found.link, 94.656489, 5e-7);
  });

  // Textbook exercise: 3 V with 0.2 ohm and 6 V with 0.4 ohm are like 4 V with 0.1333 ohm; here on 4 ohms.
  test('3 V with 0.2 ohm and 6 V with 0.4 ohm act like 4 V with 0.1333 ohm', () => {
    const found = atLoad({ higherVolts: 6, lowerVolts: 3, ohms: 0.4, supplyOhms: 0.2 }, 4);
    near(found.link, (4 * 4) / (4 + 0.4 / 3), 1e-9);
    expect(found.lowerGives).toBeLessThan(0);
  });

  // Textbook exercise: 1.5 V with 1 ohm and 2 V with 2 ohms on 5 ohms; answers worked out by hand (Millman's theorem).
  test('1.5 V with 1 ohm and 2 V with 2 ohms on 5 ohms: 0.02941 A and 0.26471 A at 1.47059 V', () => {
    const found = atLoad({ higherVolts: 2, lowerVolts: 1.5, ohms: 2, supplyOhms: 1 }, 5);
    near(found.link, 1.47059, 5e-6);
    near(found.lowerGives, 0.02941, 5e-6);
    near(found.takeOver, 0.26471, 5e-6);
  });

  // Worked out by hand: 0.6 V over 0.2 ohm.
  test('15.2 V and 14.6 V over 0.05, 0.05 and 0.1 ohm: 3 A', () => {
    const loop = { ohms: 0.15, supplyOhms: 0.05, load: 0, ownUse: 0, linkFarads: 0, sinks: true };
    near(pushAt({ higherVolts: 15.2, lowerVolts: 14.6, ...loop }).takeOver, 3, 1e-12);
  });
});

/** A diode that drops only a few millivolts, so that a supply behind it gives and never takes. */
const NEARLY_IDEAL = '.model nearly d(n=0.01 is=1e-12)';
const LOOSE = '.options reltol=1e-5 vntol=1e-7 abstol=1e-9 itl1=2000 itl4=200';

describe.skipIf(!hasNgspice)('the pulse and the take-over, as ngspice sees them', () => {
  test.each([
    [17, 15, 1, 1, 2.0, 1.0, 16.0],
    [17, 15, 1, 3, 2.05, 2.05, 14.95],
    [16, 15, 0.3, 1, 3.33, 1.0, 15.7],
    [17, 15, 0.3, 0.1, 6.67, 0.1, 16.97],
  ])('%d V against %d V over %d ohm with %d A: within a hundredth of %d A, %d A and %d V', (...row) => {
    const [higherVolts, lowerVolts, ohms, load, peak, steady, link] = row;
    const input = { higherVolts, lowerVolts, ohms, load, ownUse: 0, linkFarads: 2.2e-3, supplyOhms: 0.05 };
    const circuit = [
      `vh h 0 ${higherVolts}`,
      `rl h link ${ohms}`,
      `c2 link 0 2.2m ic=${lowerVolts}`,
      `iload link 0 ${load}`,
      `v2 s 0 ${lowerVolts}`,
      'r2 s d 0.05',
      'd2 d link nearly',
      NEARLY_IDEAL,
    ];
    const course = { step: 1e-5, stop: 20e-3, fromInitial: true, options: LOOSE };
    const { time, vectors } = transient(circuit, course, ['link', 'i(vh)']);
    const current = Array.from(vectors.get('i(vh)') ?? [], (value) => -value);
    const volts = Array.from(vectors.get('link') ?? []);
    const found = pushAt(input);
    const lastAmps = current.at(-1) ?? Number.NaN;
    const lastVolts = volts.at(-1) ?? Number.NaN;
    // The first row of the course may stand before the capacitor's start value is seen.
    const largest = Math.max(...current.filter((_, i) => (time[i] ?? 0) > 0));
    for (const [name, ngspice, engine, stated] of [
      ['peak', largest, found.peak, peak],
      ['steady', lastAmps, found.takeOver, steady],
      ['link', lastVolts, found.link, link],
    ] as const) {
      near(ngspice / engine, 1, 0.01, name);
      near(ngspice / stated, 1, 0.01, `${name} as stated`);
    }
    for (const [i, at] of time.entries()) {
      if (at > 0) near(current[i] ?? Number.NaN, pushCurrentAt(input, at), 0.01 * found.peak, `at ${at} s`);
    }
  });

  test('30 random pairs, switching and bipolar, that sink or not: steady current and link within 30 mV', () => {
    const random = seeded(20);
    const between = (from: number, to: number) => from + (to - from) * random();
    const cases = Array.from(
      { length: 30 },
      (_, i): Required<PushInput> => ({
        higherVolts: between(14, 22),
        lowerVolts: between(12, 18),
        ohms: between(0.3, 3),
        load: between(0, 3),
        ownUse: between(0.05, 0.5),
        linkFarads: 2.2e-3,
        supplyOhms: between(0.02, 0.1),
        backDrop: i % 3 === 0 ? 3 : 0,
        sinks: i % 5 === 0,
      }),
    );
    const circuits = cases.flatMap((one, i) => [
      `vh${i} h${i} 0 ${one.higherVolts}`,
      // The higher side cannot take current back either.
      `dh${i} h${i} g${i} nearly`,
      `rl${i} g${i} rail${i} ${one.ohms}`,
      `iload${i} rail${i} 0 ${one.load}`,
      // From the link out to the rails freely, and back over the drop.
      ...(one.backDrop > 0
        ? [`df${i} link${i} rail${i} nearly`, `vb${i} rail${i} b${i} ${one.backDrop}`, `db${i} b${i} link${i} nearly`]
        : [`rj${i} rail${i} link${i} 1u`]),
      `iown${i} link${i} 0 ${one.ownUse}`,
      `v2${i} s${i} 0 ${one.lowerVolts}`,
      `r2${i} s${i} d${i} ${one.supplyOhms}`,
      one.sinks ? `rs${i} d${i} link${i} 1u` : `d2${i} d${i} link${i} nearly`,
    ]);
    const names = cases.flatMap((_, i) => [`i(vh${i})`, `link${i}`]);
    const options = '.options reltol=1e-7 vntol=1e-8 abstol=1e-9 itl1=5000 gmin=1e-12';
    const values = operatingPoint([...circuits, NEARLY_IDEAL], names, options);
    for (const [i, one] of cases.entries()) {
      const { takeOver, link } = pushAt(one);
      near(-amps(values, `i(vh${i})`), takeOver, 0.03 / one.ohms, `current of case ${i}`);
      near(amps(values, `link${i}`), link, 0.03, `link of case ${i}`);
    }
    const kinds = cases.map((one) => pushAt(one)).map(({ takeOver, lift }) => [takeOver > 0, lift > 0].join());
    expect(new Set(kinds).size).toBe(3);
  });

  test('rails that change over with every bit: the same steady current as with d.c., within 2 %', () => {
    // p is +1 or -1. Each stage puts p times its link on the rails and draws p times its rail current from its link.
    const stage = (n: number, link: string) => [
      `bs${n} a${n} b${n} v=v(p)*v(${link})`,
      `bl${n} ${link} 0 i=-v(p)*i(bs${n})`,
    ];
    const circuit = [
      'vp p 0 pulse(-1 1 0 1u 1u 57u 116u)',
      'vh link1 0 17',
      ...stage(1, 'link1'),
      ...stage(2, 'link2'),
      'ra a1 a2 0.5',
      'rb b1 b2 0.5',
      'rg b1 0 1meg',
      // A decoder: rectified, it draws the same 1 A whichever rail is up.
      'bd a2 b2 i=v(p)*1',
      'c2 link2 0 2.2m ic=15',
      'v2 s 0 15',
      'r2 s d 0.05',
      'd2 d link2 nearly',
      NEARLY_IDEAL,
    ];
    const course = { step: 2e-6, stop: 16e-3, fromInitial: true, options: LOOSE };
    const found = measure(circuit, course, {
      supply: 'AVG i(vh) FROM=12m TO=15.944m',
      link: 'AVG v(link2) FROM=12m TO=15.944m',
    });
    const { takeOver, link } = pushAt({
      higherVolts: 17,
      lowerVolts: 15,
      ohms: 1,
      load: 1,
      ownUse: 0,
      linkFarads: 2.2e-3,
    });
    near(-amps(found, 'supply') / takeOver, 1, 0.02);
    near(amps(found, 'link') / link, 1, 0.02);
  });
});

describe.skipIf(!hasNgspice)('what closes the loop, as ngspice sees it', () => {
  const VOLTS = { near: 17, far: 15 } as const;
  const OHMS = 1;
  const cases = (['in-phase', 'reversed'] as const).flatMap((phase) =>
    (['floating', 'joined-negatives', 'common-rail'] as const).flatMap((reference) =>
      (['one', 'both'] as const).flatMap((gapped) =>
        (['none', 'one', 'both'] as const).map((bridged) => ({ phase, reference, gapped, bridged })),
      ),
    ),
  );

  /** One half of a bit: rail A of the near side up or down. Each stage is its link and the two switches that are closed. */
  function half(i: number, input: Omit<LoopInput, 'nearVolts' | 'farVolts' | 'ohms'>, nearUp: boolean): string[] {
    const n = `${i}${nearUp ? 'u' : 'd'}`;
    const farUp = input.phase === 'in-phase' ? nearUp : !nearUp;
    const stage = (s: 1 | 2, volts: number, up: boolean) => [
      `v${s}_${n} p${s}_${n} m${s}_${n} ${volts}`,
      `va${s}_${n} ${up ? 'p' : 'm'}${s}_${n} a${s}_${n} 0`,
      `vb${s}_${n} ${up ? 'm' : 'p'}${s}_${n} b${s}_${n} 0`,
    ];
    const aJoined = input.bridged !== 'none';
    const bJoined = input.gapped === 'one' || input.bridged === 'both';
    return [
      ...stage(1, VOLTS.near, nearUp),
      ...stage(2, VOLTS.far, farUp),
      ...(aJoined ? [`ra_${n} a1_${n} a2_${n} ${OHMS / 2}`] : []),
      ...(bJoined ? [`rb_${n} b1_${n} b2_${n} ${OHMS / 2}`] : []),
      ...(input.reference === 'joined-negatives' ? [`rn_${n} m1_${n} m2_${n} 1u`] : []),
      ...(input.reference === 'common-rail' ? [`rc_${n} b1_${n} b2_${n} 1u`] : []),
      // Nothing stands alone in the simulator: leaks to its reference that carry nothing to speak of.
      ...['m1', 'm2'].map((node) => `rl${node}_${n} ${node}_${n} 0 10meg`),
    ];
  }

  const sinking = cases.flatMap((input, i) => [...half(i, input, true), ...half(i, input, false)]);

  test('36 combinations: the largest current at the gap, and the share of the time for which it flows', () => {
    const railNodes = cases.flatMap((_, i) =>
      ['u', 'd'].flatMap((h) => [`a1_${i}${h}`, `a2_${i}${h}`, `b1_${i}${h}`, `b2_${i}${h}`]),
    );
    const at = operatingPoint(sinking, railNodes, '.options reltol=1e-9 vntol=1e-12 abstol=1e-14 itl1=500');
    expect(cases).toHaveLength(36);
    for (const [i, input] of cases.entries()) {
      const aJoined = input.bridged !== 'none';
      const bJoined = input.gapped === 'one' || input.bridged === 'both';
      const halves = ['u', 'd'].map((h) => {
        const volts = (rail: string) => amps(at, `${rail}1_${i}${h}`) - amps(at, `${rail}2_${i}${h}`);
        const a = aJoined ? Math.abs(volts('a')) / (OHMS / 2) : 0;
        const b = bJoined ? Math.abs(volts('b')) / (OHMS / 2) : 0;
        return Math.max(a, b);
      });
      const found = crossingLoop({ ...input, nearVolts: VOLTS.near, farVolts: VOLTS.far, ohms: OHMS });
      if (found.kind === 'no-solution') throw new Error(`no answer: ${found.because}`);
      const name = `${input.phase}, ${input.reference}, ${input.gapped} gapped, ${input.bridged} bridged`;
      near(found.amps.to, Math.max(...halves), 1e-3, name);
      near(found.share, halves.filter((one) => one > 1e-4).length / 2, 1e-12, `share: ${name}`);
    }
  });
});

describe.skipIf(!hasNgspice)('after one of two reversed stages has opened, as ngspice sees it', () => {
  test('the other feeds its rails and, over two diodes, its link', () => {
    const side = { volts: 16, trip: 3, tripSeconds: 0.5, load: 0.5, ownUse: 0.1 };
    const found = crossingReversed({ ...side, trip: 2 }, side, 1);
    if (found.kind !== 'reversed') throw new Error('no answer');
    const circuit = [
      'vh h 0 16',
      'rl h rail 1',
      'iload rail 0 0.5',
      `vd rail k ${FLYBACK_DROP}`,
      'dd k link nearly',
      'iown link 0 0.1',
      NEARLY_IDEAL,
    ];
    const at = operatingPoint(circuit, ['i(vh)', 'link'], '.options reltol=1e-6 itl1=2000');
    near(-amps(at, 'i(vh)'), found.afterTrip?.amps ?? Number.NaN, 1e-3);
    near(amps(at, 'link'), found.afterTrip?.linkVolts ?? Number.NaN, 0.01);
  });
});

describe.skipIf(!hasNgspice)('two stages that switch apart, as ngspice sees them', () => {
  test.each([
    [30, 0.5, 2e-6, 5e-6],
    [30, 1, 10e-6, 3e-6],
    [32, 0.5, 2e-6, 1e-6],
  ])('%d V, %d ohm, %d H for %d s: peak, charge and heat within a thousandth', (volts, ohms, henries, seconds) => {
    const found = crossingSkew({ volts, ohms, henries, seconds });
    if (found.kind !== 'skew') throw new Error('no answer');
    const edge = seconds / 1e4;
    const circuit = [
      `v1 a 0 pulse(0 ${volts} 0 ${edge} ${edge} ${seconds - edge} 1)`,
      `rl a b ${ohms}`,
      `ll b 0 ${henries} ic=0`,
      'bheat q 0 v=i(v1)*i(v1)',
      'rq q 0 1',
    ];
    const stop = seconds + 12 * found.timeConstant;
    const course = { step: seconds / 1000, stop, fromInitial: true };
    const got = measure(circuit, course, {
      peak: 'MIN i(v1)',
      charge: `INTEG i(v1) FROM=0 TO=${seconds}`,
      whole: `INTEG i(v1) FROM=0 TO=${stop}`,
      heat: `INTEG v(q) FROM=0 TO=${seconds}`,
      allheat: `INTEG v(q) FROM=0 TO=${stop}`,
    });
    near(-amps(got, 'peak') / found.peak, 1, 1e-3, 'peak');
    near(-amps(got, 'charge') / found.charge, 1, 1e-3, 'charge');
    near(-amps(got, 'whole') / found.wholeCharge, 1, 1e-3, 'whole charge');
    near((amps(got, 'heat') * ohms) / found.energy, 1, 1e-3, 'heat');
    near((amps(got, 'allheat') * ohms) / found.wholeEnergy, 1, 1e-3, 'whole heat');
  });
});

describe.skipIf(!hasNgspice)('readings across a gap, as ngspice measures them', () => {
  const HALF = 58e-6;
  const EDGE = 1e-9;

  /** Both stages as square waves around their own minus, 3 us apart, tied as stated. */
  function netlist({ nearVolts, farVolts, phase, tie, skew = 0 }: GapMeasurement): string[] {
    const [down, up] = phase === 'in-phase' ? [0, 1] : [1, 0];
    const pulse = (delay: number, low: number, high: number) =>
      `pulse(${low} ${high} ${delay} ${EDGE} ${EDGE} ${HALF - EDGE} ${2 * HALF})`;
    return [
      `vp1 u1 0 ${pulse(0, 0, 1)}`,
      `vp2 u2 0 ${pulse(skew, down, up)}`,
      `ba1 a1 0 v=${nearVolts}*v(u1)`,
      `bb1 b1 0 v=${nearVolts}*(1-v(u1))`,
      `ba2 a2 m2 v=${farVolts}*v(u2)`,
      `bb2 b2 m2 v=${farVolts}*(1-v(u2))`,
      tie === 'other-pair' ? 'rt b1 b2 1u' : 'rt m2 0 1u',
      'bsame same 0 v=v(a1,a2)',
      'rsame same 0 1k',
      'bdiag diag 0 v=v(a1,b2)',
      'rdiag diag 0 1k',
      'bsize size 0 v=abs(v(same))',
      'rsize size 0 1k',
      'bdsize dsize 0 v=abs(v(diag))',
      'rdsize dsize 0 1k',
    ];
  }

  const cases = (['in-phase', 'reversed'] as const).flatMap((phase) =>
    (['other-pair', 'joined-negatives'] as const).map((tie) => ({ phase, tie })),
  );
  test.each(cases)('$phase, $tie: r.m.s. and average of same rail and diagonal', ({ phase, tie }) => {
    const input = { nearVolts: 15, farVolts: 14, phase, tie, skew: 3e-6, meter: 'true-rms' } as const;
    const course = { step: 5e-8, stop: 8 * HALF, longest: 5e-8 };
    const window = `FROM=${2 * HALF} TO=${8 * HALF}`;
    const got = measure(netlist(input), course, {
      rsame: `RMS v(same) ${window}`,
      rdiag: `RMS v(diag) ${window}`,
      asame: `AVG v(size) ${window}`,
      adiag: `AVG v(dsize) ${window}`,
    });
    const exact = gapReadings(input);
    const averaged = gapReadings({ ...input, meter: 'averaging' });
    if (exact.kind !== 'readings' || averaged.kind !== 'readings') throw new Error('no readings');
    for (const [name, reading, factor] of [
      ['rsame', exact.sameRail, 1],
      ['rdiag', exact.diagonal, 1],
      ['asame', averaged.sameRail, SINE_FACTOR],
      ['adiag', averaged.diagonal, SINE_FACTOR],
    ] as const) {
      const engine = reading.kind === 'shows' ? reading.volts : Number.NaN;
      near(amps(got, name) * factor, engine, 0.005 * 15, name);
    }
    expect(exact.comparison).toEqual({ kind: phase });
  });
});
