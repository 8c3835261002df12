// What is remembered of a layout while it is looked through: which stretches hang together, what each part holds, what parting costs.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Layer } from '../../../src/engine/districts/layer.ts';
import { Near, rowLength, State } from '../../../src/engine/districts/state.ts';

const reach = (slot: number, cost: number, kept = false) => ({ slot, cost, kept });

describe('A stretch that joints lead to from what was taken up', () => {
  // Two joints to a part that has the first and the third open end, one of them not to be cut, and one to the part of the second.
  const looked = () => {
    const near = new Near(4);
    near.look([reach(0, 2), reach(1, 3), reach(2, 4, true)], Int32Array.from([5, 7, 5]));
    return near;
  };

  test('sees each part once, with all joints to it together', () => {
    const near = looked();
    expect([near.count, near.all, [...near.parts.subarray(0, 2)]]).toEqual([2, 0b11, [5, 7]]);
    expect([[...near.costs.subarray(0, 2)], [...near.links.subarray(0, 2)]]).toEqual([
      [6, 3],
      [0b101, 0b010],
    ]);
  });

  test('costs the gaps to all parts that it does not join, and keeps the joints to those that it joins', () => {
    const near = looked();
    expect([0b00, 0b01, 0b10, 0b11].map((joins) => near.parted(joins))).toEqual([9, 3, 6, 0]);
    expect([0b00, 0b01, 0b10, 0b11].map((joins) => near.kept(joins))).toEqual([0, 0b101, 0b010, 0b111]);
  });

  test('must stay with a part where one joint to it may not be cut', () => {
    expect(looked().must).toBe(0b01);
    const near = new Near(3);
    near.look([reach(0, 1), reach(1, 1, true), reach(1, 1)], Int32Array.from([0, 1]));
    expect(near.must).toBe(0b10);
  });

  test('knows nothing of the stretch before it', () => {
    const near = looked();
    near.look([reach(1, 1)], Int32Array.from([5, 7, 5]));
    expect([near.count, near.must, near.all, near.parted(0), near.kept(1), near.parts[0]]).toEqual([1, 0, 1, 1, 1, 7]);
    near.look([], Int32Array.from([0]));
    expect([near.count, near.all, near.parted(0), near.kept(0)]).toEqual([0, 0, 0, 0]);
  });
});

describe('Parts that become one', () => {
  const parts = (fed: readonly number[]) => {
    const state = new State(3);
    for (const [part, one] of fed.entries()) state.hold(part, { traffic: 10 ** part, fixed: 2 * 10 ** part, fed: one });
    const near = new Near(3);
    near.look(
      fed.map((_, slot) => reach(slot, 1)),
      Int32Array.from(fed.keys()),
    );
    return (joins: number, own = -1) => {
      const holding = { traffic: 5000, fixed: 3000, fed: own };
      return state.addTo(holding, near, joins) ? holding : undefined;
    };
  };

  test('hold what they held together with the stretch between them, and nothing of those that stay apart', () => {
    const joined = parts([-1, -1, -1]);
    expect(joined(0b000)).toEqual({ traffic: 5000, fixed: 3000, fed: -1 });
    expect(joined(0b101)).toEqual({ traffic: 5101, fixed: 3202, fed: -1 });
    expect(joined(0b110)).toEqual({ traffic: 5110, fixed: 3220, fed: -1 });
  });

  test('belong to the stage that feeds any of them, be it the stretch itself; never to two', () => {
    const joined = parts([0, -1, 1]);
    expect([0b001, 0b010, 0b011, 0b110, 0b000].map((joins) => joined(joins)?.fed)).toEqual([0, -1, 0, 1, -1]);
    expect([joined(0b101), joined(0b111), joined(0b001, 1), joined(0b100, 0)]).toEqual(Array(4).fill(undefined));
    expect([joined(0b001, 0)?.fed, joined(0b010, 2)?.fed]).toEqual([0, 2]);
  });
});

describe('What is written of it', () => {
  interface Written {
    readonly word: number;
    readonly part: readonly number[];
    readonly holds: readonly (readonly [number, number, number])[];
  }

  function put({ word, part, holds }: Written, layer: Layer, cost: number): void {
    const [row, state] = [new Int32Array(layer.stride), new State((layer.stride - 1) / 4)];
    state.part.set(part);
    for (const [place, [traffic, fixed, fed]] of holds.entries()) state.hold(place, { traffic, fixed, fed });
    state.parts = holds.length;
    state.write(row, word, part.length);
    layer.put(row, cost, 0, 0, 0);
  }

  function told(state: State, layer: Layer, at: number, width: number): Written {
    const word = state.read(layer, at, width);
    const holds = Array.from(
      { length: state.parts },
      (_, place) => [state.traffic[place] ?? 0, state.fixed[place] ?? 0, state.fed[place] ?? 0] as const,
    );
    return { word, part: [...state.part.subarray(0, width)], holds };
  }

  test('reads the same again, at any place of its layer and after any other', () => {
    const wide = 4;
    /** Parts are numbered in the order of the open ends. */
    const written = fc
      .record({
        word: fc.nat(500),
        marks: fc.array(fc.nat(3), { maxLength: wide }),
        holds: fc.array(fc.tuple(fc.nat(999), fc.nat(999), fc.integer({ min: -1, max: 9 })), {
          minLength: wide,
          maxLength: wide,
        }),
      })
      .map(({ word, marks, holds }) => {
        const known = [...new Set(marks)];
        return { word, part: marks.map((mark) => known.indexOf(mark)), holds: holds.slice(0, known.length) };
      });
    fc.assert(
      fc.property(written, written, (first, second) => {
        const layer = new Layer(rowLength(wide));
        const read = new State(wide);
        for (const [at, one] of [first, second].entries()) put(one, layer, at);
        const at = layer.count - 1;
        for (const [place, one] of [[at, second] as const, [0, first] as const])
          expect(told(read, layer, place, one.part.length)).toEqual(one);
      }),
      { numRuns: 60 },
    );
  });

  test('is the same for what looks the same: nothing stays of what a wider one had there', () => {
    const [row, other] = [new Int32Array(rowLength(3)), new Int32Array(rowLength(3))];
    const state = new State(3);
    state.part.set([0, 1, 2]);
    for (const part of [0, 1, 2]) state.hold(part, { traffic: 7, fixed: 8, fed: 9 });
    state.parts = 3;
    state.write(row, 4, 3);
    state.parts = 1;
    state.write(row, 4, 1);
    state.write(other, 4, 1);
    expect([...row]).toEqual([...other]);
    expect([...row]).toEqual([4, 0, 0, 0, 7, 0, 0, 8, 0, 0, 9, 0, 0]);
  });

  test('one part takes over what another held', () => {
    const [from, to] = [new State(3), new State(3)];
    from.hold(2, { traffic: 4, fixed: 5, fed: 6 });
    to.take(1, from, 2);
    expect([to.traffic[1], to.fixed[1], to.fed[1], to.traffic[0]]).toEqual([4, 5, 6, 0]);
  });
});
