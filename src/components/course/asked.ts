// Questions with new numbers: fetched once somebody asks for other numbers than the first.
import type { CheckKind } from '../../engine/index.ts';
import { courseCheck } from '../../engine/index.ts';

/** What a question of this kind asks with the numbers of a seed. */
export const askedWith = (kind: CheckKind, seed: number) => courseCheck(kind, seed);
