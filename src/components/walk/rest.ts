// Everything of a walk but its questions and what to do in danger: loaded once the first question is answered.
export { MadeThen } from '../link/index.ts';
export { CheckPicture } from './CheckPicture.tsx';
export { HandedOn, Solved } from './Ends.tsx';
export { Equipping } from './Equipping.tsx';
export { Fixing, Proposing } from './Fix.tsx';
export { Possible } from './Possible.tsx';
export { Seen } from './Seen.tsx';
export { Verifying } from './Verifying.tsx';
export { readWalkWords } from './word-shapes.ts';
