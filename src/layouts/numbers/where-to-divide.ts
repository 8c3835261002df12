// Numbers of the lesson where-to-divide: eight trains on two units of 3 A, shared out badly and less badly.
import { DIVIDED_START, dividedParts } from '../../components/figures/how-many-trains/index.ts';
import type { Written } from './written.ts';

/** How often the first part is above its usable current. */
const aboveWith = (here: number, there: number): number => {
  const [part] = dividedParts({ ...DIVIDED_START, a: 3, b: 3, here, there });
  if (part === undefined) throw new Error('A divided layout without parts');
  return part.judgement.aboveUsable;
};

export const WHERE_TO_DIVIDE: Written = {
  'all-eight-here': (numbers) => numbers.share(aboveWith(8, 0)),
  'seven-here': (numbers) => numbers.share(aboveWith(7, 1)),
  'six-here': (numbers) => numbers.share(aboveWith(6, 2)),
};
