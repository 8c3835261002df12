// Everything of a walk but its questions: loaded once the first of them is answered.
export { CheckPicture } from './CheckPicture.tsx';
export { HandedOn, Solved } from './Ends.tsx';
export { Equipping } from './Equipping.tsx';
export { Fixing, Proposing } from './Fix.tsx';
export { Possible } from './Possible.tsx';
export { Seen } from './Seen.tsx';
export { Verifying } from './Verifying.tsx';
