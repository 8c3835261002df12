// What every answer is drawn with.
import type { CautionWords, FixWords, Numbers, Say } from '../../words/index.ts';

export interface AnswerProps {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** The layout may stand in a garden. */
  readonly inGarden: boolean;
  /** Tag by which numbers, plurals and sentences are written. */
  readonly language: string;
  /** Start of addresses below the language: `/en/`, with the base in front. */
  readonly home: string;
  /** The release that works it out; links to the answer carry it. */
  readonly release: string;
}
