// What this room lets out.
export type { WizardProps, WorkedOutProps } from './Frame.tsx';
export { Frame } from './Frame.tsx';
export { Assumed } from './KnownAnswers.tsx';
export type { AnswerProps } from './parts.tsx';
export { Share, Verify, Workings } from './parts.tsx';
export { useReckoned } from './reckon.ts';
export { Steps } from './Steps.tsx';
