// Signs with checks between them: a link that lost a part, or in which a sign was changed, says from where on, and what stands before is whole.
import { signOf, sixOf } from './bits.ts';

/** So many signs are checked together, by two that follow them; each check counts all signs before it. */
const BLOCK = 16;
const CHECK = 2;
/** x¹² + x¹¹ + x³ + x² + x + 1, the generator of CRC-12: no change within twelve bits next to each other goes unseen. */
const GENERATOR = 0x80f;
const BITS = 12;
const TOP = 2 ** (BITS - 1);
const ALL = 2 ** BITS - 1;

/** The remainder after one more sign. */
function after(remainder: number, sign: number): number {
  let now = remainder ^ (sign << (BITS - 6));
  for (let bit = 0; bit < 6; bit++) now = ((now << 1) & ALL) ^ ((now & TOP) === 0 ? 0 : GENERATOR);
  return now;
}

/** Mail programs and forums take these off the end of a link; a zero behind them stays. */
const FRAIL_END = /[-_]0*$/;

/** `start`: what the checks count beside the signs, such as a version. */
export function withChecks(signs: string, start: number): string {
  let remainder = after(ALL, start);
  let text = '';
  for (let at = 0; at < signs.length; at += BLOCK) {
    const block = signs.slice(at, at + BLOCK);
    for (const sign of block) remainder = after(remainder, sixOf(sign));
    text += block + signOf(remainder >> 6) + signOf(remainder & 63);
  }
  return FRAIL_END.test(text) ? `${text}0` : text;
}

export interface Checked {
  /** The signs, without their checks, up to the first that is not as it was made. */
  readonly signs: string;
  /** How many of the given signs, checks counted, are right. */
  readonly right: number;
}

export function checked(text: string, start: number): Checked {
  const given = /[-_]0+$/.test(text) ? text.slice(0, -1) : text;
  let remainder = after(ALL, start);
  let signs = '';
  for (let at = 0; at < given.length; at += BLOCK + CHECK) {
    const part = given.slice(at, at + BLOCK + CHECK);
    const block = part.slice(0, -CHECK);
    if ([...block].some((sign) => sixOf(sign) < 0)) return { signs, right: at };
    for (const sign of block) remainder = after(remainder, sixOf(sign));
    if (block === '' || part.slice(-CHECK) !== signOf(remainder >> 6) + signOf(remainder & 63))
      return { signs, right: at };
    signs += block;
  }
  return { signs, right: given.length };
}
