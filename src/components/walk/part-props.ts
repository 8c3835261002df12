// What every part of a walk is drawn with.
import type { ComponentType } from 'preact';
import type { Numbers, Say } from '../words/index.ts';
import type { WalkWords } from './words.ts';

export interface PictureProps {
  readonly id: string;
  readonly say: Say;
}

export interface PartProps {
  readonly say: Say;
  readonly numbers: Numbers;
  /** Tag by which numbers, plurals and sentences are written. */
  readonly language: string;
  readonly home: string;
  readonly cautions: WalkWords['cautions'];
  /** Undefined until it has been loaded. */
  readonly Picture: ComponentType<PictureProps> | undefined;
}
