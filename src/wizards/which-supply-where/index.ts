// What this room lets out.
export { WHICH_SUPPLY_QUESTIONS, whichSupplyWhere } from './flow.ts';
export type { CrossingRow, Placement } from './result.ts';
export { crossingAdvice, crossingRows, placeSupplies } from './result.ts';
