// The halves of a bit (S-9.1), seconds.
import type { Span } from '../units.ts';

export type Bit = 0 | 1;

/** S-9.1 (2020) Table 1: length of one half of a bit, seconds. Source: nmra-s-9-1. */
export const ONE_HALF = {
  nominal: 58e-6,
  sent: { from: 55e-6, to: 61e-6 },
  accepted: { from: 52e-6, to: 64e-6 },
  /** The two halves of a 1 differ by no more. It is no limit between two stages: the standard has none. */
  differs: { sent: 3e-6, accepted: 6e-6 },
} as const;

/** The same for a 0; a stretched 0 sent is no longer than `total`, both halves together, seconds. Source: nmra-s-9-1. */
export const ZERO_HALF = {
  nominal: 100e-6,
  sent: { from: 95e-6, to: 9900e-6 },
  accepted: { from: 90e-6, to: 10_000e-6 },
  total: 12_000e-6,
} as const;

/** `sent` by a command station, or what a decoder has to have `accepted`. */
export type Role = 'sent' | 'accepted';
export type Half = 'first' | 'last';

export type HalvesFinding =
  | { readonly kind: 'bit'; readonly bit: Bit }
  | {
      readonly kind: 'no-bit';
      /** `outside`: no bit has such a half; `unlike`: one half of a 1 with one of a 0; `stretched`: too long in all. */
      readonly because: 'not-a-length' | 'outside' | 'unlike' | 'differ' | 'stretched';
      readonly parts: readonly Half[];
    };

/** A picosecond, seconds: sums of decimal fractions are not exact. Source: own-choice. */
const HAIR = 1e-12;
const BOTH: readonly Half[] = ['first', 'last'];
const noBit = (because: Extract<HalvesFinding, { kind: 'no-bit' }>['because'], parts = BOTH): HalvesFinding => ({
  kind: 'no-bit',
  because,
  parts,
});
const within = (seconds: number, span: Span): boolean => seconds >= span.from - HAIR && seconds <= span.to + HAIR;

function halfOf(seconds: number, role: Role): Bit | undefined {
  if (within(seconds, ONE_HALF[role])) return 1;
  return within(seconds, ZERO_HALF[role]) ? 0 : undefined;
}

/**
 * Which bit two halves make, each in seconds between two crossings of zero volts. `sent` judges a command station, `accepted`
 * asks what a decoder must take. Anything else is no bit, with the reason and the halves at fault. Source: nmra-s-9-1.
 */
export function judgeHalves(first: number, last: number, role: Role): HalvesFinding {
  const halves = [first, last];
  const bad = BOTH.filter((_, i) => !((halves[i] ?? 0) > 0 && Number.isFinite(halves[i])));
  if (bad.length > 0) return noBit('not-a-length', bad);
  const bits = halves.map((seconds) => halfOf(seconds, role));
  const outside = BOTH.filter((_, i) => bits[i] === undefined);
  if (outside.length > 0) return noBit('outside', outside);
  const [bit] = bits;
  if (bit === undefined || bit !== bits[1]) return noBit('unlike');
  if (bit === 1 && Math.abs(first - last) > ONE_HALF.differs[role] + HAIR) return noBit('differ');
  if (bit === 0 && role === 'sent' && first + last > ZERO_HALF.total + HAIR) return noBit('stretched');
  return { kind: 'bit', bit };
}
