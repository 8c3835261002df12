// Readers look at fetched words once, at the door.
import type { FetchedFix, WalkWords } from './words.ts';

// What checks shapes weighs more than the first question, so it comes with the words it checks.
export const readWalkWords = async (value: unknown): Promise<WalkWords> =>
  (await import('./word-shapes.ts')).readWalkWords(value);
export const readFix = async (value: unknown): Promise<FetchedFix> => (await import('./word-shapes.ts')).readFix(value);
