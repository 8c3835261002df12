// What this room lets out.
export { WHICH_SUPPLY_QUESTIONS, whichSupplyWhere } from './flow.ts';
export type { Placement } from './result.ts';
export { crossingAdvice, placeSupplies } from './result.ts';
