import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cellsOf, type Tracks } from '../../../src/wizards/sheet-drawing/cells.ts';
import { linesOf, linesOfAll, widthOf } from '../../../src/wizards/sheet-drawing/labels.ts';
import { type Box, type Laid, type LaidJoint, layOut, STEP } from '../../../src/wizards/sheet-drawing/laid.ts';
import { anyTracks, club, DOUBLE, joined, LOOP, OVAL, PASSING, tracks, YARD } from './tracks.ts';

const named = (of: Tracks): Laid => layOut(of, ({ id, name }) => name ?? id);

/** Half the width of the track as it is drawn, pixels. */
const HALF_TRACK = 5;

interface Rectangle {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const boxes = ({ sections }: Laid): readonly Rectangle[] =>
  sections.flatMap(({ left, right, y, label }) => [
    { left, right, top: y - HALF_TRACK, bottom: y + HALF_TRACK },
    boxOf(label),
  ]);

const meet = (one: Rectangle, other: Rectangle): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;

/** Whether a piece of track, as wide as it is drawn, lies on a rectangle; looked at every two pixels. */
function liesOn(joint: LaidJoint, box: Rectangle): boolean {
  return [joint.from, joint.to].some((path) =>
    path.some((from, i) => {
      const to = path[i + 1];
      if (to === undefined) return false;
      const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 2);
      return Array.from({ length: steps + 1 }, (_, n) => n / steps).some((part) => {
        const [x, y] = [from.x + part * (to.x - from.x), from.y + part * (to.y - from.y)];
        const across = Math.max(box.left - x, 0, x - box.right);
        const along = Math.max(box.top - y, 0, y - box.bottom);
        return Math.hypot(across, along) < HALF_TRACK;
      });
    }),
  );
}

/** Whatever is wrong with a picture, in words. */
const faults = (of: Tracks, laid: Laid): readonly string[] => [
  ...boxFaults(laid),
  ...laid.joints.flatMap((joint) => jointFaults(joint, of, laid)),
  ...laid.joints.flatMap((one, i) =>
    laid.joints
      .slice(i + 1)
      .filter((other) => Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y) < 0.7 * STEP)
      .map((other) => `${one.id} lies on ${other.id}`),
  ),
];

function boxFaults(laid: Laid): readonly string[] {
  const all = boxes(laid);
  return all.flatMap((one, i) => {
    const whole = one.left >= 0 && one.top >= 0 && one.right <= laid.width && one.bottom <= laid.height;
    const covered = all.slice(i + 1).filter((other) => meet(one, other));
    return [...(whole ? [] : [`box ${i} is cut off`]), ...covered.map(() => `something lies on box ${i}`)];
  });
}

function jointFaults(joint: LaidJoint, of: Tracks, laid: Laid): readonly string[] {
  const { from, to } = of.joints.find(({ id }) => id === joint.id) ?? { from: '', to: '' };
  const sides = [
    [from, joint.from, joint.ends.from],
    [to, joint.to, joint.ends.to],
  ] as const;
  return [
    ...sides.flatMap(([id, path, end]) => {
      const section = laid.sections.find((one) => one.id === id);
      const x = end === 'left' ? section?.left : section?.right;
      const begins = path[0]?.x === x && path[0]?.y === section?.y;
      const ends = path.at(-1)?.x === joint.at.x && path.at(-1)?.y === joint.at.y;
      return begins && ends ? [] : [`${joint.id} does not lead from ${id} to its place`];
    }),
    ...laid.sections
      .filter(({ label }) => label.width > 0 && liesOn(joint, boxOf(label)))
      .map(({ id }) => `${joint.id} runs through the name of ${id}`),
  ];
}

const boxOf = ({ x, y, width, height }: Box): Rectangle => ({ left: x, right: x + width, top: y, bottom: y + height });

/** The single steps of all tracks between sections, each with whose it is. */
function stepsOf({ joints }: Laid): ReadonlyMap<string, ReadonlySet<string>> {
  const steps = new Map<string, Set<string>>();
  for (const { id, from, to } of joints) {
    const path = [...from, ...to.toReversed()];
    path.forEach((point, i) => {
      const next = path[i + 1];
      if (next === undefined) return;
      const pieces = Math.max(Math.abs(next.x - point.x), Math.abs(next.y - point.y)) / (STEP / 2);
      for (let n = 0; n < pieces; n++) {
        const x = point.x + ((n + 0.5) / pieces) * (next.x - point.x);
        const y = point.y + ((n + 0.5) / pieces) * (next.y - point.y);
        const key = `${x} ${y} ${Math.abs(Math.sign(next.x - point.x) * 2 + Math.sign(next.y - point.y))}`;
        steps.set(key, (steps.get(key) ?? new Set()).add(id));
      }
    });
  }
  return steps;
}

/** Steps of a joint's track, and about how many it would have on an empty field: more where an end looks away from where it leads. */
function lengthsOf({ id, from, to }: Tracks['joints'][number], { joints, sections }: Laid) {
  const joint = joints.find((one) => one.id === id);
  const [one, other] = [from, to].map((name) => sections.find((section) => section.id === name));
  if (joint === undefined || one === undefined || other === undefined) throw new Error(`${id} is not drawn`);
  const across = other[joint.ends.to] - one[joint.ends.from];
  const away = [joint.ends.from === 'right' ? across : -across, joint.ends.to === 'right' ? -across : across];
  return {
    track: stepsAlong(joint.from) + stepsAlong(joint.to),
    empty: (Math.abs(across) + 1.5 * Math.abs(one.y - other.y)) / STEP + 8 * away.filter((ahead) => ahead <= 0).length,
  };
}

const stepsAlong = (path: LaidJoint['from']): number =>
  path.slice(1).reduce((sum, { x, y }, i) => {
    const before = path[i] ?? { x, y };
    return sum + Math.max(Math.abs(x - before.x), Math.abs(y - before.y)) / STEP;
  }, 0);

describe('a layout is drawn as a diagram', () => {
  test.each([
    ['an oval', OVAL],
    ['an oval with a passing track', PASSING],
    ['a line with a loop', LOOP],
    ['a yard', YARD],
    ['two rings and a crossover', DOUBLE],
    ['a club with 40 sections', club(40, 46, 3)],
    ['60 sections with 68 joints', club(60, 68, 5)],
    ['60 sections with 88 joints', club(60, 88, 7)],
  ])('%s: nothing lies on anything else, and each joint joins the ends of its sections', (_, of) => {
    const laid = named(of);
    expect(laid.sections).toHaveLength(of.sections.length);
    expect(laid.joints).toHaveLength(of.joints.length);
    expect(faults(of, laid)).toEqual([]);
  });

  test('any sheet can be drawn, however it was typed in', () => {
    fc.assert(
      fc.property(anyTracks, (of) => {
        const laid = named(of);
        expect(laid.joints).toHaveLength(of.joints.length);
        expect(faults(of, laid)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test('layouts as clubs build them are drawn without a track on another, but where the same section forks', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.nat(14), fc.nat(), (sections, more, seed) => {
        const of = club(sections, sections < 12 ? sections - 1 : sections - 1 + more, seed);
        const laid = named(of);
        expect(faults(of, laid)).toEqual([]);
        for (const ids of stepsOf(laid).values()) {
          const [first, ...others] = [...ids].map((id) => of.joints.find((joint) => joint.id === id));
          for (const other of others) {
            expect([first?.from, first?.to].some((id) => id === other?.from || id === other?.to)).toBe(true);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  // Such a track was laid round half the layout where those laid before it had boxed its end in: 195 steps long in one of these.
  test('no track leads far round other track: half as far again as on an empty field, and 15 steps, is the most', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const of = club(60, 68, seed);
      const laid = named(of);
      for (const joint of of.joints) {
        const { track, empty } = lengthsOf(joint, laid);
        expect(track).toBeLessThanOrEqual(1.5 * empty + 15);
      }
    }
  });

  test('the same sheet is always the same picture', () => {
    expect(named(club(40, 46, 3))).toEqual(named(club(40, 46, 3)));
  });

  test('a ring lies in two rows, each of its sections between two others', () => {
    const rows = new Set(named(OVAL).sections.map(({ y }) => y));
    expect(rows.size).toBe(2);
    for (const { id } of OVAL.sections) {
      const ends = named(OVAL).joints.flatMap(({ id: joint, ends: at }) => {
        const { from, to } = OVAL.joints.find((one) => one.id === joint) ?? { from: '', to: '' };
        return [...(from === id ? [at.from] : []), ...(to === id ? [at.to] : [])];
      });
      expect(ends.toSorted()).toEqual(['left', 'right']);
    }
  });

  test('a loop leaves its turnout and comes back to it, at its two ends', () => {
    const ends = named(LOOP)
      .joints.slice(-2)
      .map(({ id, ends: at }) => (id === 'joint-5' ? at.to : at.from));
    expect(ends.toSorted()).toEqual(['left', 'right']);
  });

  test('a ring that is one section only joins its own two ends', () => {
    const of = { sections: OVAL.sections.slice(0, 1), joints: [joined('front', 'front')] };
    const laid = named(of);
    expect(faults(of, laid)).toEqual([]);
    expect(laid.joints[0]?.ends.from).not.toBe(laid.joints[0]?.ends.to);
  });

  test('parts that nothing joins stand below each other; a sheet without sections is an empty picture', () => {
    const of = tracks(['near', 'far', 'shelf', 'shelf-end'], ['near far', 'shelf shelf-end']);
    const [near, , shelf] = named(of).sections;
    expect(shelf?.y).toBeGreaterThan(near?.y ?? 0);
    expect(named({ sections: [], joints: [] })).toMatchObject({ width: 0, height: 0, sections: [], joints: [] });
  });

  test('a joint to a section that is not there is left away', () => {
    const of = { ...OVAL, joints: [...OVAL.joints, joined('front', 'nowhere')] };
    expect(named(of).joints).toHaveLength(OVAL.joints.length);
  });

  test('what was placed by hand stays; of two in one place the second goes beside', () => {
    const [front, right, back, left] = OVAL.sections;
    const at = (one: Tracks['sections'][number] | undefined, column: number, row: number) =>
      one === undefined ? [] : [{ ...one, at: { column, row } }];
    const cells = cellsOf({
      ...OVAL,
      sections: [...at(front, 0, 2), ...at(right, 1, 1), ...at(back, 0, 0), ...at(left, 0, 0.5)],
    });
    expect(cells.get('front')).toEqual({ column: 0, row: 2 });
    expect(cells.get('right-curve')).toEqual({ column: 1, row: 1 });
    expect(cells.get('left-curve')).toEqual({ column: 1, row: 0 });
  });
});

describe('names', () => {
  test('stand in two lines at most, and what is too long ends in an ellipsis', () => {
    expect(linesOf('Hidden yard track 3', 96)).toEqual(['Hidden yard', 'track 3']);
    expect(linesOf('Line', 96)).toEqual(['Line']);
    expect(linesOf('', 96)).toEqual([]);
    expect(linesOf('The long straight track along the window', 96)[1]).toMatch(/…$/);
    expect(linesOf('Donaudampfschifffahrtsgesellschaft', 96)).toHaveLength(1);
  });

  test('that begin alike have a third line, or keep their ends, where the cut would leave nothing that tells them apart', () => {
    const lines = linesOfAll(
      [
        ...['Down line, right curve, front', 'Down line, right curve, back', 'Long straight along the window', 'Yard'],
        ...['Donaudampfschifffahrt-1', 'Donaudampfschifffahrt-2'],
      ],
      96,
    );
    expect([...lines.values()].map((one) => one.join(' | '))).toEqual([
      'Down line, | right curve, | front',
      'Down line, | right curve, | back',
      'Long straight | along the w…',
      'Yard',
      '…schifffahrt-1',
      '…schifffahrt-2',
    ]);
  });

  test('are never wider than their place, whatever they are', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60, unit: 'grapheme' }), (name) => {
        for (const line of [name, `${name}a`, `${name}b`].flatMap(
          (one) => linesOfAll([name, `${name}a`, `${name}b`], 96).get(one) ?? [],
        ))
          expect(widthOf(line)).toBeLessThanOrEqual(96);
      }),
    );
  });
});
