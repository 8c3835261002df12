// What this room lets out.
export { default } from './AlongFigure.tsx';
