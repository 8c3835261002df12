// A wide drawing in strips for paper: cut where nothing stands, each as high as what is in it, and all of them together as low as can be.
import type { Box, Laid } from '../../wizards/sheet-drawing/index.ts';

/** What a sheet of A4 has room for between its margins, millimetres: as wide as the text, and high below a heading. Source: own-choice. */
const PAPER = { width: 180, height: 250 } as const;
/** A strip this wide has letters of 7 pt on paper, pixels of the drawing. Source: own-choice. */
const WIDEST = 945;
/** Room above and below what is drawn, pixels. */
const ROOM = 24;
/** Between two strips, pixels. */
const APART = 12;
/** Nothing is cut so near to the end of a section, or to the middle of a joint's mark, pixels. */
const CLEAR = { section: 4, joint: 17 } as const;

export interface Strips {
  readonly strips: readonly Box[];
  /** Millimetres of paper to a pixel of the drawing: the same for all, so that all letters are alike. */
  readonly scale: number;
}

/** How wide a strip stands on paper, as a share of the text. */
export const shareOfPaper = ({ width }: Box, { scale }: Strips): number => (width * scale) / PAPER.width;

export function stripsOf(laid: Laid): Strips {
  const cuts = cutsOf(laid);
  const whole = boxOf(laid, 0, laid.width);
  const boxes = new Map<string, Box>();
  const between = (left: number, right: number): Box => {
    const key = `${left} ${right}`;
    const box = boxes.get(key) ?? boxOf(laid, left, right);
    boxes.set(key, box);
    return box;
  };
  const widths = [...new Set(cuts.flatMap((right) => cuts.map((left) => right - left)))].filter(
    (width) => width > 0 && width <= WIDEST,
  );
  const found = widths.flatMap((width) => {
    const strips = lowest(cuts, width, between);
    return strips === undefined ? [] : [scaled(strips)];
  });
  const [best] = found.toSorted((one, other) => heightOf(one) - heightOf(other));
  return laid.width <= WIDEST || best === undefined ? scaled([whole]) : best;
}

const scaled = (strips: readonly Box[]): Strips => ({
  strips,
  scale: Math.min(
    PAPER.width / Math.max(...strips.map(({ width }) => width)),
    PAPER.height / Math.max(...strips.map(({ height }) => height)),
  ),
});

const heightOf = ({ strips, scale }: Strips): number =>
  scale * strips.reduce((sum, { height }) => sum + height + APART, 0);

/** The strips from one end to the other, none wider than that, that are lowest together. */
function lowest(
  cuts: readonly number[],
  widest: number,
  between: (left: number, right: number) => Box,
): readonly Box[] | undefined {
  const best: ({ readonly height: number; readonly strips: readonly Box[] } | undefined)[] = [
    { height: 0, strips: [] },
  ];
  for (const [at, right] of cuts.entries()) {
    for (const [from, left] of cuts.entries()) {
      const before = best[from];
      if (from >= at || right - left > widest || before === undefined) continue;
      const strip = between(left, right);
      const height = before.height + strip.height + APART;
      if (height < (best[at]?.height ?? Number.POSITIVE_INFINITY))
        best[at] = { height, strips: [...before.strips, strip] };
    }
  }
  return best[cuts.length - 1]?.strips;
}

/** Where a cut goes through no section, no name and no joint, with both ends of the drawing. */
function cutsOf({ sections, joints, width }: Laid): readonly number[] {
  const taken = [
    ...sections.map(({ left, right, label }) => [
      Math.min(left, label.x) - CLEAR.section,
      Math.max(right, label.x + label.width) + CLEAR.section,
    ]),
    ...joints.map(({ at }) => [at.x - CLEAR.joint, at.x + CLEAR.joint]),
  ].toSorted(([one = 0], [other = 0]) => one - other);
  const cuts = [0];
  let free = 0;
  for (const [from = 0, to = 0] of taken) {
    if (from >= free && free > 0) cuts.push((free + from) / 2);
    free = Math.max(free, to);
  }
  return [...cuts, width];
}

function boxOf(laid: Laid, left: number, right: number): Box {
  const heights = heightsIn(laid, left, right);
  const top = Math.max(0, Math.min(...heights) - ROOM);
  const bottom = Math.min(laid.height, Math.max(...heights) + ROOM);
  return { x: left, y: top, width: right - left, height: Math.max(0, bottom - top) };
}

/** How high all that lies between two places stands. */
function heightsIn({ sections, joints }: Laid, left: number, right: number): readonly number[] {
  const pieces = joints.flatMap(({ from, to }) =>
    [from, to].flatMap((path) => path.slice(1).map((point, i) => [path[i] ?? point, point] as const)),
  );
  return [
    ...sections.filter((one) => one.left <= right && one.right >= left).flatMap(({ y, label }) => [label.y, y]),
    ...pieces
      .filter(([one, other]) => Math.min(one.x, other.x) <= right && Math.max(one.x, other.x) >= left)
      .flatMap((ends) => ends.map(({ y }) => y)),
  ];
}
