// The networks against textbooks and against ngspice. Mehta: V. K. Mehta and R. Mehta, Principles of Power System, chapter 13, as worked in
// the Python Textbook Companions of FOSSEE (chapter13_1); the printed book itself was not seen.
import { describe, expect, test } from 'vitest';
import { impedance } from '../../src/engine/circuit/impedance.ts';
import { allNear, near } from '../near.ts';
import type { Fed, Load, Source } from '../networks.ts';
import { draws, randomLayout, ready, resistances, running, supply, wire } from '../networks.ts';
import { seeded } from '../seeded.ts';
import { hasNgspice, operatingPoint } from './ngspice.ts';

/** Ohms of each section, and amperes at the end of each but the last, which ends at the second feeding point if there is one. */
interface Distributor {
  readonly sections: readonly number[];
  readonly amps: readonly number[];
  readonly from: number;
  readonly to?: number;
}

/**
 * Go and return as one conductor, fed with given volts at its ends: the first and the last section are the inner resistance of what feeds
 * there. Nodes `n1`, `n2` and so on.
 */
function distributor({ sections, amps, from, to }: Distributor) {
  const last = sections.length - 1;
  const inner = sections.slice(1, to === undefined ? undefined : last);
  const sources: Source[] = [supply(from, sections[0] ?? 0, 'n1')];
  if (to !== undefined) sources.push(supply(to, sections[last] ?? 0, `n${last}`));
  const branches = inner.map((ohms, i) => wire(`n${i + 1}`, `n${i + 2}`, ohms));
  const loads = amps.map((one, i) => draws(`n${i + 1}`, one));
  const found = running({ branches, sources, reference: '0' }, loads);
  const inside = inner.map((_, i) => found.branchAmps(`n${i + 1}-n${i + 2}`));
  const first = found.sourceAmps('supply-n1');
  const currents = to === undefined ? [first, ...inside] : [first, ...inside, -found.sourceAmps(`supply-n${last}`)];
  return { volts: amps.map((_, i) => found.volts(`n${i + 1}`)), currents };
}

const scaled = (values: readonly number[], by: number) => values.map((value) => value * by);

/**
 * Evenly spread load in `parts` pieces with half of each piece at either end, on top of single loads by part: exact at the ends of the parts,
 * as the voltage is a parabola there.
 */
function evenly(
  length: number,
  ohmsPerMetre: number,
  ampsPerMetre: number,
  ends: { readonly from: number; readonly to?: number },
  single: Readonly<Record<number, number>> = {},
  parts = 100,
) {
  const piece = length / parts;
  const free = ends.to === undefined;
  const amps = Array.from({ length: free ? parts : parts - 1 }, (_, i) => {
    const whole = i + 1 === parts ? 0.5 : 1;
    return whole * ampsPerMetre * piece + (single[i + 1] ?? 0);
  });
  const { volts, currents } = distributor({ sections: Array(parts).fill(piece * ohmsPerMetre), amps, ...ends });
  const half = (ampsPerMetre * piece) / 2;
  const lowest = Math.min(...volts);
  return {
    at: (metres: number) => volts[Math.round(metres / piece) - 1] ?? Number.NaN,
    lowest,
    lowestAt: (volts.indexOf(lowest) + 1) * piece,
    fromA: (currents[0] ?? Number.NaN) + half,
    fromB: half - (currents.at(-1) ?? Number.NaN),
    volts,
  };
}

describe('A distributor fed at one end', () => {
  test('Mehta 13.1, page 313: 295, 291, 288 and 287.6 V', () => {
    const sections = scaled([500, 500, 600, 400], 0.02 / 1000);
    const { volts } = distributor({ sections, amps: [100, 150, 200, 50], from: 300 });
    allNear(volts, [295, 291, 288, 287.6], 1e-9);
  });

  test('Mehta 13.3, page 315: two trams at 566.4 and 544 V', () => {
    const { volts } = distributor({ sections: scaled([2, 4], 0.28), amps: [40, 20], from: 600 });
    allNear(volts, [566.4, 544], 1e-9);
  });

  // Question of an examination collection (Distribution systems); the arithmetic is our own too.
  test('500 V through 0.08 ohms with 300 A and 0.08 ohms with 200 A: 476 and 460 V', () => {
    allNear(distributor({ sections: [0.08, 0.08], amps: [100, 200], from: 500 }).volts, [476, 460], 1e-9);
  });

  test('Mehta 13.5, page 317: 2 A a metre cost 22.5 V at 150 m and 24 V at the end, half of current times resistance', () => {
    const { at } = evenly(200, 0.6 / 1000, 2, { from: 100 });
    near(100 - at(150), 22.5, 1e-9);
    near(100 - at(200), 24, 1e-9);
    near(100 - at(200), (2 * 200 * 0.6 * 0.2) / 2, 1e-9);
  });

  test('Mehta 13.9, page 319: 244.6 V at 200 m, and 911.25 W lost', () => {
    const { at, volts } = evenly(300, 0.00018, 0.75, { from: 250 }, {}, 90);
    near(at(200), 244.6, 1e-9);
    // What the spread load gets less than it would at the feeding point; Simpson's rule is exact for a parabola.
    const drops = [0, ...volts.map((one) => 250 - one)];
    const weight = (i: number) => (i % 2 === 0 ? 2 : 4);
    const sum = drops.reduce((all, drop, i) => all + drop * (i === drops.length - 1 ? 1 : weight(i)), 0);
    near((0.75 * sum * (300 / 90)) / 3, 911.25, 1e-6);
  });

  test('Mehta 13.19, page 330: spread and single loads together, 370.25 V at 500 m and 361.75 V at the end', () => {
    const { at } = evenly(900, 0.0001, 0.5, { from: 400 }, { 20: 50, 50: 100, 80: 150 }, 90);
    near(at(500), 370.25, 1e-9);
    near(at(900), 361.75, 1e-9);
  });
});

describe('A distributor fed at both ends', () => {
  test('Mehta 13.11, page 322: lowest at 228.875 V, where currents from both sides meet', () => {
    const { volts, currents } = distributor({
      sections: scaled([50, 25, 25, 50, 50], 0.6 / 1000),
      amps: [25, 50, 30, 40],
      from: 230,
      to: 235,
    });
    allNear(currents, [33.33, 8.33, -41.67, -71.67, -111.67], 0.005);
    allNear(currents, [100 / 3, 25 / 3, -125 / 3, -215 / 3, -335 / 3], 1e-9);
    near(Math.min(...volts), 228.875, 1e-9);
    expect(volts.indexOf(Math.min(...volts))).toBe(1);
  });

  test('Mehta 13.12, page 323: 437.5 A and 412.5 A, 14.706 kW lost', () => {
    const sections = scaled([150, 150, 50, 100, 150], 0.02 / 100);
    const { currents } = distributor({ sections, amps: [100, 200, 250, 300], from: 440, to: 430 });
    near(currents[0] ?? 0, 437.5, 1e-9);
    near(currents.at(-1) ?? 0, -412.5, 1e-9);
    const lost = currents.reduce((sum, amps, i) => sum + amps ** 2 * (sections[i] ?? 0), 0);
    near(lost, 14706, 0.5);
  });

  test('Mehta 13.14, page 327: an even load costs 6.25 V in the middle, an eighth of current times resistance', () => {
    const { lowest, lowestAt } = evenly(1000, 0.1 / 1000, 0.5, { from: 220, to: 220 });
    near(lowest, 213.75, 1e-9);
    near(lowestAt, 500, 1e-9);
    near(220 - lowest, (0.5 * 1000 * 0.1) / 8, 1e-9);
  });

  test('Mehta 13.15, page 327: 255 V and 250 V, lowest 246 V at 300 m, 300 A and 200 A', () => {
    const { lowest, lowestAt, fromA, fromB } = evenly(500, 0.2 / 1000, 1, { from: 255, to: 250 });
    near(lowest, 246, 1e-9);
    near(lowestAt, 300, 1e-9);
    near(fromA, 300, 1e-7);
    near(fromB, 200, 1e-7);
  });
});

describe('A worked example that is wrong', () => {
  // Mehta 13.20, page 331: 240 V at both ends, 1000 m, 0.1 milliohms a metre, 0.5 A a metre and four single loads. The worked answer takes the
  // place of the minimum from the single loads alone and holds that the spread load does not move it: 231.76 V at 400 m, 366 A and 454 A.
  /** By part of 4 m. */
  const single = { 50: 120, 100: 60, 175: 100, 225: 40 };
  const { at, lowest, lowestAt, fromA, fromB } = evenly(1000, 1e-4, 0.5, { from: 240, to: 240 }, single, 250);

  test('Mehta 13.20: the minimum is 229.63 V at 472 m, with 416 A and 404 A', () => {
    near(lowest, 229.6304, 1e-9);
    near(lowestAt, 472, 1e-9);
    near(fromA, 416, 1e-7);
    near(fromB, 404, 1e-7);
    expect(Math.abs(at(400) - 231.76)).toBeGreaterThan(1);
  });

  /** Volts at `metres` on the way from an end that gives `amps`, by the law of the loop alone. */
  const walked = (metres: number, amps: number, loads: readonly (readonly [metres: number, amps: number])[]) => {
    const passed = loads.filter(([where]) => where < metres);
    const single = passed.reduce((sum, [where, one]) => sum + one * (metres - where), 0);
    return 240 - 1e-4 * (amps * metres - (0.5 * metres ** 2) / 2 - single);
  };
  const fromLeft = [[200, 120]] as const;
  const fromRight = [
    [100, 40],
    [300, 100],
  ] as const;

  test('its figures give another voltage at the same place from the other side: 231.76 and 226.76 V', () => {
    near(walked(400, 366, fromLeft), 231.76, 1e-9);
    near(walked(600, 454, fromRight), 226.76, 1e-9);
  });

  test('ours give the same voltage from both sides', () => {
    near(walked(400, fromA, fromLeft), at(400), 1e-8);
    near(walked(600, fromB, fromRight), at(400), 1e-8);
  });
});

describe('A ring', () => {
  const ring = (ohms: readonly number[], volts: number, more: readonly [string, string, number][] = []): Fed => {
    const node = (i: number) => (i % ohms.length === 0 ? 'a' : `n${i}`);
    return {
      branches: [
        ...ohms.map((one, i) => wire(node(i), node(i + 1), one)),
        ...more.map(([from, to, one]) => wire(from, to, one)),
      ],
      // Hardly any inner resistance: the books have none.
      sources: [supply(volts, 1e-9, 'a')],
      reference: '0',
    };
  };
  const loads = (amps: readonly number[]) => amps.map((one, i) => draws(`n${i + 1}`, one));

  test('Mehta 13.22, page 334: 86.67, 33.33 and 113.33 A; 232.2 and 233.2 V', () => {
    const found = running(ring([0.09, 0.03, 0.06], 240), loads([120, 80]));
    near(found.branchAmps('a-n1'), 86.67, 0.005);
    near(found.branchAmps('n1-n2'), -33.33, 0.005);
    near(found.branchAmps('n2-a'), -113.33, 0.005);
    near(found.volts('n1'), 232.2, 1e-6);
    near(found.volts('n2'), 233.2, 1e-6);
  });

  test('Mehta 13.23, page 335: 29.04, 19.04, 0.96, 30.96 and 40.96 A', () => {
    const found = running(ring([0.1, 0.05, 0.01, 0.025, 0.075], 220), loads([10, 20, 30, 10]));
    const amps = ['a-n1', 'n1-n2', 'n2-n3', 'n3-n4', 'n4-a'].map((id) => found.branchAmps(id));
    allNear(amps, [29.04, 19.04, -0.96, -30.96, -40.96], 0.005);
  });

  test('Mehta 13.24, page 336: 243.265, 239.903 and 242.735 V; one more wire across the ring lifts all three', () => {
    const ohms = [0.02, 0.018, 0.025, 0.02];
    const volts = (found: ReturnType<typeof running>) => ['n1', 'n2', 'n3'].map((node) => found.volts(node));
    const before = volts(running(ring(ohms, 250), loads([150, 300, 250])));
    allNear(before, [243.265, 239.903, 242.735], 0.001);
    const joined = running(ring(ohms, 250, [['a', 'n2', 0.02]]), loads([150, 300, 250]));
    // The worked answer rounds 0.0206 ohms to 0.02 on the way and so gives the wire 252.4 A: 245.92, 244.97 and 245.11 V.
    allNear(volts(joined), [245.92, 244.97, 245.11], 0.1);
    // Exact: the voltage before over all the resistance the new wire sees (Thevenin's theorem, own derivation).
    const seen = (0.038 * 0.045) / (0.038 + 0.045);
    near(joined.branchAmps('a-n2'), (250 - (before[1] ?? 0)) / (seen + 0.02), 1e-4);
  });

  test('Mehta 13.25, page 338: 9.8 A through the wire across the ring', () => {
    const found = running(ring([0.075, 0.025, 0.01, 0.05, 0.1], 220, [['n1', 'n3', 0.05]]), loads([10, 30, 20, 10]));
    near(found.branchAmps('n1-n3'), 9.8, 0.05);
    near(found.branchAmps('n1-n3') * 0.05, 0.49, 0.005);
  });
});

describe('A train that moves between two substations', () => {
  /** A kilometre of track at either end counts as the inner resistance of what feeds there; a train `at` kilometres from the first. */
  function train(kilometres: number, perKilometre: number, fromVolts: number, toVolts: number, amps: number) {
    const sources = [supply(fromVolts, perKilometre, 'a'), supply(toVolts, perKilometre, 'b')];
    return (at: number) => {
      const ways = [
        wire('a', 'train', (at - 1) * perKilometre),
        wire('train', 'b', (kilometres - 1 - at) * perKilometre),
      ];
      const found = running({ branches: ways, sources, reference: '0' }, [draws('train', amps)]);
      return { volts: found.volts('train'), fromA: found.sourceAmps('supply-a'), fromB: found.sourceAmps('supply-b') };
    };
  }

  /** The volts of a train are a parabola of its place: three places give where it is lowest. */
  function journey(...line: Parameters<typeof train>) {
    const on = train(...line);
    const [left, middle, right] = [2, 3, 4].map((at) => on(at).volts);
    const [a = 0, b = 0, c = 0] = [left, middle, right];
    const at = 3 + (a - c) / (2 * (a - 2 * b + c));
    return { at, ...on(at) };
  }

  test('Mehta 13.13, page 325: lowest at 3.42 km with 170.7 and 129.3 A, which the book rounds on the way', () => {
    const { at, volts, fromA, fromB } = journey(6, 0.04, 600, 590, 300);
    near(at, 3.42, 0.005);
    near(fromA, 170.7, 0.2);
    near(fromB, 129.3, 0.2);
    // Exact: D/2 + (VA - VB)/(2 r I), own derivation.
    near(at, 3 + 10 / (2 * 0.04 * 300), 1e-9);
    near(fromA, 170.833333, 1e-6);
    near(fromB, 129.166667, 1e-6);
    near(volts, 576.652778, 1e-6);
  });

  // A. Chakrabarti et al., A Text Book on Power System Engineering, example 18.2, pages 437-438, as worked in the Scilab Textbook Companions of
  // FOSSEE (3472, CH25/EX25.2), which notes a mistake in the printed solution; the printed figures were not seen. Theirs: 3.69 km, 277, 323 A. Source: chakrabarti-power.
  test('Chakrabarti 18.2, printed wrong: lowest at 3.6875 km with 276.5625 and 323.4375 A', () => {
    const { at, volts, fromA, fromB } = journey(8, 0.04, 575, 590, 600);
    near(at, 3.6875, 1e-9);
    near(fromA, 276.5625, 1e-9);
    near(fromB, 323.4375, 1e-9);
    near(volts, 534.207031, 1e-6);
    // Both ways to the train lose the same, and each station gives what its way bears.
    near(575 - fromA * 0.04 * at, volts, 1e-9);
    near(590 - fromB * 0.04 * (8 - at), volts, 1e-9);
  });
});

describe('Two supplies in parallel', () => {
  const both = (first: readonly [number, number], second: readonly [number, number], ohms?: number): Fed => ({
    branches: ohms === undefined ? [] : [wire('p', '0', ohms)],
    sources: [
      { id: 'first', plus: 'p', minus: '0', volts: first[0], ohms: first[1] },
      { id: 'second', plus: 'p', minus: '0', volts: second[0], ohms: second[1] },
    ],
    reference: '0',
  });

  // A textbook question with its answer (1.069 A, 0.115 A, 94.66 V); the further digits are our own arithmetic.
  test('100 V behind 5 ohms and 95 V behind 3 ohms on 80 ohms: the lower one takes current in', () => {
    const found = running(both([100, 5], [95, 3], 80), []);
    near(found.volts('p'), 94.66, 0.005);
    near(found.volts('p'), 94.656489, 1e-6);
    near(found.sourceAmps('first'), 1.068702, 1e-6);
    near(found.sourceAmps('second'), 0.114504, 1e-6);
  });

  // Textbook question: equivalent 4 V and 0.1333 ohms (Millman's theorem).
  test('3 V behind 0.2 ohms and 6 V behind 0.4 ohms are 4 V behind 0.133 ohms', () => {
    const network = both([3, 0.2], [6, 0.4]);
    near(running(network, []).volts('p'), 4, 1e-12);
    near(impedance(ready(resistances(network)), ['p', '0']), 0.4 / 3, 1e-12);
    near(running(both([3, 0.2], [6, 0.4], 4), []).volts('p'), (4 * 4) / (4 + 0.4 / 3), 1e-12);
  });

  // Textbook question, answers own derivation from (E1 r2 + E2 r1)/(r1 + r2) and r1 r2/(r1 + r2).
  test('1.5 V behind 1 ohm and 2 V behind 2 ohms on 5 ohms', () => {
    const network = both([1.5, 1], [2, 2]);
    near(running(network, []).volts('p'), 5 / 3, 1e-12);
    near(impedance(ready(resistances(network)), ['p', '0']), 2 / 3, 1e-12);
    const found = running(both([1.5, 1], [2, 2], 5), []);
    near(found.volts('p'), 1.47059, 5e-6);
    near(found.branchAmps('p-0'), 0.29412, 5e-6);
    near(found.sourceAmps('first'), 0.02941, 5e-6);
    near(found.sourceAmps('second'), 0.26471, 5e-6);
  });

  // Own derivation: the difference over all the resistance in the loop.
  test('15.2 V and 14.6 V through 0.05, 0.05 and 0.1 ohms: 3 A go round', () => {
    const sources = [supply(15.2, 0.05, 'a'), supply(14.6, 0.05, 'b')];
    const found = running({ branches: [wire('a', 'b', 0.1)], sources, reference: '0' }, []);
    near(found.branchAmps('a-b'), 3, 1e-12);
    near(found.sourceAmps('supply-b'), -3, 1e-12);
  });
});

describe.skipIf(!hasNgspice)('Random layouts by ngspice', () => {
  const nodesOf = ({ branches }: Fed) =>
    [...new Set(branches.flatMap(({ from, to }) => [from, to]))].filter((node) => node !== '0');

  /** The deck, written from the layout and from nothing the engine made of it. */
  const resistors = ({ branches }: Fed) => branches.map(({ from, to, ohms }, i) => `R${i} ${from} ${to} ${ohms}`);
  const behind = ({ plus, minus, volts, ohms }: Source, i: number) => [
    `V${i} e${i} ${minus} ${volts}`,
    `Rs${i} e${i} ${plus} ${ohms}`,
  ];
  const drawn = (loads: readonly Load[]) => loads.map(({ plus, minus, amps }, i) => `I${i} ${plus} ${minus} ${amps}`);

  /** A share of 1e-9, but never finer than 1e-12 V: 15 V alone are rounded to 2e-15 V, and returns may lie within microvolts of 0. */
  const tolerated = (volts: number) => 1e-9 * Math.max(Math.abs(volts), 1e-3);

  const cases = Array.from({ length: 36 }, (_, i) => ({ seed: i + 1, stations: 3 + Math.round((i * 96) / 35) }));

  test.each(cases)('layout $seed of $stations places: every node within 1e-9', ({ seed, stations }) => {
    const { network, loads } = randomLayout(seeded(seed), stations, 1 + (seed % 3));
    const found = running(network, loads);
    const nodes = nodesOf(network);
    expect(nodes.length).toBeLessThanOrEqual(400);
    const deck = [...resistors(network), ...network.sources.flatMap(behind), ...drawn(loads)];
    for (const [node, volts] of operatingPoint(deck, nodes)) {
      near(found.volts(node), volts, tolerated(volts), node);
    }
  });

  test('the largest has nearly 400 nodes', () => {
    expect(nodesOf(randomLayout(seeded(36), 99, 1).network)).toHaveLength(4 * 99);
  });

  const singles = Array.from({ length: 6 }, (_, i) => ({ seed: 300 + i, stations: 4 + 9 * i }));

  test.each(singles)(
    'layout $seed of $stations places: what one ampere alone costs every node',
    ({ seed, stations }) => {
      const { network, loads } = randomLayout(seeded(seed), stations, 1 + (seed % 2));
      const [train] = loads;
      if (train === undefined) throw new Error('no train');
      const parts = resistances(network);
      const prepared = ready(parts);
      const nodes = nodesOf(network);
      // Nothing pushes: a source is its inner resistance, and one ampere is all there is.
      const deck = [...parts.branches.map(({ from, to, ohms }, i) => `R${i} ${from} ${to} ${ohms}`)];
      const volts = operatingPoint([...deck, `I0 ${train.plus} ${train.minus} 1`], nodes);
      for (const [node, lost] of volts) {
        near(impedance(prepared, [train.plus, train.minus], [node, '0']), -lost, tolerated(lost), node);
      }
      near(
        impedance(prepared, [train.plus, train.minus]),
        (volts.get(train.minus) ?? Number.NaN) - (volts.get(train.plus) ?? Number.NaN),
        1e-11,
      );
    },
  );
});
