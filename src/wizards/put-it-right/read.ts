// What was read, and is no chance.
import type { FixClass } from './model/index.ts';
import type { Known } from './step.ts';

/** What a label says for certain: an answer that was read leads to its fix, and is no chance. */
const READ: Readonly<Record<string, FixClass>> = {
  'volts-differ': 'voltage-step',
  'wrong-kind': 'wrong-supply-kind',
  'too-few-amps': 'supply-too-small',
  'unit-too-big': 'protection-set-wrong',
};

/** Whether a fix is proposed because a label was read that asks for it. */
export const isRead = ({ answers }: Pick<Known, 'answers'>, fixClass: string): boolean =>
  answers.some(({ check, option }) => check === 'read-labels' && READ[option] === fixClass);
