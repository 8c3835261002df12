// A value along a track in closed form: a parabola over each piece of rail, its extreme, points to draw and the value at a spot.
import { SAME_PLACE } from './plan.ts';

/** constant + linear t + square t^2 for t from 0 to 1. */
export interface Parabola {
  readonly constant: number;
  readonly linear: number;
  readonly square: number;
}

/** A piece of track, metres from its start, and what stands at the share t of it. */
export interface TrackPiece extends Parabola {
  readonly from: number;
  readonly to: number;
}

export interface Value {
  /** Metres along the track. */
  readonly at: number;
  readonly value: number;
}

/** Points along the whole track where no step is given. Source: own-choice. */
const POINTS = 120;

const pieceAt = ({ constant, linear, square }: Parabola, t: number): number => constant + t * (linear + t * square);

/** A parabola over a whole as one over the part of it that begins at `begins` and is `share` long, both shares of the whole. */
export function partOf({ constant, linear, square }: Parabola, begins: number, share: number): Parabola {
  return {
    constant: constant + begins * (linear + begins * square),
    linear: share * (linear + 2 * begins * square),
    square: share * share * square,
  };
}

/** Highest (side 1) or lowest (side -1) value of all pieces and where it is; of equal ones the nearest to the start. */
export function extreme(pieces: readonly TrackPiece[], side: 1 | -1): Value {
  let best: Value = { at: 0, value: side * Number.NEGATIVE_INFINITY };
  for (const piece of pieces) {
    const top = -piece.linear / (2 * piece.square);
    for (const t of top > 0 && top < 1 ? [0, top, 1] : [0, 1]) {
      const value = pieceAt(piece, t);
      if (side * (value - best.value) > 1e-12) best = { at: piece.from + t * (piece.to - piece.from), value };
    }
  }
  return best;
}

/** Points to draw, `step` metres apart (a 120th of the track where left out), with both ends of every piece; two where the value leaps. */
export function pointsOf(pieces: readonly TrackPiece[], step?: number): Value[] {
  const length = (pieces.at(-1)?.to ?? 0) - (pieces[0]?.from ?? 0);
  const apart = step !== undefined && step > 0 ? Math.max(step, length / 10_000) : length / POINTS;
  const points: Value[] = [];
  for (const piece of pieces) {
    const start = { at: piece.from, value: pieceAt(piece, 0) };
    const last = points.at(-1);
    if (last === undefined || Math.abs(last.value - start.value) > 1e-12) points.push(start);
    const wide = piece.to - piece.from;
    for (let k = Math.floor(piece.from / apart + 1e-9) + 1; k * apart < piece.to - SAME_PLACE; k++) {
      const at = k * apart;
      points.push({ at, value: pieceAt(piece, (at - piece.from) / wide) });
    }
    points.push({ at: piece.to, value: pieceAt(piece, 1) });
  }
  return points;
}

/** The value at a spot, metres along the track; where it leaps, that of the side towards the start; beyond an end, that of the end. */
export function valueAt(pieces: readonly TrackPiece[], at: number): number {
  const piece = pieces.find(({ to }) => at <= to + SAME_PLACE) ?? pieces.at(-1);
  if (piece === undefined) return Number.NaN;
  const t = (at - piece.from) / (piece.to - piece.from);
  return pieceAt(piece, Math.min(1, Math.max(0, t)));
}
