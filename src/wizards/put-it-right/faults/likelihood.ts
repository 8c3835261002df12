// The five words as names, and a short way to write "these faults answer alike".
import type { LikelihoodWord } from '../../../engine/index.ts';
import type { FaultId } from './faults.ts';

export const always = 'always' satisfies LikelihoodWord;
export const usually = 'usually' satisfies LikelihoodWord;
export const sometimes = 'sometimes' satisfies LikelihoodWord;
export const rarely = 'rarely' satisfies LikelihoodWord;
export const never = 'never' satisfies LikelihoodWord;

export type Line = readonly [words: readonly LikelihoodWord[], ...faults: FaultId[]];

/** Words per option for each named fault. A later line overrides an earlier one: first the group, then its exceptions. */
export const rows = (...lines: readonly [Line, ...Line[]]): Readonly<Record<string, readonly LikelihoodWord[]>> =>
  Object.fromEntries(lines.flatMap(([words, ...faults]) => faults.map((fault) => [fault, words] as const)));
