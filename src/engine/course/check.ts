// A question of a lesson whose numbers are new each time: what is given, the right answer, and what typical mistakes give.
import type { Unit } from '../workings.ts';
import type { Draw } from './draw.ts';
import { allDrawn, placeOf } from './draw.ts';

/** A number with its unit: SI, but for square millimetres where it is written `mm2`. */
export interface Amount {
  readonly value: number;
  readonly unit: Unit;
}

/** What a kind of question makes out of one draw. */
export interface Made {
  /** The numbers of the question, by the names its words give them. */
  readonly given: Readonly<Record<string, Amount>>;
  /** The unit of all answers. */
  readonly unit: Unit;
  readonly right: number;
  /** What comes out of each mistake, by its name. */
  readonly mistakes: Readonly<Record<string, number>>;
}

export interface Kind {
  readonly make: (draw: Draw) => Made;
  /** Smallest and largest answer that any of its choices gives: a person must be able to picture it. */
  readonly range: readonly [least: number, most: number];
}

export interface Choice extends Amount {
  /** Absent: it is the right one. */
  readonly mistake?: string;
}

export interface Check {
  readonly given: Readonly<Record<string, Amount>>;
  /** From the smallest to the largest, exactly one of them right. */
  readonly choices: readonly Choice[];
  readonly right: Amount;
}

/** Choices nearer to each other than this share cannot be told apart by a rough sum, and are never asked. Source: own-choice. */
export const APART = 0.08;

const ASKED = new WeakMap<Kind, readonly Made[]>();

/** All that a kind asks, each once. */
function askedBy(kind: Kind): readonly Made[] {
  const known = ASKED.get(kind);
  if (known !== undefined) return known;
  const apart = allDrawn(kind.make).filter(standApart);
  const all = [...new Map(apart.map((made) => [JSON.stringify(made.given), made])).values()];
  ASKED.set(kind, all);
  return all;
}

/** The question that a seed (whole, >= 1) gives; the next seed asks another. Throws where a kind never gives choices that stand apart: a fault of the kind. */
export function makeCheck(kind: Kind, seed: number): Check {
  const all = askedBy(kind);
  const made = all[placeOf(seed, all.length)];
  if (made === undefined) throw new Error('The numbers of a check question never stand apart');
  return checkOf(made);
}

function standApart({ right, mistakes }: Made): boolean {
  const values = [right, ...Object.values(mistakes)].sort((one, two) => one - two);
  return values.every((value, i) => {
    const before = values[i - 1];
    return value > 0 && (before === undefined || value / before >= 1 + APART);
  });
}

function checkOf({ given, unit, right, mistakes }: Made): Check {
  const wrong = Object.entries(mistakes).map(([mistake, value]): Choice => ({ value, unit, mistake }));
  const choices = [...wrong, { value: right, unit }].sort((one, two) => one.value - two.value);
  return { given, choices, right: { value: right, unit } };
}
