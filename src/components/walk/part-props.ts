// What every part of a walk is drawn with.
import type { Numbers, Say } from '../words/index.ts';
import type { WalkWords } from './words.ts';

export interface PartProps {
  readonly say: Say;
  readonly numbers: Numbers;
  /** Tag by which numbers, plurals and sentences are written. */
  readonly language: string;
  readonly home: string;
  readonly cautions: WalkWords['cautions'];
  /** Address of the styles of pictures. */
  readonly pictureStyles: string;
}
