// What this room lets out.
export { DIVIDED_START, dividedParts, LARGER_START, largerSupply, TRAINS_START, trainsOn } from './models.ts';
export { default } from './TrainsFigure.tsx';
