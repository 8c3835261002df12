// What a network is made of, and why one has no solution.

export interface Branch {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Ohms, > 0; 0 makes both ends one node. */
  readonly ohms: number;
}

export interface Source {
  readonly id: string;
  readonly plus: string;
  readonly minus: string;
  /** Without load, volts. */
  readonly volts: number;
  /** Inner resistance, ohms, > 0. */
  readonly ohms: number;
  /** Gives no more than this, amperes, > 0; left out where there is no limit. What it takes in is not limited. */
  readonly limit?: number;
}

export interface Network {
  readonly branches: readonly Branch[];
  readonly sources: readonly Source[];
  /** Node at 0 V. */
  readonly reference: string;
}

/** Draws the same at any voltage, amperes from plus to minus; below 0 it feeds in. */
export interface CurrentLoad {
  readonly id: string;
  readonly plus: string;
  readonly minus: string;
  readonly amps: number;
}

/** Draws the more current the lower the voltage, watts, >= 0. */
export interface PowerLoad {
  readonly id: string;
  readonly plus: string;
  readonly minus: string;
  readonly watts: number;
}

export type Load = CurrentLoad | PowerLoad;

/** Two nodes a train, a meter or a fault stands between. */
export type Pair = readonly [plus: string, minus: string];

/**
 * Why a network or its loads have no solution, and what `parts` names then:
 * `no-source`: nothing feeds it (nothing named). `unconnected`: branches and sources without a path to the reference. `zero-loop`: branches
 * and sources of 0 ohms that form a loop, so that no current through them can be told. `bad-ohms`, `bad-volts`, `bad-limit`: what carries a
 * value that is not a number, out of range or beyond `LARGEST`. `too-far-apart`: the least and the greatest resistance, too unlike to
 * compute with. `same-id`: ids given twice. `bad-load`: loads that are not a number, negative watts or beyond `LARGEST`. `unknown-node`: the
 * load, or nothing for the reference, then the node that no branch or source ends at. `no-operating-point`: the load that no voltage
 * can satisfy, then the sources at their limit. `limit-reached`: sources that would have to give more than their limit. `no-section`: no
 * section was named.
 */
export const NETWORK_REASONS = [
  'no-source',
  'unconnected',
  'zero-loop',
  'bad-ohms',
  'bad-volts',
  'bad-limit',
  'too-far-apart',
  'same-id',
  'bad-load',
  'unknown-node',
  'no-operating-point',
  'limit-reached',
  'no-section',
] as const;
export type NetworkReason = (typeof NETWORK_REASONS)[number];

export interface NetworkProblem {
  readonly kind: 'no-solution';
  readonly because: NetworkReason;
  readonly parts: readonly string[];
}

/** Volts, amperes, watts and ohms beyond this are taken for slips. Source: own-choice. */
export const LARGEST = 1e12;

export const problem = (because: NetworkReason, parts: readonly string[]): NetworkProblem => ({
  kind: 'no-solution',
  because,
  parts,
});

/** A number, and not a slip. */
export const sound = (value: number) => Math.abs(value) <= LARGEST;
export const positive = (value: number) => value > 0 && sound(value);
/** Ohms that can be reckoned with, 0 apart. */
export const conducts = (ohms: number) => positive(ohms) && ohms >= 1 / LARGEST;

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
