// What this room lets out.

export type { Free, Tone } from './AnswerPage.tsx';
export { AnswerPage } from './AnswerPage.tsx';
export type { AnswerProps } from './answer-props.ts';
export { costWords } from './cost-words.ts';
export type { WizardProps, WorkedOutProps } from './Frame.tsx';
export { Frame } from './Frame.tsx';
export { Assumed, assumedLines } from './KnownAnswers.tsx';
export { outOfReachSaid } from './out-of-reach.ts';
export { useReckoned } from './reckon.ts';
export { Surer } from './Surer.tsx';
export { Trial, TrialResult, useSettled, useTrial } from './Trial.tsx';
export { isTripTest, tripTest } from './trip-test.ts';
export { Workings } from './Workings.tsx';
