// The shape of a model with signs between causes and checks: a cause says what the layout then shows, a check reads what it shows. Data only.
import type { FaultRow, LikelihoodWord, Precondition, Risk, Tool } from './model.ts';

/** Values with a word each; one that is not named is `never` there. Weights are normalised. */
export type Mix = Readonly<Partial<Record<string, LikelihoodWord>>>;

/** What a cause makes of a sign: a mix of its values, no different from a sound layout, or that by a circumstance or an earlier sign of the group. */
export type Shows = 'unaffected' | Mix | ShowsBy;

export interface ShowsBy {
  readonly by: string;
  /** One entry for each value of it. */
  readonly is: Readonly<Record<string, Shows>>;
}

/** One fact about the trouble that a person could in principle see. */
export interface SignRow {
  readonly id: string;
  /** At least two. */
  readonly values: readonly string[];
  /** The value of a layout without trouble. */
  readonly sound: string;
  /** What is met where the trouble does not touch the sign: mostly the sound value, now and then a chance one. */
  readonly unaffected: Mix;
  /** Signs of one group imply each other and are reckoned with in one joint table. */
  readonly group?: string;
  /** Found as it is while the trouble is well, too: a thing that lies open to the eye, or a trial that lasts until the trouble would have come. */
  readonly stands?: true;
}

/** A fact about the layout, not about the trouble: drawn once per layout, with a weight > 0 per value. */
export interface CircumstanceRow {
  readonly id: string;
  readonly values: Readonly<Record<string, number>>;
}

export interface SignCause extends FaultRow {
  /** Circumstances without which it cannot exist: those values only. */
  readonly needs?: Readonly<Record<string, readonly string[]>>;
  /** How often it is well just while one looks: checks made now find nothing then. Left out: it stands. */
  readonly well?: LikelihoodWord;
  /** Sign id to what it shows; a sign that is left out is unaffected, which is allowed for signs outside the core list only. */
  readonly shows: Readonly<Record<string, Shows>>;
}

/** Where an answer comes from: readings of one sign from one source share their slip. */
export const SOURCES = ['memory', 'eye', 'instrument'] as const;
export type Source = (typeof SOURCES)[number];

/** What a person says for a true value: one option, or a mix of options. */
export type Gives = string | Mix;

/** What is said where these signs have one of these values; the first line that fits counts. */
export interface Line {
  readonly where: Readonly<Record<string, readonly string[]>>;
  readonly gives: Gives;
}

/** For each value of the sign what is said, or lines over several signs of one group; or either by a circumstance. */
export type Reading = Readonly<Record<string, Gives>> | readonly Line[] | ReadingBy;

export interface ReadingBy {
  readonly by: string;
  readonly is: Readonly<Record<string, Reading>>;
}

export interface SignCheck {
  readonly id: string;
  /** Minutes > 0. */
  readonly minutes: number;
  readonly tool: Tool;
  /** Whatever else it needs at hand. */
  readonly also?: readonly Tool[];
  readonly risk: Risk;
  readonly needs: readonly Precondition[];
  readonly source: Source;
  /** A sign, signs of one group, or a circumstance. */
  readonly reads: string | readonly string[];
  /** At least two. */
  readonly options: readonly string[];
  readonly reading: Reading;
  /** Share of people who cannot tell though they try, 0 to below 1: it makes the check dearer, it never counts as an answer. */
  readonly unsure?: number;
  readonly danger?: Readonly<Record<string, string>>;
  readonly first?: boolean;
  readonly establishes?: Readonly<Record<string, readonly Precondition[]>>;
  readonly acts?: readonly string[];
  readonly withheld?: boolean;
  readonly forbids?: Readonly<Record<string, readonly string[]>>;
}

/** A plug, a setting, a look; work on the track or on wires; something bought, sent in or cut for good. */
export type Price = 'cheap' | 'work' | 'dear';

/** What people come with: a title that reads a few signs, and how often each cause stands behind it. */
export interface OpeningRow {
  readonly id: string;
  /** How often it is tapped, weight > 0. */
  readonly often: number;
  /** Cause id to a weight > 0; normalised. */
  readonly shares: Readonly<Record<string, number>>;
  /** Sign id to the values that its title says. */
  readonly says: Readonly<Record<string, readonly string[]>>;
  /** Checks that are never asked here, though an answer that is known counts. */
  readonly withheld?: readonly string[];
  /** Check id to what must have been shown before it is asked here, beyond what it needs anyway. */
  readonly needs?: Readonly<Record<string, readonly Precondition[]>>;
  /** Asked straight after what is asked first. */
  readonly lead?: string;
}

export interface SignModel {
  readonly signs: readonly SignRow[];
  readonly circumstances: readonly CircumstanceRow[];
  readonly causes: readonly SignCause[];
  readonly checks: readonly SignCheck[];
  readonly openings: readonly OpeningRow[];
  /** Sign ids of which every cause says something. */
  readonly core: readonly string[];
  /** Fix class to what a try of it asks for; a class without an entry is `work`. */
  readonly prices?: Readonly<Record<string, Price>>;
  /** Fix class to causes under which doing it harms: it is not proposed while one of them is still possible. */
  readonly harms?: Readonly<Record<string, readonly string[]>>;
}
