// What this room lets out.
export { whichSupplyWhere } from './flow.ts';
export { BESIDE_THE_OUTCOME, WHICH_SUPPLY_OUTCOMES } from './outcomes.ts';
export type { CrossingRow, Placement } from './result.ts';
export { crossingAdvice, crossingRows, forbiddenIn, placeSupplies } from './result.ts';
