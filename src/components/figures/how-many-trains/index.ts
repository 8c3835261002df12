// What this room lets out.
export { default } from './TrainsFigure.tsx';
