// What one ampere does, and where along a section it does most.
import type { Prepared } from './matrix.ts';
import { between, inject, rowIn, voltsFor } from './matrix.ts';
import type { CurrentLoad, NetworkProblem, Pair } from './parts.ts';
import { ids, problem, sound } from './parts.ts';
import { int } from './skyline.ts';
import type { Operating } from './solve.ts';
import { LIMIT_TOLERANCE, solve } from './solve.ts';

/** Where rounding takes more than two digits, what one ampere does is refined as well. Source: own-choice. */
const BEARABLE_LOSS = 100;

/** Volts lost at each row for one ampere drawn from `plus` to `minus`. */
function column({ matrix, conductors, columns }: Prepared, plus: number, minus: number): Float64Array {
  const key = (plus + 1) * (matrix.count + 1) + minus + 1;
  const known = columns.get(key);
  if (known !== undefined) return known;
  const drawn = new Float64Array(matrix.count);
  inject(drawn, plus, minus, 1);
  const lost = matrix.lost > BEARABLE_LOSS ? voltsFor(matrix, conductors, drawn) : drawn;
  if (lost === drawn) matrix.solve(drawn);
  columns.set(key, lost);
  return lost;
}

/**
 * Volts lost between `b` for one ampere drawn between `a`, ohms; without `b`, between `a` itself: what a train there sees of wires, rails and
 * sources together. Limits of sources do not count. The same with `a` and `b` exchanged. Throws RangeError for an unknown node.
 */
export function impedance(prepared: Prepared, a: Pair, b: Pair = a): number {
  const lost = column(prepared, rowIn(prepared, a[0]), rowIn(prepared, a[1]));
  return between(lost, rowIn(prepared, b[0]), rowIn(prepared, b[1]));
}

/** A section of track: two conductors that run side by side and have nothing but their ends in common with the rest. */
export interface SectionEnds {
  readonly from: Pair;
  readonly to: Pair;
  /** Both conductors of the section together, ohms; each is a branch of the network, and both have the same share on either side of a train. */
  readonly ohms: number;
}

/** Impedance along a section; `t` is the place as a share of the section, 0 to 1. */
export interface Along {
  /** Ohms at the beginning and at the end, and between them. */
  readonly start: number;
  readonly end: number;
  readonly transfer: number;
  /** Both conductors of the section, ohms. */
  readonly ohms: number;
  /** Ohms a train, or a short circuit, at `t` sees. */
  at(t: number): number;
  /** Where it is greatest. */
  readonly worst: { readonly t: number; readonly ohms: number };
}

/**
 * Impedance at every place of a section in closed form: (1-t)^2 Zaa + t^2 Zbb + 2t(1-t) Zab + t(1-t) R. One ampere drawn within a section
 * counts as 1-t at its beginning and t at its end, and loses t(1-t) R within. Source: own-derivation.
 */
export function impedanceAlong(prepared: Prepared, section: SectionEnds): Along {
  const start = impedance(prepared, section.from);
  const end = impedance(prepared, section.to);
  const transfer = impedance(prepared, section.from, section.to);
  const { ohms } = section;
  const along = (t: number) => (1 - t) ** 2 * start + t ** 2 * end + t * (1 - t) * (2 * transfer + ohms);
  const t = highest(start, end, 2 * transfer + ohms);
  return { start, end, transfer, ohms, at: along, worst: { t, ohms: along(t) } };
}

/** Where (1-t)^2 a + t^2 b + t(1-t) c is greatest for t from 0 to 1. */
function highest(a: number, b: number, c: number): number {
  const value = (t: number) => (1 - t) ** 2 * a + t ** 2 * b + t * (1 - t) * c;
  const top = (2 * a - c) / (2 * (a + b - c));
  const candidates = top > 0 && top < 1 ? [0, 1, top] : [0, 1];
  return candidates.reduce((best, t) => (value(t) > value(best) ? t : best));
}

/** What a train sees along a section while the others stay. */
export interface Lowest {
  readonly kind: 'lowest';
  /** Where the train finds least, as a share of the section, 0 to 1. */
  readonly t: number;
  /** Volts at the train there. */
  readonly volts: number;
  /** What the train itself costs there, volts. */
  readonly drop: number;
  /** Volts at the train at `t`. */
  at(t: number): number;
}

/**
 * Lowest voltage that a train of constant current, amperes >= 0, finds on its way over some sections, and the number of the section: what
 * the others leave there, which changes evenly along a section, less amps times the impedance. Others are of constant current and stand outside the section or at its ends.
 * `limit-reached` names the sources that would pass their limit with the train somewhere in the section: then solve for single places.
 * `bad-load` with no name: amps is not such a number; `no-section`: there is none. Source: own-derivation.
 * @keptFor I the readings to expect on a track whose sections branch
 */
export function lowestOnWay(
  prepared: Prepared,
  sections: readonly SectionEnds[],
  amps: number,
  others: readonly CurrentLoad[] = [],
): (Lowest & { readonly section: number }) | NetworkProblem {
  if (!(amps >= 0 && sound(amps))) return problem('bad-load', []);
  const base = solve(prepared, others);
  if (base.kind === 'no-solution') return base;
  const beyond = beyondLimit(prepared, sections, amps, base);
  if (beyond.length > 0) return problem('limit-reached', beyond);
  let lowest: (Lowest & { readonly section: number }) | undefined;
  for (const [section, ends] of sections.entries()) {
    const found = lowestIn(prepared, ends, amps, base);
    if (lowest === undefined || found.volts < lowest.volts) lowest = { ...found, section };
  }
  return lowest ?? problem('no-section', []);
}

function lowestIn(prepared: Prepared, section: SectionEnds, amps: number, base: Operating): Lowest {
  const { start, end, transfer, ohms, at: impedanceAt } = impedanceAlong(prepared, section);
  const from = base.across(section.from);
  const to = base.across(section.to);
  const along = (t: number) => (1 - t) * from + t * to - amps * impedanceAt(t);
  // The even change (1-t) from + t to is (1-t)^2 from + t^2 to + t(1-t) (from + to).
  const t = highest(amps * start - from, amps * end - to, amps * (2 * transfer + ohms) - from - to);
  return { kind: 'lowest', t, volts: along(t), drop: amps * impedanceAt(t), at: along };
}

/** What a source gives changes evenly as a train moves along a section, so the ends of the sections tell. */
function beyondLimit(
  prepared: Prepared,
  sections: readonly SectionEnds[],
  amps: number,
  base: Operating,
): readonly string[] {
  const { sourceEnds, network } = prepared;
  if (base.limited.length > 0) return base.limited;
  const limited = network.sources.filter(({ limit = Infinity }) => limit < Infinity);
  if (limited.length === 0) return [];
  const lost = sections
    .flatMap(({ from, to }) => [from, to])
    .map(([plus, minus]) => column(prepared, rowIn(prepared, plus), rowIn(prepared, minus)));
  const beyond = limited.filter((source) => {
    const index = network.sources.indexOf(source);
    const [plus, minus] = [int(sourceEnds.from, index), int(sourceEnds.to, index)];
    const most = lost.reduce((all, one) => Math.max(all, between(one, plus, minus)), 0);
    const given = base.sourceAmps(source.id) + (amps * most) / source.ohms;
    return given > (source.limit ?? Infinity) * (1 + LIMIT_TOLERANCE);
  });
  return ids(beyond);
}
