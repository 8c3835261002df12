// What this room lets out.
export { default } from './AlongFigure.tsx';
export { ALONG_START, planOf } from './model.ts';
