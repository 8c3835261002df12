// Numbers that are new each time and yet the same for everybody with the same link: a seed picks one of all the ways to draw them.

/** Picks one of a list, and goes on. The list is not empty. */
export type Draw = <Value>(first: Value, ...rest: readonly Value[]) => Value;

/** Seeds are whole numbers from 1 to this, so that they are short in an address. Source: own-choice. */
export const MOST_SEED = 9999;

/** What comes of each way to draw, in order: the last list of a draw goes through all it has first. */
export function allDrawn<Made>(make: (draw: Draw) => Made): Made[] {
  const all: Made[] = [];
  let places: number[] | undefined = [];
  while (places !== undefined) {
    const picks = recorded(places);
    all.push(make(picks.draw));
    places = nextOf(picks.taken);
  }
  return all;
}

interface Taken {
  readonly place: number;
  readonly of: number;
}

/** A draw that picks by place, the first where no place is given, and what it has picked. */
function recorded(places: readonly number[]): { readonly draw: Draw; readonly taken: readonly Taken[] } {
  const taken: Taken[] = [];
  const draw: Draw = (first, ...rest) => {
    const place = places[taken.length] ?? 0;
    taken.push({ place, of: rest.length + 1 });
    return [first, ...rest][place] ?? first;
  };
  return { draw, taken };
}

/** The places of the next way to draw; undefined after the last. */
function nextOf(taken: readonly Taken[]): number[] | undefined {
  const last = taken.findLastIndex(({ place, of }) => place + 1 < of);
  return last < 0 ? undefined : [...taken.slice(0, last).map(({ place }) => place), (taken[last]?.place ?? 0) + 1];
}

const divisor = (one: number, two: number): number => (two === 0 ? one : divisor(two, one % two));
/** Seeds beside each other pick far apart, about as the golden section does. Source: own-choice. */
const STRIDE = 0.618;

/** The place in a list of so many (>= 1) that a seed (whole, >= 1) picks: one after the other, all before any comes back. */
export function placeOf(seed: number, many: number): number {
  let stride = Math.max(1, Math.round(many * STRIDE));
  while (divisor(stride, many) !== 1) stride += 1;
  return (seed * stride) % many;
}

/** A seed out of an address or a field; undefined for anything else. */
export function parseSeed(text: string | null): number | undefined {
  if (text === null || !/^[1-9]\d{0,3}$/.test(text)) return undefined;
  return Number(text);
}
