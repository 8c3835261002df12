// Divides where some gaps lie too near each other: a division that makes both is tried again with the one of them kept, and with the other.
import type { Deepening } from './deepen.ts';
import { deepen } from './deepen.ts';
import { divisionOf } from './division.ts';
import type { Divided, Dividing, Division, DivisionProblem, Proof } from './problem.ts';
import type { Whole } from './whole.ts';

/** What comes of a search: a division, or that there is none; nothing of the reason. */
export type Sought =
  | Exclude<Divided, { kind: 'impossible' }>
  | { readonly kind: 'none'; readonly order: readonly number[] };

/** A division, with the joints that were kept besides. */
interface Try {
  readonly keep: ReadonlySet<number>;
  readonly division: Division;
  readonly atLeast: number;
}

/** Most ways of keeping one of two gaps that are tried. Source: own-choice. */
const MOST_TRIES = 400;

/** How each try is looked through, in an order that is known. */
interface OrderedDeepening extends Deepening {
  readonly order: readonly number[];
}

export class Search {
  readonly #problem: DivisionProblem;
  readonly #whole: Whole;
  readonly #deepening: OrderedDeepening;
  /** The cheapest first, the more even one among those that cost the same: without pairs it is what is sought. */
  #tries: readonly Try[] = [];
  #count = 0;
  #proven = true;
  /** What divisions cost at least that were not found. */
  #unfound = Number.POSITIVE_INFINITY;

  constructor(problem: DivisionProblem, whole: Whole, deepening: OrderedDeepening) {
    this.#problem = problem;
    this.#whole = whole;
    this.#deepening = deepening;
  }

  *run(): Dividing<Sought> {
    yield* this.#look(onlyKept(this.#problem));
    for (;;) {
      const [best, ...others] = this.#tries;
      if (best === undefined) return this.#nothing();
      const both = this.#bothGaps(best.division);
      if (both === undefined) return { kind: 'divided', division: best.division, proof: this.#proof() };
      if (this.#count >= MOST_TRIES) return { kind: 'not-found', atLeast: best.atLeast };
      this.#tries = others;
      // Neither is there in any case: of such a pair the other one is kept from the start.
      for (const joint of both) yield* this.#look(new Set([...best.keep, joint]));
    }
  }

  *#look(keep: ReadonlySet<number>): Dividing<void> {
    this.#count++;
    const { kept, atLeast: units, proven } = yield* deepen(keeping(this.#whole, keep), this.#deepening);
    const atLeast = units / this.#whole.costUnits;
    this.#proven &&= proven;
    const division = kept === undefined ? undefined : divisionOf(this.#problem, this.#whole, kept);
    if (division === undefined) {
      if (!proven) this.#unfound = Math.min(this.#unfound, atLeast);
      return;
    }
    const one = { keep, division, atLeast: proven ? division.cost : atLeast };
    this.#tries = [...this.#tries, one].sort(
      (a, b) => a.division.cost - b.division.cost || a.division.busiest - b.division.busiest,
    );
  }

  #nothing(): Sought {
    if (this.#proven) return { kind: 'none', order: this.#deepening.order };
    return { kind: 'not-found', atLeast: Number.isFinite(this.#unfound) ? this.#unfound : 0 };
  }

  #proof(): Proof {
    if (this.#proven) return { kind: 'proven' };
    return { kind: 'found', atLeast: Math.min(this.#unfound, ...this.#tries.map(({ atLeast }) => atLeast)) };
  }

  /** Two gaps that lie too near each other. */
  #bothGaps({ cuts }: Division): readonly [number, number] | undefined {
    return this.#problem.conflicts?.find((pair) => pair.every((joint) => cuts.includes(joint)));
  }
}

/** Joints that are kept since the other one of a pair is cut in any case. */
function onlyKept({ joints, conflicts = [] }: DivisionProblem): ReadonlySet<number> {
  const isCut = (joint: number): boolean => joints[joint]?.gap === 'cut';
  return new Set(
    conflicts.flatMap(([one, other]) => {
      if (isCut(one) === isCut(other)) return [];
      return [isCut(one) ? other : one];
    }),
  );
}

const keeping = (whole: Whole, keep: ReadonlySet<number>): Whole => ({
  ...whole,
  links: whole.links.map((link) => (keep.has(link.joint) ? { ...link, kept: true } : link)),
});
