// What this room lets out.
export { default } from './TrainAcross.tsx';
