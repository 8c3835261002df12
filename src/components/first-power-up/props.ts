// What the walk through a test sheet is drawn with.
import type { CautionWords } from '../words/index.ts';

interface TestWords {
  readonly title: string;
  readonly how: readonly string[];
  readonly cautions: readonly string[];
  /** Id of its picture, where it has one. */
  readonly picture?: string | undefined;
  readonly options: Readonly<Record<string, { readonly label: string; readonly hint?: string | undefined }>>;
}

export interface PowerUpProps {
  readonly language: string;
  /** The address of the language, ending in a slash. */
  readonly home: string;
  readonly words: Readonly<Record<string, string>>;
  /** Tests by kind, in the words of the walk that finds faults. */
  readonly tests: Readonly<Record<string, TestWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** Address of the styles that only pictures need. */
  readonly pictureStyles: string;
}
