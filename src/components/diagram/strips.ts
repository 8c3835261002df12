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

/** Where the drawing is cut, each strip is so much wider, pixels: there stand the marks of the track that goes on. */
export const MARGIN = 20;
/** Marks lie below each other at least so far apart, pixels. */
const MARK = 18;

/** Track that goes on in the next strip: the same letter at both ends. */
export interface GoesOn {
  readonly letter: string;
  readonly y: number;
}

/** What goes through a cut, from top to bottom, by where the cut is; letters go on from cut to cut. */
export function goesOnAt(laid: Laid, { strips }: Strips): ReadonlyMap<number, readonly GoesOn[]> {
  let count = 0;
  return new Map(
    strips.slice(1).map(({ x }) => {
      const marks: GoesOn[] = [];
      for (const y of heightsAt(laid, x)) {
        marks.push({ letter: letterOf(count), y: Math.max(y, (marks.at(-1)?.y ?? Number.NEGATIVE_INFINITY) + MARK) });
        count += 1;
      }
      return [x, marks];
    }),
  );
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
const letterOf = (i: number): string => LETTERS.charAt(i % LETTERS.length).repeat(1 + Math.floor(i / LETTERS.length));

/** How high track runs where it is cut. No section is cut, so it is that of joints. */
function heightsAt(laid: Laid, x: number): readonly number[] {
  const heights = piecesOf(laid).flatMap(([one, other]) => {
    const [left, right] = one.x < other.x ? [one, other] : [other, one];
    return left.x < x && x <= right.x ? [left.y + ((right.y - left.y) * (x - left.x)) / (right.x - left.x)] : [];
  });
  return [...new Set(heights)].toSorted((one, other) => one - other);
}

const piecesOf = ({ joints }: Laid) =>
  joints.flatMap(({ from, to }) =>
    [from, to].flatMap((path) => path.slice(1).map((point, i) => [path[i] ?? point, point] as const)),
  );

/** A strip with room for its marks where it is cut. */
export const withMargins = ({ x, width, ...box }: Box, whole: number): Box => {
  const [left, right] = [x > 0 ? MARGIN : 0, x + width < whole ? MARGIN : 0];
  return { ...box, x: x - left, width: left + width + right };
};

/** How wide a strip stands on paper, as a share of the text. */
export const shareOfPaper = ({ width }: Box, { scale }: Strips): number => (width * scale) / PAPER.width;

/** So much of a sheet of paper is left below what stands above a drawing, millimetres. Source: own-choice. */
const BELOW_LEAD = 165;

/** Whether the first strip goes on the sheet that is begun: then it stands before what its signs mean, which may be parted anywhere. */
export const fitsBelowLead = ({ strips, scale }: Strips): boolean => (strips[0]?.height ?? 0) * scale <= BELOW_LEAD;

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
    (width) => width > 0 && width <= WIDEST - 2 * MARGIN,
  );
  const found = widths.flatMap((width) => {
    const strips = lowest(cuts, width, between);
    return strips === undefined ? [] : [scaled(strips, laid.width)];
  });
  const [best] = found.toSorted((one, other) => heightOf(one) - heightOf(other));
  return laid.width <= WIDEST || best === undefined ? scaled([whole], laid.width) : best;
}

const scaled = (strips: readonly Box[], whole: number): Strips => ({
  strips,
  scale: Math.min(
    PAPER.width / Math.max(...strips.map((strip) => withMargins(strip, whole).width)),
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
function heightsIn(laid: Laid, left: number, right: number): readonly number[] {
  return [
    ...laid.sections.filter((one) => one.left <= right && one.right >= left).flatMap(({ y, label }) => [label.y, y]),
    ...piecesOf(laid)
      .filter(([one, other]) => Math.min(one.x, other.x) <= right && Math.max(one.x, other.x) >= left)
      .flatMap((ends) => ends.map(({ y }) => y)),
  ];
}
