// What this room lets out.
export { TRAIN_ACROSS_START, type TrainAcrossSettings, trainAcross } from './model.ts';
export { default } from './TrainAcross.tsx';
