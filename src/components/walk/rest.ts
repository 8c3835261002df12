// Everything of a walk but its first question and what to do in danger: loaded once that is answered.
export { modelReady, soon } from './ready.ts';
export { WalkOn } from './WalkOn.tsx';
export { readWalkWords, wholeWords } from './word-shapes.ts';
