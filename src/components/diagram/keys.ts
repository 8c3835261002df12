// From one section or joint to the next by the arrow keys: the nearest one that lies more in that direction than beside it.
export interface Spot {
  readonly key: string;
  readonly x: number;
  readonly y: number;
}

const WAYS: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};

/** The key of the spot to go to; nothing if the key that was pressed leads nowhere. */
export function nextTo(spots: readonly Spot[], here: string, pressed: string): string | undefined {
  if (pressed === 'Home') return spots[0]?.key;
  if (pressed === 'End') return spots.at(-1)?.key;
  const way = WAYS[pressed];
  const from = spots.find(({ key }) => key === here);
  if (way === undefined || from === undefined) return undefined;
  const [x, y] = way;
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const spot of spots) {
    const ahead = (spot.x - from.x) * x + (spot.y - from.y) * y;
    const beside = Math.abs((spot.x - from.x) * y) + Math.abs((spot.y - from.y) * x);
    if (ahead <= 0 || beside > 2 * ahead || ahead + 2 * beside >= least) continue;
    nearest = spot.key;
    least = ahead + 2 * beside;
  }
  return nearest;
}
