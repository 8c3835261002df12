// Numbers that are new each time and yet the same for everybody with the same link: a seeded draw (mulberry32, public domain).

/** Picks one of a list, and goes on. The list is not empty. */
export type Draw = <Value>(first: Value, ...rest: readonly Value[]) => Value;

/** Seeds are whole numbers from 1 to this, so that they are short in an address. */
export const MOST_SEED = 9999;

/** The same seed (a whole number) and the same question give the same picks. */
export function drawFrom(seed: number): Draw {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return (first, ...rest) => [first, ...rest][Math.floor(next() * (rest.length + 1))] ?? first;
}

/** A seed out of an address or a field; undefined for anything else. */
export function parseSeed(text: string | null): number | undefined {
  if (text === null || !/^[1-9]\d{0,3}$/.test(text)) return undefined;
  return Number(text);
}
