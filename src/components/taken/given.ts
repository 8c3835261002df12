// What taking answers into a layout sheet is given.
import type { takenInto } from '../../wizards/share-out/index.ts';
import type { Say } from '../words/index.ts';

export interface TakeInProps {
  readonly say: Say;
  /** Where the pages of this language begin. */
  readonly home: string;
  /** What lays the answers into a sheet, where they tell of its track. */
  readonly into?: ((...given: Parameters<typeof takenInto>) => Promise<ReturnType<typeof takenInto>>) | undefined;
}
