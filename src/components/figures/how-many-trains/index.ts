// What this room lets out.
export { LARGER_START, largerSupply, TRAINS_START, trainsOn } from './models.ts';
export { default } from './TrainsFigure.tsx';
