// How a fix is shown, on its own page, at the end of a wizard and in a walk: its steps, their cautions, its proof.
export { Caution } from './Caution.tsx';
export { formsOf } from './forms.ts';
export { outdoors } from './outdoors.ts';
export { StepByStep } from './StepByStep.tsx';
export { Steps } from './Steps.tsx';
export { together } from './together.ts';
export { Verify } from './Verify.tsx';
