// What every answer is drawn with.
import type { CautionWords, FixWords, Language, Numbers, Say } from '../../words/index.ts';

export interface AnswerProps {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly fixes: Readonly<Record<string, FixWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  readonly language: Language;
  /** Start of addresses below the language: `/en/`, with the base in front. */
  readonly home: string;
}
