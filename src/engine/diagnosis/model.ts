// The shape of a fault model: what can be wrong, what can be checked, and how likely each answer is. Data only.

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
] as const;
export type Precondition = (typeof PRECONDITIONS)[number];

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
  readonly risk: Risk;
  readonly needs: readonly Precondition[];
  /** Option ids, at least two. */
  readonly options: readonly string[];
  /** Words per option for faults that are not listed in `when`. */
  readonly otherwise: readonly LikelihoodWord[];
  /** Fault id to words per option, same order and length as `options`. Weights are normalised per fault. */
  readonly when: Readonly<Record<string, readonly LikelihoodWord[]>>;
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

export interface ComplaintRow {
  readonly id: string;
  /** Shares before any answer, fault id to a positive weight; normalised. `something-else` stands for what the model lacks. */
  readonly priors: Readonly<Record<string, number>>;
}

export interface FaultModel {
  readonly faults: readonly FaultRow[];
  readonly checks: readonly CheckRow[];
  readonly complaints: readonly ComplaintRow[];
  /** Fix class to faults under which doing it harms: it is not proposed while one of them is still possible. */
  readonly harms?: Readonly<Record<string, readonly string[]>>;
}

/** The cause that no row describes: never repaired by a fix of ours, so that an honest end is possible. */
export const SOMETHING_ELSE = 'something-else';
