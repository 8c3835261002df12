// What is likely, as a model of one step: what is best to do is weighed over these causes and what they would say next.

import { atOnce } from '../at-once.ts';
import type { Compiled } from './compile.ts';
import type { InParts } from './in-parts.ts';
import type { Stand } from './sign-walk.ts';
import type { Standing } from './value.ts';

/** Fix classes less likely than this weigh nothing in what is best to do. Source: from-memory (judgement). */
const WEIGHS_NOTHING = 0.002;

export interface Likely {
  readonly compiled: Compiled;
  readonly standing: Standing;
  /** Places of the classes that are left, among all. */
  readonly classes: readonly number[];
}

/** The same with the likely fix classes and the open checks only; its chances are those of all. */
export const likelyOnly = (stand: Stand): Likely => atOnce(likelyInParts(stand));

/** The same a part at a time. */
export function* likelyInParts({ compiled, standing, belief }: Stand): InParts<Likely> {
  const { classes, classEnd, faults, harms, classCost, perCost } = compiled;
  const { chances, open } = standing;
  const kept: number[] = [];
  const places: number[] = [];
  const ends: number[] = [];
  const classOf: number[] = [];
  let from = 0;
  for (const [at, end] of classEnd.entries()) {
    let sum = 0;
    for (let place = from; place < end; place++) sum += chances[place] ?? 0;
    if (sum >= WEIGHS_NOTHING) {
      for (let place = from; place < end; place++) {
        if (chances[place] === 0) continue;
        places.push(place);
        classOf.push(kept.length);
      }
      kept.push(at);
      ends.push(places.length);
    }
    from = end;
  }
  places.push(chances.length - 1);
  const placeOf = new Map(places.map((place, i) => [place, i]));
  return {
    classes: kept,
    compiled: {
      ...compiled,
      faults: places.flatMap((place) => faults[place] ?? []),
      classes: kept.flatMap((at) => classes[at] ?? []),
      classEnd: Int32Array.from(ends),
      classOf: Int32Array.from([...classOf, -1]),
      classCost: Float64Array.from(kept, (at) => classCost[at] ?? 0),
      perCost: Float64Array.from(kept, (at) => perCost[at] ?? 0),
      harms: kept.map((at) => (harms[at] ?? []).flatMap((place) => placeOf.get(place) ?? [])),
      likelihood: yield* belief.expect(places, open),
    },
    standing: { ...standing, chances: Float64Array.from(places, (place) => chances[place] ?? 0) },
  };
}
