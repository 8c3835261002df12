// Four of the five words as names: what never happens is left out.
import type { LikelihoodWord } from '../../../engine/index.ts';

export const always = 'always' satisfies LikelihoodWord;
export const usually = 'usually' satisfies LikelihoodWord;
export const sometimes = 'sometimes' satisfies LikelihoodWord;
export const rarely = 'rarely' satisfies LikelihoodWord;
