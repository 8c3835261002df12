// The look of a district by its place: a colour and a pattern. Both go round at six; the second time each colour has another pattern.
const ROUND = 6;
const FURTHER = 3;

/** The classes of a district, or of track in none. Source of the colours: the published set for the colour-blind in tokens.css. */
export function lookOf(place: number | undefined): string {
  if (place === undefined) return 'nobody';
  const pattern = (place + FURTHER * Math.floor(place / ROUND)) % ROUND;
  return `colour-${place % ROUND} pattern-${pattern}`;
}

/** Whether something is drawn along the middle of its track. */
export const hasPattern = (look: string): boolean => !/^nobody$|pattern-[05]$/.test(look);
