// What this room lets out.

export type { Alike, UnitId, Wanted } from './alike.ts';
export { whichSupplyWhere } from './flow.ts';
export { BESIDE_THE_OUTCOME, WHICH_SUPPLY_OUTCOMES } from './outcomes.ts';
export type { CrossingRow, Placement } from './result.ts';
export { crossingAdvice, crossingRows, forbiddenIn, otherWayFails, placeSupplies } from './result.ts';
