// What a network is made of, and why one has no solution.

export interface Branch {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Ohms, > 0; 0 makes both ends one node. */
  readonly ohms: number;
}

export interface Network {
  /** Wires, rails, and the inner resistance of each source: what a source pushes is no part of it. */
  readonly branches: readonly Branch[];
  readonly reference: string;
}

/** Two nodes a train, a meter or a fault stands between. */
export type Pair = readonly [plus: string, minus: string];

/**
 * Why a network has no solution, and what `parts` names then: `unconnected`: branches without a path to the reference. `bad-ohms`: branches
 * whose ohms are no number, below 0 or beyond `LARGEST` either way. `too-far-apart`: the least and the greatest resistance, too unlike to
 * compute with. `same-id`: ids given twice. `unknown-node`: the reference, where no branch ends at it.
 */
type NetworkReason = 'unconnected' | 'bad-ohms' | 'too-far-apart' | 'same-id' | 'unknown-node';

export interface NetworkProblem {
  readonly kind: 'no-solution';
  readonly because: NetworkReason;
  readonly parts: readonly string[];
}

/** Ohms beyond this are taken for slips. Source: own-choice. */
const LARGEST = 1e12;

export const problem = (because: NetworkReason, parts: readonly string[]): NetworkProblem => ({
  kind: 'no-solution',
  because,
  parts,
});

/** Ohms that can be reckoned with, 0 apart. */
export const conducts = (ohms: number) => ohms >= 1 / LARGEST && ohms <= LARGEST;

export const ids = (parts: readonly { readonly id: string }[]) => parts.map(({ id }) => id);

/** Ids that stand more than once. */
export function repeated(parts: readonly { readonly id: string }[]): string[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const { id } of parts) {
    if (seen.has(id)) twice.add(id);
    seen.add(id);
  }
  return [...twice];
}
