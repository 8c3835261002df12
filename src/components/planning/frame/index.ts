// What this room lets out.

export type { AnswerProps } from './answer-props.ts';
export type { WizardProps, WorkedOutProps } from './Frame.tsx';
export { Frame } from './Frame.tsx';
export { Assumed } from './KnownAnswers.tsx';
export { useReckoned } from './reckon.ts';
export { Workings } from './Workings.tsx';
