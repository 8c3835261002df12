// Layouts to draw: small ones as people build them, a club's, and any that could be typed in.
import fc from 'fast-check';
import type { Joint, Section } from '../../../src/wizards/sheet/index.ts';
import type { Tracks } from '../../../src/wizards/sheet-drawing/cells.ts';
import { seeded } from '../../seeded.ts';

const section = (id: string, tags: Section['tags'] = []): Section => ({ id, metres: 1, traffic: 1, tags });

export const joined = (from: string, to: string, more: Partial<Joint> = {}): Joint => ({
  id: `${from}-${to}`,
  from,
  to,
  gap: 'possible',
  cut: 'none',
  awkward: 0,
  ...more,
});

/** Sections of these names, and what is joined to what: "a b", one line each. */
export function tracks(names: readonly string[], joints: readonly string[]): Tracks {
  return {
    sections: names.map((name) => section(name, name.startsWith('turnout') ? ['turnout'] : [])),
    joints: joints.map((line, i) => {
      const [from = '', to = ''] = line.split(' ');
      return joined(from, to, { id: `joint-${i + 1}` });
    }),
  };
}

export const OVAL = tracks(
  ['front', 'right-curve', 'back', 'left-curve'],
  ['front right-curve', 'right-curve back', 'back left-curve', 'left-curve front'],
);

export const PASSING = tracks(
  ['left-curve', 'back', 'right-curve', 'turnout-right', 'main', 'passing', 'turnout-left'],
  [
    'left-curve back',
    'back right-curve',
    'right-curve turnout-right',
    'turnout-right main',
    'turnout-right passing',
    'main turnout-left',
    'passing turnout-left',
    'turnout-left left-curve',
  ],
);

export const LOOP = tracks(
  ['platform', 'siding', 'turnout-out', 'line', 'turnout-loop', 'loop'],
  [
    'platform turnout-out',
    'siding turnout-out',
    'turnout-out line',
    'line turnout-loop',
    'turnout-loop loop',
    'loop turnout-loop',
  ],
);

export const YARD = tracks(
  ['main', 'turnout-1', 'turnout-2', 'turnout-3', 'track-1', 'track-2', 'track-3', 'track-4', 'shed'],
  [
    'main turnout-1',
    'turnout-1 turnout-2',
    'turnout-2 turnout-3',
    'turnout-1 track-1',
    'turnout-2 track-2',
    'turnout-3 track-3',
    'turnout-3 track-4',
    'track-1 shed',
  ],
);

/** Two rings beside each other with a crossover in the station. */
export const DOUBLE = tracks(
  [
    'outer-front',
    'outer-left',
    'outer-back',
    'outer-right',
    'turnout-x',
    'inner-front',
    'inner-left',
    'inner-back',
    'inner-right',
  ],
  [
    'outer-front turnout-x',
    'turnout-x outer-right',
    'outer-right outer-back',
    'outer-back outer-left',
    'outer-left outer-front',
    'inner-front turnout-x',
    'turnout-x inner-right',
    'inner-right inner-back',
    'inner-back inner-left',
    'inner-left inner-front',
  ],
);

/** A layout that hangs together as clubs build them: long lines, with some more joints between stretches that lie near each other. */
export function club(sections: number, joints: number, seed: number): Tracks {
  const draw = seeded(seed);
  const names = Array.from({ length: sections }, (_, i) => `section-${i + 1}`);
  const lines = new Set<string>();
  for (let i = 1; i < sections; i++) {
    const before = draw() < 0.75 ? i - 1 : Math.max(0, i - 1 - Math.floor(draw() * 8));
    lines.add(`${names[before]} ${names[i]}`);
  }
  while (lines.size < joints) {
    const from = Math.floor(draw() * sections);
    const to = from + 2 + Math.floor(draw() * 8);
    if (to < sections) lines.add(`${names[from]} ${names[to]}`);
  }
  return tracks(names, [...lines]);
}

/** Whatever can stand in a sheet, sections joined to themselves and named twice by joints too. */
export const anyTracks: fc.Arbitrary<Tracks> = fc
  .record({
    sections: fc.array(
      fc.record({
        name: fc.option(fc.string({ maxLength: 60 }), { nil: undefined }),
        at: fc.option(
          fc.record({
            column: fc.oneof(fc.integer({ min: 0, max: 12 }), fc.double({ min: 0, max: 12, noNaN: true })),
            row: fc.oneof(fc.integer({ min: 0, max: 6 }), fc.double({ min: 0, max: 6, noNaN: true })),
          }),
          { nil: undefined },
        ),
      }),
      { minLength: 1, maxLength: 60 },
    ),
    pairs: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 70 }),
  })
  .map(({ sections, pairs }) => ({
    sections: sections.map(({ name, at }, i) => ({
      ...section(`s${i}`),
      ...(name === undefined ? {} : { name }),
      ...(at === undefined ? {} : { at }),
    })),
    joints: pairs.map(([from, to], i) =>
      joined(`s${from % sections.length}`, `s${to % sections.length}`, { id: `j${i}` }),
    ),
  }));
