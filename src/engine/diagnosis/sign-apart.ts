// The one check that tells what is left apart best, whether its tool is at hand or not.
import type { Compiled } from './compile.ts';
import { TOOLS } from './model.ts';
import { likelyOnly } from './sign-likely.ts';
import type { SignState, WalkModel } from './sign-walk.ts';
import { standAt } from './sign-walk.ts';
import { isShown } from './value.ts';

/** Checks whose answers lie no further apart than this are not worth the walk to the tool, 0 alike to 1 never the same. Source: from-memory (judgement). */
const LEAST_APART = 0.2;

/**
 * The check whose answers lie furthest apart between these fix classes, each pair weighted by its chances; undefined where none does. What could
 * not be checked, and what is not at hand, is thought of too; what is forbidden or not shown to be safe is not. Unknown classes are passed over.
 */
export function tellsApart(model: WalkModel, state: SignState, fixClasses: readonly string[]): string | undefined {
  const { compiled, standing } = likelyOnly(standAt(model, { ...state, tools: TOOLS, skipped: [] }));
  const groups = fixClasses
    .map((fixClass) => placesOf(compiled, fixClass))
    .map((places) => ({ places, mass: places.reduce((sum, at) => sum + (standing.chances[at] ?? 0), 0) }));
  let best: string | undefined;
  let most = LEAST_APART;
  for (const [at, { id }] of compiled.checks.entries()) {
    if (standing.open[at] !== 1 || !isShown(compiled, at, standing.holds)) continue;
    const answers = groups.map(({ places, mass }) => answersOf(compiled, standing.chances, at, places, mass));
    const apart = meanApart(
      answers,
      groups.map(({ mass }) => mass),
    );
    if (apart > most) [most, best] = [apart, id];
  }
  return best;
}

function placesOf({ classes, classEnd }: Compiled, fixClass: string): number[] {
  const at = classes.findIndex((one) => one.fixClass === fixClass);
  if (at < 0) return [];
  const from = at === 0 ? 0 : (classEnd[at - 1] ?? 0);
  return Array.from({ length: (classEnd[at] ?? from) - from }, (_, i) => from + i);
}

/** P(option | one of these causes) for each option of a check. */
function answersOf(
  { optionStart, likelihood }: Compiled,
  chances: Float64Array,
  check: number,
  places: readonly number[],
  mass: number,
): number[] {
  const from = optionStart[check] ?? 0;
  return Array.from({ length: (optionStart[check + 1] ?? from) - from }, (_, i) => {
    const row = (from + i) * chances.length;
    return places.reduce((sum, at) => sum + ((chances[at] ?? 0) * (likelihood[row + at] ?? 0)) / mass, 0);
  });
}

/** How far rows of answers lie apart on average over the pairs, 0 to 1. */
function meanApart(rows: readonly (readonly number[])[], masses: readonly number[]): number {
  let apart = 0;
  let weight = 0;
  for (const [i, one] of rows.entries()) {
    for (const [j, other] of rows.entries()) {
      if (j <= i) continue;
      const pair = (masses[i] ?? 0) * (masses[j] ?? 0);
      weight += pair;
      apart += (pair * one.reduce((sum, share, option) => sum + Math.abs(share - (other[option] ?? 0)), 0)) / 2;
    }
  }
  return weight > 0 ? apart / weight : 0;
}
