// A wide drawing in strips for paper, each as high as what is in it.
import type { Box, Laid } from '../../wizards/sheet-drawing/index.ts';

/** How much of a drawing stands side by side on a sheet of paper, pixels. */
const STRIP = 900;
/** Room above and below what is drawn, pixels. */
const ROOM = 24;

export function stripsOf(laid: Laid): readonly Box[] {
  const count = Math.max(1, Math.ceil((laid.width - STRIP / 10) / STRIP));
  const width = laid.width / count;
  return Array.from({ length: count }, (_, i) => {
    const x = i * width;
    const heights = heightsIn(laid, x, x + width);
    const top = Math.max(0, Math.min(...heights) - ROOM);
    const bottom = Math.min(laid.height, Math.max(...heights) + ROOM);
    return { x, y: top, width, height: bottom - top };
  }).filter(({ height }) => height > 0);
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
