// The words of a walk: what a check says, what a fix says.
import type { CautionWords, FixWords } from '../words/index.ts';

/** How a check and its answers are called, in a list of what was told. */
export interface CheckNames {
  readonly known: string;
  readonly options: Readonly<Record<string, { readonly label: string }>>;
}

/** A whole question. */
export interface CheckWords extends CheckNames {
  readonly title: string;
  readonly why: string;
  readonly how: readonly string[];
  readonly cautions: readonly string[];
  readonly picture?: string | undefined;
  readonly options: Readonly<Record<string, { readonly label: string; readonly hint?: string | undefined }>>;
}

/** What a question says beside the names of its answers, which every walk has already. */
export interface AskedWords extends Omit<CheckWords, 'known' | 'options'> {
  /** By option, where it has one. */
  readonly hints: Readonly<Record<string, string>>;
}

/** A question that was fetched, with its cautions. */
export interface FetchedCheck {
  readonly check: AskedWords;
  readonly cautions: Readonly<Record<string, CautionWords>>;
}

export interface WalkWords {
  readonly words: Readonly<Record<string, string>>;
  readonly checks: Readonly<Record<string, CheckNames>>;
  /** The checks that have a picture. */
  readonly pictures: readonly string[];
  readonly cautions: Readonly<Record<string, CautionWords>>;
}

/**
 * The words of a walk as they are sent: of each check what it is called and then its answers, in the order of its row; of a cause no name where
 * its repair has the same.
 */
export interface SentWords extends Omit<WalkWords, 'checks'> {
  readonly checks: Readonly<Record<string, readonly string[]>>;
}

/** What comes with the page: checks that can be the first, and what to do where one of the answers means danger. */
export interface FirstWords {
  readonly checks: Readonly<Record<string, CheckWords>>;
  readonly cautions: WalkWords['cautions'];
  /** By fix class. */
  readonly dangers: Readonly<Record<string, DangerWords>>;
  /** The checks that can be the first: what a question is drawn from. */
  readonly rows: Readonly<Record<string, CheckRow>>;
  /** Fix class by `check=option`, for every answer that means danger: a link that holds one shows it first. */
  readonly dangersInLink: Readonly<Record<string, string>>;
  /** Their answers by which nothing is dangerous: they stand in no address. */
  readonly safe: readonly string[];
}

/** What a question is drawn from, beside its words. */
export interface CheckRow {
  readonly options: readonly string[];
  readonly needs: readonly string[];
  readonly minutes: number;
  readonly danger?: Readonly<Record<string, string>> | undefined;
}

export type DangerWords = Pick<FixWords, 'title' | 'steps'>;

export interface FetchedFix {
  /** The language of its words, where that is not the page's. */
  readonly lang?: string | undefined;
  readonly fix: FixWords;
  readonly cautions: Readonly<Record<string, CautionWords>>;
}
