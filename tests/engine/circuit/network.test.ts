import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { impedance } from '../../../src/engine/circuit/impedance.ts';
import { prepare } from '../../../src/engine/circuit/matrix.ts';
import type { Network, Pair } from '../../../src/engine/circuit/parts.ts';
import { near } from '../../near.ts';
import type { Fed, RandomLayout } from '../../networks.ts';
import { draws, randomLayout, ready, resistances, running, supply, wire } from '../../networks.ts';
import { seeded } from '../../seeded.ts';

const refusal = (because: string, ...parts: string[]) => ({ kind: 'no-solution', because, parts });

/** 0.5 ohms inside the supply, then 0.1 ohms to `a` and 0.2 ohms to `b`. */
const LINE: Network = {
  branches: [wire('0', 's', 0.5), wire('s', 'a', 0.1), wire('a', 'b', 0.2)],
  reference: '0',
};

const layouts = fc
  .record({ seed: fc.nat(1e6), stations: fc.integer({ min: 2, max: 40 }) })
  .map(({ seed, stations }) => randomLayout(seeded(seed), stations));

const rails = (place: number): Pair => [`rp${place}`, `rm${place}`];

describe('A line of two wires', () => {
  const ohms = (a: Pair, b?: Pair) => impedance(ready(LINE), a, b);

  test('has the supply and each wire before a train at its end', () => near(ohms(['b', '0']), 0.8, 1e-12));

  test('a train at its end costs a place on the way what lies before that place, and the same the other way round', () => {
    near(ohms(['b', '0'], ['a', '0']), 0.6, 1e-12);
    near(ohms(['a', '0'], ['b', '0']), 0.6, 1e-12);
    near(ohms(['b', '0'], ['a', 'b']), -0.2, 1e-12);
  });

  test('between two places has the wire between them alone, whichever is told first', () => {
    near(ohms(['a', 'b']), 0.2, 1e-12);
    near(ohms(['b', 'a']), 0.2, 1e-12);
    near(ohms(['a', 'b'], ['b', 'a']), -0.2, 1e-12);
    expect(ohms(['a', 'a'])).toBe(0);
  });

  test('is the same whichever way round a wire is told', () => {
    const turned = [wire('s', '0', 0.5), wire('a', 's', 0.1), wire('b', 'a', 0.2)];
    near(impedance(ready({ ...LINE, branches: turned }), ['b', '0']), 0.8, 1e-12);
  });

  test('says so when asked for a place it does not have', () => {
    expect(() => ohms(['c', '0'])).toThrow(RangeError);
    expect(() => ohms(['a', '0'], ['a', 'c'])).toThrow(/no node c/);
  });
});

describe('A hair of wire between long lines', () => {
  test('costs no digits of what a train there sees', () => {
    const hair = 1e-7 / 3;
    const branches = [wire('0', 'a', 50), wire('a', 'b', hair), wire('b', '0', 50)];
    near(impedance(ready({ branches, reference: '0' }), ['a', '0']), (50 * (50 + hair)) / (100 + hair), 1e-11);
  });
});

describe('Any bus with its rails', () => {
  test('a train here costs a place there what a train there costs here', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), fc.nat(), ({ network, stations }, a, b) => {
        const prepared = ready(resistances(network));
        const [here, there] = [rails(a % stations), rails(b % stations)];
        near(impedance(prepared, here, there), impedance(prepared, there, here), 1e-12);
      }),
    );
  });

  test('one ampere drawn anywhere comes from somewhere: currents add up to nothing at every node', () => {
    fc.assert(
      fc.property(layouts, fc.nat(), ({ network, stations }, place) => {
        const parts = resistances(network);
        const prepared = ready(parts);
        const [plus, minus] = rails(place % stations);
        const into = new Map<string, number>();
        const add = (node: string, amps: number) => into.set(node, (into.get(node) ?? 0) + amps);
        add(plus, -1);
        add(minus, 1);
        for (const { from, to, ohms } of parts.branches) {
          // What is lost at `from` more than at `to` drives a current from `to` to `from`.
          const amps = impedance(prepared, [plus, minus], [from, to]) / ohms;
          add(from, amps);
          add(to, -amps);
        }
        for (const [node, amps] of into) near(amps, 0, 1e-9, node);
      }),
    );
  });
});

describe('A thicker wire or one more', () => {
  /** One wire of half its resistance, or a further one between two places of the same conductor. */
  const changed = ({ network, stations }: RandomLayout, at: number, thicker: boolean): Fed => {
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
        const before = ready(resistances(network));
        const after = ready(resistances(changed(layout, at, thicker)));
        for (let place = 0; place < stations; place++) {
          expect(impedance(after, rails(place))).toBeLessThanOrEqual(impedance(before, rails(place)) + 1e-12);
        }
      }),
    );
  });

  test('never makes it worse for all trains together, each counted with its current', () => {
    fc.assert(
      fc.property(layouts, fc.nat(1e6), fc.boolean(), (layout, at, thicker) => {
        const { network, loads } = layout;
        const taken = (one: Fed) => {
          const { across } = running(one, loads);
          return loads.reduce((sum, { plus, minus, amps }) => sum + amps * across([plus, minus]), 0);
        };
        expect(taken(changed(layout, at, thicker))).toBeGreaterThanOrEqual(taken(network) - 1e-11);
      }),
    );
  });

  test('may take from one of several trains what it gives another', () => {
    const branches = [wire('s', 'u', 1), wire('u', 'far', 10), wire('s', 'v', 5)];
    const network: Fed = { branches, sources: [supply(30, 0.1)], reference: '0' };
    const trains = [draws('far', 1), draws('v', 1)];
    const before = running(network, trains);
    const after = running({ ...network, branches: [...branches, wire('u', 'v', 1)] }, trains);
    expect(after.volts('v')).toBeGreaterThan(before.volts('v'));
    expect(after.volts('far')).toBeLessThan(before.volts('far'));
    expect(before.volts('far')).toBeLessThan(before.volts('v'));
  });
});

describe('A wire without resistance', () => {
  const joined: Network = {
    branches: [
      wire('s', 'a', 0),
      wire('a', 'b', 0),
      wire('b', 'c', 0.1),
      wire('c', 'd', 0),
      wire('g', '0', 0),
      wire('g', 's', 0.5),
    ],
    reference: '0',
  };
  const ohms = (a: Pair, b?: Pair) => impedance(ready(joined), a, b);

  test('makes its ends one node', () => {
    near(ohms(['s', '0']), 0.5, 1e-12);
    expect(ohms(['b', '0'])).toBe(ohms(['s', '0']));
    expect(ohms(['s', 'b'])).toBe(0);
    expect(ohms(['d', '0'], ['g', '0'])).toBe(0);
    near(ohms(['d', 'g']), 0.6, 1e-12);
    near(ohms(['d', '0'], ['a', '0']), 0.5, 1e-12);
  });

  test('across a supply leaves no volts to lose there', () => {
    const short = { ...LINE, branches: [...LINE.branches, wire('s', '0', 0)] };
    expect(impedance(ready(short), ['s', '0'])).toBe(0);
    near(impedance(ready(short), ['b', '0']), 0.3, 1e-12);
  });

  test('in a loop, or from a node to itself, is one node all the same', () => {
    const loop = [wire('a', 'x', 0), wire('x', 'y', 0), wire('y', 'a', 0), wire('x', 'z', 0), wire('b', 'b', 0)];
    const looped = ready({ ...LINE, branches: [...LINE.branches, ...loop] });
    near(impedance(looped, ['z', '0']), 0.6, 1e-12);
    near(impedance(looped, ['b', 'y']), 0.2, 1e-12);
  });
});

describe('What carries nothing', () => {
  test('a dead end has its own ohms before a train there, and shows elsewhere what its beginning does', () => {
    const dead = ready({ ...LINE, branches: [...LINE.branches, wire('a', 'c', 1)] });
    near(impedance(dead, ['c', '0']), 1.6, 1e-12);
    near(impedance(dead, ['b', '0'], ['c', '0']), 0.6, 1e-12);
    near(impedance(dead, ['b', '0']), 0.8, 1e-12);
  });

  test('a wire from a node to itself, with resistance', () => {
    near(impedance(ready({ ...LINE, branches: [...LINE.branches, wire('a', 'a', 1)] }), ['b', '0']), 0.8, 1e-12);
  });

  test('a wire between two districts that have no other', () => {
    const other = [wire('x', 'y', 1), { ...wire('x', 'y', 3), id: 'other' }, wire('y', '0', 0.01)];
    const joined = ready({ ...LINE, branches: [...LINE.branches, ...other] });
    near(impedance(joined, ['x', 'y'], ['y', '0']), 0, 1e-12);
    near(impedance(joined, ['x', 'y']), 0.75, 1e-12);
  });
});

describe('What cannot be told', () => {
  const withBranch = (ohms: number) => prepare({ ...LINE, branches: [...LINE.branches, wire('b', 'c', ohms)] });

  test.each([-1, Number.NaN, Infinity, -Infinity, 1e300, 1e-300])('a wire of %d ohms', (ohms) => {
    expect(withBranch(ohms)).toEqual(refusal('bad-ohms', 'b-c'));
  });

  test.each([1e12, 1e-12])('a wire of %d ohms alone is the last that can be', (ohms) => {
    const prepared = prepare({ branches: [wire('a', 'b', ohms)], reference: 'a' });
    if (prepared.kind === 'no-solution') throw new Error(prepared.because);
    near(impedance(prepared, ['a', 'b']) / ohms, 1, 1e-12);
  });

  test('a section connected to nothing, also when it has its own supply', () => {
    const island = { ...LINE, branches: [...LINE.branches, wire('x', 'y', 1), wire('y', 'z', 1)] };
    expect(prepare(island)).toEqual(refusal('unconnected', 'x-y', 'y-z'));
  });

  test('resistances too unlike to compute with', () => {
    const network = { branches: [wire('a', 'b', 1e-6), wire('a', '0', 1e11)], reference: '0' };
    expect(prepare(network)).toEqual(refusal('too-far-apart', 'a-b', 'a-0'));
  });

  test('of many the least and the greatest are named, whichever is told first', () => {
    const branches = [
      wire('b', 'c', 2),
      wire('a', 'b', 1e-6),
      wire('c', 'd', 1),
      wire('d', 'e', 0),
      wire('a', '0', 1e11),
    ];
    expect(prepare({ branches, reference: '0' })).toEqual(refusal('too-far-apart', 'a-b', 'a-0'));
    expect(prepare({ branches: branches.toReversed(), reference: '0' })).toEqual(
      refusal('too-far-apart', 'a-b', 'a-0'),
    );
  });

  test('the same name twice', () => {
    expect(prepare({ ...LINE, branches: [wire('s', 'a', 1), wire('s', 'a', 2)] })).toEqual(refusal('same-id', 's-a'));
  });

  test('a reference that nothing ends at', () => {
    expect(prepare({ ...LINE, reference: 'earth' })).toEqual(refusal('unknown-node', 'earth'));
    expect(prepare({ branches: [], reference: '0' })).toEqual(refusal('unknown-node', '0'));
  });

  test('whatever is thrown at it, no number is NaN', () => {
    const ohms = fc.oneof(fc.double(), fc.double({ min: 0.001, max: 10, noNaN: true }), fc.constant(0));
    const node = fc.constantFrom('0', 's', 'a', 'b', 'c');
    const branches = fc
      .array(fc.record({ from: node, to: node, ohms }), { maxLength: 6 })
      .map((list) => list.map((one, i) => ({ ...one, id: `w${i}` })));
    fc.assert(
      fc.property(branches, fc.nat(), (some, pick) => {
        const prepared = prepare({ branches: some, reference: '0' });
        const drawn = some[pick % some.length];
        if (prepared.kind === 'no-solution' || drawn === undefined) return;
        for (const { from, to } of some) {
          expect(impedance(prepared, [drawn.from, drawn.to], [from, to])).not.toBeNaN();
        }
      }),
      { numRuns: 500 },
    );
  });
});
