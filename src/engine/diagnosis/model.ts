// The words of a model, and what every cause and every check has. Data only.

export const LIKELIHOOD_WORDS = ['always', 'usually', 'sometimes', 'rarely', 'never'] as const;
export type LikelihoodWord = (typeof LIKELIHOOD_WORDS)[number];

/** The five words as chances. Source: from-memory (judgement, changeable). */
export const WORD_CHANCE: Readonly<Record<LikelihoodWord, number>> = {
  always: 0.97,
  usually: 0.8,
  sometimes: 0.3,
  rarely: 0.07,
  never: 0.01,
};

/** What a check or a fix needs at hand. */
export const TOOLS = [
  'eyes',
  'wire',
  'coin',
  'lamps',
  'second-locomotive',
  'second-supply',
  'resistor',
  'multimeter',
  'strong-lamp',
] as const;
export type Tool = (typeof TOOLS)[number];

/** What must hold before a check is offered; each is worded on the page as a line to do first. */
export const PRECONDITIONS = [
  'power-off',
  'vehicles-off',
  'nothing-got-hot',
  'all-unplugged',
  'load-test-passed',
  'labels-read',
  'parts-agree',
  'a-gap-there',
  'several-parts',
  'throttles-on-a-cable',
] as const;
export type Precondition = (typeof PRECONDITIONS)[number];

/** What a layout is like, and nothing that makes a check safe: a link may say it, and no line asks for it. */
export const OF_THE_LAYOUT = [
  'a-gap-there',
  'several-parts',
  'throttles-on-a-cable',
] as const satisfies readonly Precondition[];

/** 0 none, 1 a little care, 2 can damage something, 3 can burn. Counted as minutes. */
export type Risk = 0 | 1 | 2 | 3;

export interface FaultRow {
  readonly id: string;
  /** Faults of one class are one finding: one fix page, one repair. */
  readonly fixClass: string;
  /** Work of the repair with its proof, minutes > 0. */
  readonly minutes: number;
}

export interface CheckRow {
  readonly id: string;
  /** Minutes > 0. */
  readonly minutes: number;
  readonly tool: Tool;
  /** Whatever else it needs at hand. */
  readonly also?: readonly Tool[];
  readonly risk: Risk;
  readonly needs: readonly Precondition[];
  /** Option ids, at least two. */
  readonly options: readonly string[];
  /** An option that means danger: it ends the walk at once in this fix class. */
  readonly danger?: Readonly<Record<string, string>>;
  /** Asked before everything else, whatever it costs. */
  readonly first?: boolean;
  /** An option that shows a precondition of other checks to hold, such as `{ no: ['nothing-got-hot'] }`. */
  readonly establishes?: Readonly<Record<string, readonly Precondition[]>>;
  /** What it makes people do, by any names. */
  readonly acts?: readonly string[];
  /** Never asked, though an answer that is already known counts. */
  readonly withheld?: boolean;
  /** An option after which no check with one of these acts is offered any more. */
  readonly forbids?: Readonly<Record<string, readonly string[]>>;
}

/** The cause that no row describes: never repaired by a fix of ours, so that an honest end is possible. */
export const SOMETHING_ELSE = 'something-else';
