// Repairs in the order that costs least, where each repair mends one cause and its work does not depend on what was tried.

function inOrderOf(values: readonly number[]): number[] {
  return values.map((_, i) => i).sort((a, b) => (values[b] ?? 0) - (values[a] ?? 0) || a - b);
}

function sameLength(chances: readonly number[], costs: readonly number[]): void {
  if (chances.length !== costs.length) {
    throw new RangeError(`${chances.length} chances, but ${costs.length} costs`);
  }
}

/**
 * Order of trying repairs that costs least on average: chance per cost, highest first; ties in the order given.
 * `chances` 0 to 1, `costs` > 0 in any one unit. Returns places in the lists, from 0.
 * Source: Kadane and Simon 1977; Heckerman, Breese and Rommelse 1995.
 */
export function orderByChancePerCost(chances: readonly number[], costs: readonly number[]): number[] {
  sameLength(chances, costs);
  return inOrderOf(chances.map((chance, i) => chance / (costs[i] ?? 1)));
}

/** Average cost of trying all repairs in the order given until one helps, in the unit of `costs`. */
export function costOfOrder(chances: readonly number[], costs: readonly number[], order: readonly number[]): number {
  let remaining = chances.reduce((sum, chance) => sum + chance, 0);
  let cost = 0;
  for (const i of order) {
    cost += remaining * (costs[i] ?? 0);
    remaining -= chances[i] ?? 0;
  }
  return cost;
}

export interface RepairPlan {
  /** Repairs to try, in this order, as places in the lists; what comes after them is left to the call for help. */
  readonly order: readonly number[];
  /** Average cost, in the unit of `costs`. */
  readonly cost: number;
}

/**
 * The cheapest plan of repairs and its average cost. With `callService` (a cost, same unit) help can be called at any
 * point and settles whatever is left: the best point is found among all, as a repair may pay only with those after it.
 * Chances need not add up to 1; with `callService` what is missing to 1 is a cause that only help can settle.
 * Source: chance per cost as above; the call from V. Lin on troubleshooting as scheduling, own derivation of the point.
 */
export function expectedCostOfRepair(
  chances: readonly number[],
  costs: readonly number[],
  callService?: number,
): RepairPlan {
  const all = orderByChancePerCost(chances, costs);
  if (callService === undefined) return { order: all, cost: costOfOrder(chances, costs, all) };
  const ends = all.map((_, i) => withCall(chances, costs, callService, all.slice(0, i + 1)));
  const start: RepairPlan = { order: [], cost: callService };
  return ends.reduce((best, end) => (end.cost < best.cost ? end : best), start);
}

function withCall(
  chances: readonly number[],
  costs: readonly number[],
  callService: number,
  order: readonly number[],
): RepairPlan {
  const mended = order.reduce((sum, i) => sum + (chances[i] ?? 0), 0);
  const all = chances.reduce((sum, chance) => sum + chance, 0);
  const missing = (1 - all) * order.reduce((sum, i) => sum + (costs[i] ?? 0), 0);
  return { order, cost: costOfOrder(chances, costs, order) + missing + (1 - mended) * callService };
}

/**
 * The cheapest order where only the cause has to be known: the last one left is inferred and never tested, so its test
 * is saved. Plain chance per cost misses that. Tries each cause as the untested last. Shape and units as above.
 * Source: own derivation.
 */
export function optimalIdentificationOrder(chances: readonly number[], costs: readonly number[]): RepairPlan {
  const all = orderByChancePerCost(chances, costs);
  let best: RepairPlan = { order: [], cost: 0 };
  for (const [round, last] of all.entries()) {
    const order = all.filter((i) => i !== last);
    const cost = costOfOrder(chances, costs, order);
    if (round === 0 || cost < best.cost) best = { order, cost };
  }
  return best;
}
