// The words of an answer as they are fetched; looked at once, with the answer, so that the first question does not wait for it.
import * as v from 'valibot';
import type { AnswerWords } from '../../words/index.ts';
import { CAUTIONS, FIX, SENTENCES } from '../../words/index.ts';

const WORDS = v.object({ words: SENTENCES, fixes: v.record(v.string(), FIX), cautions: CAUTIONS });

/** Throws where anything is not of its shape. */
export const answerWordsIn = (fetched: unknown): AnswerWords => v.parse(WORDS, fetched);
