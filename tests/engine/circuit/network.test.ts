import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Lowest } from '../../../src/engine/circuit/along.ts';
import { impedance, impedanceAlong, lowestOnWay } from '../../../src/engine/circuit/along.ts';
import type { Prepared } from '../../../src/engine/circuit/matrix.ts';
import { prepare } from '../../../src/engine/circuit/matrix.ts';
import type { CurrentLoad, Load, Network, NetworkProblem, Pair } from '../../../src/engine/circuit/parts.ts';
import type { Operating } from '../../../src/engine/circuit/solve.ts';
import { solve } from '../../../src/engine/circuit/solve.ts';
import { near } from '../../near.ts';
import type { RandomLayout } from '../../networks.ts';
import { draws, ladder, randomLayout, supply, wire } from '../../networks.ts';
import { seeded } from '../../seeded.ts';
import { spread } from '../../spread.ts';

function ready(network: Network): Prepared {
  const prepared = prepare(network);
  if (prepared.kind === 'no-solution') throw new Error(`${prepared.because}: ${prepared.parts.join(', ')}`);
  return prepared;
}

function solved<Found extends Operating | Lowest>(found: Found | NetworkProblem): Found {
  if (found.kind === 'no-solution') throw new Error(`${found.because}: ${found.parts.join(', ')}`);
  return found;
}

const running = (network: Network, loads: readonly Load[]) => solved(solve(ready(network), loads));
const refusal = (because: string, ...parts: string[]) => ({ kind: 'no-solution', because, parts });

/** 15 V behind 0.5 ohms, then 0.1 ohms to `a` and 0.2 ohms to `b`. */
const LINE: Network = {
  branches: [wire('s', 'a', 0.1), wire('a', 'b', 0.2)],
  sources: [supply(15, 0.5)],
  reference: '0',
};

const layouts = fc
  .record({ seed: fc.nat(1e6), stations: fc.integer({ min: 2, max: 40 }) })
  .map(({ seed, stations }) => randomLayout(seeded(seed), stations));

const rails = (place: number): Pair => [`rp${place}`, `rm${place}`];

describe('A line of two wires with one train', () => {
  const line = () => bound(running(LINE, [draws('b', 2)]));

  test('loses volts in the supply and in each wire', () => {
    const { volts, across } = line();
    near(volts('s'), 14, 1e-12);
    near(volts('a'), 13.8, 1e-12);
    near(volts('b'), 13.4, 1e-12);
    near(across(['a', 'b']), 0.4, 1e-12);
    expect(volts('0')).toBe(0);
  });

  test('carries the same current everywhere, signed by the direction of the wire', () => {
    const { branchAmps, sourceAmps, loadAmps, residual } = line();
    near(branchAmps('a-b'), 2, 1e-12);
    near(sourceAmps('supply-s'), 2, 1e-12);
    expect(loadAmps('load-b')).toBe(2);
    const turned = running({ ...LINE, branches: [wire('a', 's', 0.1), wire('a', 'b', 0.2)] }, [draws('b', 2)]);
    near(turned.branchAmps('a-s'), -2, 1e-12);
    expect(residual()).toBeLessThan(1e-12);
  });

  test('has 0.8 ohms before the train at its end', () => near(impedance(ready(LINE), ['b', '0']), 0.8, 1e-12));

  test('says so when asked for something it does not have', () => {
    const { volts, branchAmps } = line();
    expect(() => volts('c')).toThrow(/no node c/);
    expect(() => branchAmps('b-c')).toThrow(/no branch b-c/);
    expect(() => impedance(ready(LINE), ['c', '0'])).toThrow(RangeError);
  });
});

function bound(found: Operating) {
  return {
    volts: (node: string) => found.volts(node),
    across: (pair: Pair) => found.across(pair),
    branchAmps: (id: string) => found.branchAmps(id),
    sourceAmps: (id: string) => found.sourceAmps(id),
    loadAmps: (id: string) => found.loadAmps(id),
    residual: () => found.residual,
  };
}

describe('Any bus with its rails', () => {
  test('two sets of trains together lose what each loses alone', () => {
    fc.assert(
      fc.property(layouts, fc.nat(1e6), ({ network, loads, stations }, seed) => {
        const others = randomLayout(seeded(seed), stations).loads.map((load) => ({ ...load, id: `other-${load.id}` }));
        const prepared = ready(network);
        const none = solved(solve(prepared, []));
        const [one, two, both] = [loads, others, [...loads, ...others]].map((some) => solved(solve(prepared, some)));
        for (let place = 0; place < stations; place++) {
          const lost = (some: Operating | undefined) =>
            none.across(rails(place)) - (some?.across(rails(place)) ?? Number.NaN);
          near(lost(both), lost(one) + lost(two), 1e-11);
        }
      }),
    );
  });

  test('a train here costs a place there what a train there costs here', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), fc.nat(), ({ network, stations }, a, b) => {
        const prepared = ready(network);
        const [here, there] = [rails(a % stations), rails(b % stations)];
        near(impedance(prepared, here, there), impedance(prepared, there, here), 1e-12);
      }),
    );
  });

  test('what one ampere costs is what the impedance says', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), fc.nat(), ({ network, stations }, a, b) => {
        const prepared = ready(network);
        const [here, there] = [rails(a % stations), rails(b % stations)];
        const train: CurrentLoad = { id: 'train', plus: here[0], minus: here[1], amps: 1 };
        const lost = solved(solve(prepared, [])).across(there) - solved(solve(prepared, [train])).across(there);
        near(impedance(prepared, here, there), lost, 1e-12);
      }),
    );
  });

  test('currents add up to nothing at every node', () => {
    fc.assert(
      fc.property(layouts, ({ network, loads }) => {
        const found = running(network, loads);
        expect(found.residual).toBeLessThan(1e-9);
        const into = new Map<string, number>();
        const add = (node: string, amps: number) => into.set(node, (into.get(node) ?? 0) + amps);
        for (const { id, from, to } of network.branches) {
          add(from, -found.branchAmps(id));
          add(to, found.branchAmps(id));
        }
        for (const { id, plus, minus } of [...network.sources, ...loads]) {
          const amps = id.startsWith('train') ? -found.loadAmps(id) : found.sourceAmps(id);
          add(plus, amps);
          add(minus, -amps);
        }
        for (const [node, amps] of into) near(amps, 0, 1e-9, node);
      }),
    );
  });
});

describe('A thicker wire or one more', () => {
  /** One wire of half its resistance, or a further one between two places of the same conductor. */
  const changed = ({ network, stations }: RandomLayout, at: number, thicker: boolean): Network => {
    const index = at % network.branches.length;
    const branches = network.branches.map((branch, i) =>
      thicker && i === index ? { ...branch, ohms: branch.ohms / 2 } : branch,
    );
    const from = branches[index]?.from ?? '0';
    const rail = /^.p/.test(from) ? 'rp' : 'rm';
    const more = { id: 'more', from, to: `${rail}${at % stations}`, ohms: 0.02 };
    return { ...network, branches: thicker ? branches : [...branches, more] };
  };

  test('never makes it worse for a train alone on the layout, wherever it stands', () => {
    fc.assert(
      fc.property(layouts, fc.nat(1e6), fc.boolean(), (layout, at, thicker) => {
        const { network, stations } = layout;
        const before = ready(network);
        const after = ready(changed(layout, at, thicker));
        for (let place = 0; place < stations; place++) {
          expect(impedance(after, rails(place))).toBeLessThanOrEqual(impedance(before, rails(place)) + 1e-12);
        }
        const lowest = (prepared: Prepared) =>
          Math.min(
            ...Array.from({ length: stations }, (_, place) => {
              const train: CurrentLoad = { id: 'train', plus: `rp${place}`, minus: `rm${place}`, amps: 0.5 };
              return solved(solve(prepared, [train])).across(rails(place));
            }),
          );
        expect(lowest(after)).toBeGreaterThanOrEqual(lowest(before) - 1e-12);
      }),
    );
  });

  test('never makes it worse for all trains together, each counted with its current', () => {
    fc.assert(
      fc.property(layouts, fc.nat(1e6), fc.boolean(), (layout, at, thicker) => {
        const { network, loads } = layout;
        const taken = (one: Network) => {
          const found = running(one, loads);
          return loads.reduce((sum, { plus, minus, amps }) => sum + amps * found.across([plus, minus]), 0);
        };
        expect(taken(changed(layout, at, thicker))).toBeGreaterThanOrEqual(taken(network) - 1e-11);
      }),
    );
  });

  test('may take from one of several trains what it gives another', () => {
    const branches = [wire('s', 'u', 1), wire('u', 'far', 10), wire('s', 'v', 5)];
    const network: Network = { branches, sources: [supply(30, 0.1)], reference: '0' };
    const trains = [draws('far', 1), draws('v', 1)];
    const before = running(network, trains);
    const after = running({ ...network, branches: [...branches, wire('u', 'v', 1)] }, trains);
    expect(after.volts('v')).toBeGreaterThan(before.volts('v'));
    expect(after.volts('far')).toBeLessThan(before.volts('far'));
    expect(before.volts('far')).toBeLessThan(before.volts('v'));
  });
});

describe('A train within a section', () => {
  /** The same network with the section cut at `t`. */
  const cutAt = (network: Network, from: number, to: number, t: number): Network => ({
    ...network,
    branches: network.branches.flatMap((branch) => {
      const rail = ['rp', 'rm'].find((name) => branch.id === `${name}${from}-${name}${to}`);
      if (rail === undefined) return [branch];
      const { ohms } = branch;
      return [wire(branch.from, `${rail}-cut`, t * ohms), wire(`${rail}-cut`, branch.to, (1 - t) * ohms)];
    }),
  });
  const within = spread(0.001, 0.999);

  test('sees what a node of its own would see', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), within, ({ network, sections }, pick, t) => {
        const section = sections[pick % sections.length];
        fc.pre(section !== undefined);
        const { from, to, ohms } = section;
        const along = impedanceAlong(ready(network), { from: rails(from), to: rails(to), ohms });
        const cut = ready(cutAt(network, from, to, t));
        near(along.at(t), impedance(cut, ['rp-cut', 'rm-cut']), 1e-12);
        near(along.at(0), along.start, 1e-15);
        near(along.at(1), along.end, 1e-15);
      }),
    );
  });

  test('sees most at the place that is called the worst', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), within, ({ network, sections }, pick, t) => {
        const section = sections[pick % sections.length];
        fc.pre(section !== undefined);
        const ends = { from: rails(section.from), to: rails(section.to), ohms: section.ohms };
        const { worst, at } = impedanceAlong(ready(network), ends);
        expect(worst.ohms).toBeGreaterThanOrEqual(Math.max(at(t), at(0), at(1)) - 1e-15);
        expect(at(worst.t)).toBe(worst.ohms);
      }),
    );
  });

  test('finds the lowest voltage where the closed form says, the others standing where they are', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), within, ({ network, loads, sections }, pick, t) => {
        const section = sections[pick % sections.length];
        fc.pre(section !== undefined);
        const { from, to, ohms } = section;
        const ends = { from: rails(from), to: rails(to), ohms };
        const lowest = solved(lowestOnWay(ready(network), [ends], 0.7, loads));
        const train: CurrentLoad = { id: 'itself', plus: 'rp-cut', minus: 'rm-cut', amps: 0.7 };
        const found = running(cutAt(network, from, to, t), [...loads, train]);
        near(lowest.at(t), found.across(['rp-cut', 'rm-cut']), 1e-11);
        expect(lowest.volts).toBeLessThanOrEqual(lowest.at(t) + 1e-12);
        expect(lowest.at(lowest.t)).toBe(lowest.volts);
      }),
    );
  });

  test('finds the lowest of all sections', () => {
    fc.assert(
      fc.property(layouts, ({ network, loads, sections }) => {
        fc.pre(sections.length > 0);
        const prepared = ready(network);
        const ways = sections.map(({ from, to, ohms }) => ({ from: rails(from), to: rails(to), ohms }));
        const each = ways.map((way) => solved(lowestOnWay(prepared, [way], 0.7, loads)).volts);
        const lowest = solved(lowestOnWay(prepared, ways, 0.7, loads));
        expect(lowest.volts).toBe(Math.min(...each));
        expect(each[lowest.section]).toBe(lowest.volts);
      }),
    );
  });

  test('on no section at all finds nothing', () => {
    expect(lowestOnWay(ready(LINE), [], 1)).toEqual(refusal('no-section'));
  });

  test('that draws nothing finds what the others leave; one that draws no such current is refused', () => {
    const far = { from: ['a', '0'], to: ['b', '0'], ohms: 0.2 } as const;
    const lowest = solved(lowestOnWay(ready(LINE), [far], 0, [draws('b', 1)]));
    near(lowest.volts, 15 - 0.8, 1e-12);
    expect([lowest.t, lowest.drop]).toEqual([1, 0]);
    for (const amps of [-1, Infinity, Number.NaN])
      expect(lowestOnWay(ready(LINE), [far], amps)).toEqual(refusal('bad-load'));
  });

  const twoEnds: Network = {
    branches: [wire('s', 'e', 1)],
    sources: [supply(15, 0.1), supply(15, 0.1, 'e')],
    reference: '0',
  };

  test('fed from both ends it has it worst in the middle', () => {
    const { worst } = impedanceAlong(ready(twoEnds), { from: ['s', '0'], to: ['e', '0'], ohms: 1 });
    near(worst.t, 0.5, 1e-12);
    near(worst.ohms, 0.3, 1e-12);
  });

  test('fed from one end it has it worst at the far end', () => {
    const prepared = ready({ ...twoEnds, sources: [supply(15, 0.1)] });
    const along = impedanceAlong(prepared, { from: ['s', '0'], to: ['e', '0'], ohms: 1 });
    expect(along.worst.t).toBe(1);
    near(along.worst.ohms, 1.1, 1e-12);
  });

  test('names the supply that would pass its limit on the way', () => {
    const limited = { ...twoEnds, sources: [supply(15, 0.1), supply(15, 0.1, 'e', { limit: 1.5 })] };
    const ends = { from: ['s', '0'], to: ['e', '0'], ohms: 1 } as const;
    expect(lowestOnWay(ready(limited), [ends], 2)).toEqual(refusal('limit-reached', 'supply-e'));
    expect(lowestOnWay(ready(limited), [ends], 1)).toMatchObject({ kind: 'lowest' });
    expect(lowestOnWay(ready(limited), [ends], Number.NaN)).toEqual(refusal('bad-load'));
    expect(lowestOnWay(ready(limited), [ends], 1, [draws('x', 1)])).toEqual(refusal('unknown-node', 'load-x', 'x'));
  });
});

describe('A supply with a current limit', () => {
  const two = (limit: number): Network => ({
    branches: [wire('s', 'e', 0.2)],
    sources: [supply(15, 0.1, 's', { limit }), supply(14.8, 0.1, 'e')],
    reference: '0',
  });

  test('gives its limit and leaves the rest to the other', () => {
    const found = running(two(2), [draws('s', 6)]);
    expect(found.limited).toEqual(['supply-s']);
    expect(found.sourceAmps('supply-s')).toBe(2);
    near(found.sourceAmps('supply-e'), 4, 1e-12);
    near(found.volts('s'), 14.8 - 0.4 - 0.8, 1e-12);
    expect(found.residual).toBeLessThan(1e-12);
  });

  test('counts for nothing while it is not reached', () => {
    const found = running(two(100), [draws('s', 6)]);
    expect(found.limited).toEqual([]);
    near(
      found.volts('s'),
      running({ ...two(100), sources: two(100).sources.map(free) }, [draws('s', 6)]).volts('s'),
      1e-15,
    );
  });

  test('alone cannot give more: there is no operating point', () => {
    const alone = { ...LINE, sources: [supply(15, 0.5, 's', { limit: 3 })] };
    expect(solve(ready(alone), [draws('b', 3.5)])).toEqual(refusal('no-operating-point', 'load-b', 'supply-s'));
    near(running(alone, [draws('b', 3)]).volts('b'), 15 - 3 * 0.8, 1e-12);
  });

  test('at its limit still feeds a train of constant power next to another supply', () => {
    const found = running(two(1), [{ id: 'train', plus: 's', minus: '0', watts: 40 }]);
    const volts = found.volts('s');
    near(found.loadAmps('train') * volts, 40, 1e-9);
    expect(found.limited).toEqual(['supply-s']);
    near(found.sourceAmps('supply-s') + found.sourceAmps('supply-e'), found.loadAmps('train'), 1e-12);
  });

  test('two in series through a reversed train share the lower limit', () => {
    // Both stages push the same way round a loop: 15 V + 15 V over 0.5 ohms would be 60 A.
    const network: Network = {
      branches: [wire('p', 'q', 0.3)],
      sources: [
        { id: 'first', plus: 'p', minus: '0', volts: 15, ohms: 0.1, limit: 5 },
        { id: 'second', plus: '0', minus: 'q', volts: 15, ohms: 0.1, limit: 3 },
      ],
      reference: '0',
    };
    const found = running(network, []);
    expect(found.limited).toEqual(['second']);
    near(found.branchAmps('p-q'), 3, 1e-12);
  });

  test('every source keeps its limit, or stands at it, or there is no operating point', () => {
    fc.assert(
      fc.property(fc.nat(1e6), fc.integer({ min: 2, max: 5 }), spread(0.1, 4), (seed, supplies, limit) => {
        const { network, loads } = randomLayout(seeded(seed), 12, supplies);
        const sources = network.sources.map((source, i) => ({ ...source, limit: limit * (1 + i / 3) }));
        const found = solve(ready({ ...network, sources }), loads);
        const drawn = loads.reduce((sum, { amps }) => sum + amps, 0);
        const able = sources.reduce((sum, source) => sum + source.limit, 0);
        if (drawn > able * 1.000001) {
          expect(found).toMatchObject({ kind: 'no-solution', because: 'no-operating-point' });
          return;
        }
        const running = solved(found);
        expect(running.residual).toBeLessThan(1e-9);
        for (const source of sources) {
          const amps = running.sourceAmps(source.id);
          expect(amps).toBeLessThanOrEqual(source.limit * (1 + 1e-9));
          const wouldGive = (source.volts - running.across([source.plus, source.minus])) / source.ohms;
          near(Math.min(wouldGive, source.limit), amps, 1e-4 * source.limit);
        }
      }),
    );
  });
});

function free<One extends { readonly limit?: number }>({ limit: _, ...rest }: One) {
  return rest;
}

describe('A wire without resistance', () => {
  const joined: Network = {
    branches: [wire('s', 'a', 0), wire('a', 'b', 0), wire('b', 'c', 0.1), wire('c', 'd', 0), wire('g', '0', 0)],
    sources: [{ ...supply(15, 0.5), minus: 'g' }],
    reference: '0',
  };
  const solvedOne = () => running(joined, [draws('b', 1), draws('d', 2, 'g')]);

  test('makes its ends one node', () => {
    const found = solvedOne();
    near(found.volts('s'), 13.5, 1e-12);
    expect(found.volts('b')).toBe(found.volts('s'));
    expect(found.volts('g')).toBe(0);
    near(found.volts('d'), 13.3, 1e-12);
  });

  test('has a current all the same', () => {
    const found = solvedOne();
    near(found.branchAmps('s-a'), 3, 1e-12);
    near(found.branchAmps('a-b'), 3, 1e-12);
    near(found.branchAmps('b-c'), 2, 1e-12);
    near(found.branchAmps('c-d'), 2, 1e-12);
    // The supply takes 3 A back at g, the load brings 2 A there: 1 A comes from the reference.
    near(found.branchAmps('g-0'), -1, 1e-12);
  });

  test('across a supply is a short circuit that its inner resistance bears', () => {
    const short = { ...LINE, branches: [...LINE.branches, wire('s', '0', 0)] };
    near(running(short, []).sourceAmps('supply-s'), 30, 1e-12);
    near(running(short, []).branchAmps('s-0'), 30, 1e-12);
  });
});

describe('What cannot be solved', () => {
  const withBranch = (ohms: number) => prepare({ ...LINE, branches: [...LINE.branches, wire('b', 'c', ohms)] });

  test.each([-1, Number.NaN, Infinity, -Infinity, 1e300, 1e-300])('a wire of %d ohms', (ohms) => {
    expect(withBranch(ohms)).toEqual(refusal('bad-ohms', 'b-c'));
  });

  test.each([0, -0.1, Number.NaN, Infinity])('a supply with %d ohms inside', (ohms) => {
    expect(prepare({ ...LINE, sources: [supply(15, ohms)] })).toEqual(refusal('bad-ohms', 'supply-s'));
  });

  test.each([Number.NaN, Infinity, -1e300])('a supply of %d V', (volts) => {
    expect(prepare({ ...LINE, sources: [supply(volts, 0.1)] })).toEqual(refusal('bad-volts', 'supply-s'));
  });

  test.each([0, -1, Number.NaN])('a limit of %d A', (limit) => {
    expect(prepare({ ...LINE, sources: [supply(15, 0.1, 's', { limit })] })).toEqual(refusal('bad-limit', 'supply-s'));
  });

  test('no source', () => expect(prepare({ ...LINE, sources: [] })).toEqual(refusal('no-source')));

  test('a section connected to nothing', () => {
    const island = { ...LINE, branches: [...LINE.branches, wire('x', 'y', 1), wire('y', 'z', 1)] };
    expect(prepare(island)).toEqual(refusal('unconnected', 'x-y', 'y-z'));
  });

  test('a second district that shares nothing with the first', () => {
    const other = { id: 'other', plus: 'x', minus: 'y', volts: 15, ohms: 0.1 };
    const apart = { ...LINE, branches: [...LINE.branches, wire('x', 'y', 1)], sources: [...LINE.sources, other] };
    expect(prepare(apart)).toEqual(refusal('unconnected', 'x-y', 'other'));
    const joined = { ...apart, branches: [...apart.branches, wire('y', '0', 0.01)] };
    near(running(joined, []).branchAmps('y-0'), 0, 1e-12);
  });

  test('a dead end is no fault: it carries nothing', () => {
    const found = running({ ...LINE, branches: [...LINE.branches, wire('b', 'c', 1)] }, [draws('b', 1)]);
    near(found.branchAmps('b-c'), 0, 1e-12);
    near(found.volts('c'), found.volts('b'), 1e-12);
  });

  test('a loop of no resistance', () => {
    const loop = [wire('a', 'x', 0), wire('x', 'y', 0), wire('y', 'a', 0), wire('x', 'z', 0)];
    expect(prepare({ ...LINE, branches: [...LINE.branches, ...loop] })).toEqual(
      refusal('zero-loop', 'a-x', 'x-y', 'y-a'),
    );
    const ideal = { ...LINE, branches: [...LINE.branches, wire('s', '0', 0)], sources: [supply(15, 0)] };
    expect(prepare(ideal)).toEqual(refusal('zero-loop', 's-0', 'supply-s'));
  });

  test('a wire from a node to itself without resistance; with resistance it carries nothing', () => {
    expect(prepare({ ...LINE, branches: [...LINE.branches, wire('a', 'a', 0)] })).toEqual(refusal('zero-loop', 'a-a'));
    const found = running({ ...LINE, branches: [...LINE.branches, wire('a', 'a', 1)] }, [draws('b', 1)]);
    expect(found.branchAmps('a-a')).toBe(0);
  });

  test('resistances too unlike to compute with', () => {
    const network = { branches: [wire('a', 'b', 1e-6)], sources: [supply(15, 1e11, 'a')], reference: '0' };
    expect(prepare(network)).toEqual(refusal('too-far-apart', 'a-b', 'supply-a'));
  });

  test('of many the least and the greatest are named, whichever is told first', () => {
    const branches = [wire('b', 'c', 2), wire('a', 'b', 1e-6), wire('c', 'd', 1), wire('d', 'e', 0)];
    const network = { branches, sources: [supply(15, 1e11, 'a')], reference: '0' };
    expect(prepare(network)).toEqual(refusal('too-far-apart', 'a-b', 'supply-a'));
    expect(prepare({ ...network, branches: branches.toReversed() })).toEqual(
      refusal('too-far-apart', 'a-b', 'supply-a'),
    );
  });

  test('the same name twice', () => {
    expect(prepare({ ...LINE, branches: [wire('s', 'a', 1), wire('s', 'a', 2)] })).toEqual(refusal('same-id', 's-a'));
    expect(solve(ready(LINE), [draws('a', 1), draws('a', 2)])).toEqual(refusal('same-id', 'load-a'));
  });

  test('a reference that nothing ends at', () => {
    expect(prepare({ ...LINE, reference: 'earth' })).toEqual(refusal('unknown-node', 'earth'));
  });

  test('a load at a node that nothing ends at', () => {
    expect(solve(ready(LINE), [draws('c', 1)])).toEqual(refusal('unknown-node', 'load-c', 'c'));
    expect(solve(ready(LINE), [draws('a', 1, 'c')])).toEqual(refusal('unknown-node', 'load-a', 'c'));
  });

  test.each([Number.NaN, Infinity, 1e300])('a load of %d A', (amps) => {
    expect(solve(ready(LINE), [draws('a', 1), draws('b', amps)])).toEqual(refusal('bad-load', 'load-b'));
  });

  test.each([Number.NaN, Infinity, -1])('a load of %d W', (watts) => {
    const load = { id: 'train', plus: 'b', minus: '0', watts };
    expect(solve(ready(LINE), [load])).toEqual(refusal('bad-load', 'train'));
  });

  test('a constant current that would take the rails below 0 V', () => {
    expect(solve(ready(LINE), [draws('a', 1), draws('b', 20)])).toEqual(refusal('no-operating-point', 'load-b'));
    expect(solve(ready(LINE), [draws('b', 18.8)])).toEqual(refusal('no-operating-point', 'load-b'));
    near(running(LINE, [draws('b', 18.7)]).volts('b'), 15 - 18.7 * 0.8, 1e-12);
  });

  test('a constant power beyond V squared over four times the resistance, naming the train that sank furthest', () => {
    const train = (watts: number): Load => ({ id: 'train', plus: 'b', minus: '0', watts });
    const most = 15 ** 2 / (4 * 0.8);
    near(running(LINE, [train(most * 0.999999)]).volts('b'), 7.5, 0.01);
    expect(solve(ready(LINE), [train(most * 1.000001)])).toEqual(refusal('no-operating-point', 'train'));
    expect(solve(ready(LINE), [draws('a', 0.5), train(1000)])).toEqual(refusal('no-operating-point', 'train'));
  });

  test('of several trains of constant power the one at the end of the line sank furthest, whichever is told first', () => {
    const at = (plus: string, watts: number): Load => ({ id: `train-${plus}`, plus, minus: '0', watts });
    const trains = [at('s', 40), at('a', 40), at('b', 40)];
    expect(solve(ready(LINE), trains)).toEqual(refusal('no-operating-point', 'train-b'));
    expect(solve(ready(LINE), trains.toReversed())).toEqual(refusal('no-operating-point', 'train-b'));
  });

  test('a train of constant power between two nodes without a voltage', () => {
    expect(solve(ready(LINE), [{ id: 'train', plus: 'a', minus: 's', watts: 1 }])).toEqual(
      refusal('no-operating-point', 'train'),
    );
  });

  // 30 V round 3.1 ohms: half a volt at the train between, which the 2 V and more that the other loses in its supply turn over.
  test('a train between two supplies that push against each other, whose volts another turns over', () => {
    const network: Network = {
      branches: [wire('p', 'm', 1), wire('m', 'q', 1.1)],
      sources: [supply(15, 0.5, 'p'), { ...supply(15, 0.5, '0'), minus: 'q' }],
      reference: '0',
    };
    const busy: Load = { id: 'busy', plus: 'p', minus: '0', watts: 40 };
    const between: Load = { id: 'between', plus: 'm', minus: '0', watts: 0.001 };
    near(running(network, [between]).volts('m'), 15 - (1.5 * 30) / 3.1, 0.002);
    expect(running(network, [busy]).volts('m')).toBeLessThan(0);
    expect(solve(ready(network), [busy, between])).toEqual(refusal('no-operating-point', 'between'));
  });

  test('whatever is thrown at it, no number is NaN', () => {
    const ohms = fc.oneof(fc.double(), fc.double({ min: 0.001, max: 10, noNaN: true }), fc.constant(0));
    const node = fc.constantFrom('0', 's', 'a', 'b', 'c');
    const branches = fc
      .array(fc.record({ from: node, to: node, ohms }), { maxLength: 6 })
      .map((list) => list.map((one, i) => ({ ...one, id: `w${i}` })));
    const load = fc.oneof(
      fc.record({ id: fc.uuid(), plus: node, minus: node, amps: fc.double() }),
      fc.record({ id: fc.uuid(), plus: node, minus: node, watts: fc.double({ min: -1, max: 100 }) }),
    );
    fc.assert(
      fc.property(branches, fc.array(load, { maxLength: 3 }), fc.double(), (some, loads, limit) => {
        const network = { branches: some, sources: [supply(15, 0.5, 's', { limit })], reference: '0' };
        const prepared = prepare(network);
        const found = prepared.kind === 'prepared' ? solve(prepared, loads) : prepared;
        if (found.kind === 'no-solution') return;
        expect(found.residual).not.toBeNaN();
        for (const { id, from, to } of some) {
          expect(found.branchAmps(id)).not.toBeNaN();
          expect(found.across([from, to])).not.toBeNaN();
        }
        for (const { id } of loads) expect(found.loadAmps(id)).not.toBeNaN();
      }),
      { numRuns: 500 },
    );
  });
});

describe('Trains of constant power', () => {
  const network: Network = { branches: ladder([0.1, 0.2, 0.1]), sources: [supply(15, 0.2, 'n0')], reference: '0' };
  const train = (place: number, watts: number): Load => ({ id: `t${place}`, plus: `n${place}`, minus: '0', watts });

  test('draw their power, and at most volts without load', () => {
    fc.assert(
      fc.property(fc.array(spread(0, 15), { minLength: 3, maxLength: 3 }), (watts) => {
        const found = running(
          network,
          watts.map((one, i) => train(i + 1, one)),
        );
        for (const [i, one] of watts.entries()) {
          const volts = found.volts(`n${i + 1}`);
          near(found.loadAmps(`t${i + 1}`) * volts, one, 1e-9);
          expect(volts).toBeGreaterThan(7.5);
          expect(volts).toBeLessThanOrEqual(15 + 1e-12);
        }
        expect(found.residual).toBeLessThan(1e-9);
      }),
    );
  });

  test('may stand either way round: rails carry both polarities', () => {
    const turned: Load = { id: 't', plus: '0', minus: 'n3', watts: 10 };
    near(running(network, [turned]).volts('n3'), running(network, [train(3, 10)]).volts('n3'), 1e-12);
  });
});
