// Where along the track a short circuit draws too little to trip.
import type { Span } from '../units.ts';
import type { ShortAlong } from './short-circuit.ts';
import { SHORT_MARGIN } from './trips.ts';

/** Part of the track, metres from its start, where a short draws too little. */
export interface WeakStretch {
  readonly from: number;
  readonly to: number;
  readonly finding: 'close' | 'does-not-trip';
}

/**
 * Where along the track a coin would not trip the protection, or only just: exact ends, from the closed form along each
 * section. In order of place; empty where everything trips with the margin. Trip > 0.
 */
export function weakStretches(along: ShortAlong, trip: number, margin = SHORT_MARGIN): WeakStretch[] {
  const dead = stretchesBelow(along, trip);
  // The margin is for what wires and a dirty contact do; whether the supply gives enough is the same everywhere.
  const weak = stretchesBelow(
    along.limit > trip ? { ...along, limit: Number.POSITIVE_INFINITY } : along,
    margin * trip,
  );
  const close = weak.flatMap((stretch) => without(stretch, dead));
  return [
    ...close.map((stretch) => ({ ...stretch, finding: 'close' as const })),
    ...dead.map((stretch) => ({ ...stretch, finding: 'does-not-trip' as const })),
  ].sort((a, b) => a.from - b.from || a.to - b.to);
}

// Where the current is `amps` or less; the resistance over a section is a parabola open downwards.
function stretchesBelow({ volts, limit, faultOhms, pieces }: ShortAlong, amps: number): Span[] {
  const most = limit <= amps ? Number.NEGATIVE_INFINITY : volts / amps - faultOhms;
  const found: Span[] = [];
  for (const { from, to, constant, linear, square } of pieces) {
    const part = above(constant - most, linear, square);
    if (part === undefined) continue;
    join(found, { from: from + part.from * (to - from), to: from + part.to * (to - from) });
  }
  return found;
}

function join(found: Span[], next: Span): void {
  const last = found.at(-1);
  if (last === undefined || next.from > last.to + 1e-9) found.push(next);
  else found[found.length - 1] = { from: last.from, to: Math.max(last.to, next.to) };
}

/** The part of 0..1 where c + b t + a t^2 >= 0, for a <= 0; undefined where there is none. */
function above(c: number, b: number, a: number): Span | undefined {
  if (c === Number.POSITIVE_INFINITY) return { from: 0, to: 1 };
  const roots = rootsOf(c, b, a);
  if (roots === undefined) return c + b / 2 + a / 4 >= 0 ? { from: 0, to: 1 } : undefined;
  const from = Math.max(0, roots.from);
  const to = Math.min(1, roots.to);
  return from < to ? { from, to } : undefined;
}

// Ends of the range where the parabola is not negative; undefined where it never changes sign.
function rootsOf(c: number, b: number, a: number): Span | undefined {
  if (Math.abs(a) < 1e-15) {
    if (Math.abs(b) < 1e-15) return undefined;
    return b > 0 ? { from: -c / b, to: Number.POSITIVE_INFINITY } : { from: Number.NEGATIVE_INFINITY, to: -c / b };
  }
  const inside = b * b - 4 * a * c;
  if (inside < 0) return undefined;
  // The form that loses no digits where the two terms of the usual one nearly cancel.
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(inside));
  const [from = 0, to = 0] = [q / a, q === 0 ? 0 : c / q].sort((left, right) => left - right);
  return { from, to };
}

function without(whole: Span, holes: readonly Span[]): Span[] {
  const left: Span[] = [];
  let from = whole.from;
  for (const hole of holes) {
    if (hole.to < whole.from || hole.from > whole.to) continue;
    if (hole.from > from) left.push({ from, to: hole.from });
    from = Math.max(from, hole.to);
  }
  if (from < whole.to) left.push({ from, to: whole.to });
  return left;
}
