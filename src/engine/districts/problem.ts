// What is divided, and what comes of it. Sections are nodes of a graph, joints its edges; whatever is named is named by its place in its list.
import type { Evenness } from '../power/index.ts';

export interface DivisionSection {
  /** Its part of the traffic, by any measure: shares are put in proportion to each other. >= 0; kept to a thousandth. */
  readonly traffic: number;
  /** What is always on here, amperes >= 0; kept to 10 mA, rounded up. */
  readonly fixedAmps?: number | undefined;
}

export interface DivisionJoint {
  readonly a: number;
  readonly b: number;
  /** What a gap here costs, >= 0: number of gaps times how awkward they are; 0 where there is a gap in any case. Kept to a thousandth. */
  readonly cost: number;
  /** `free`: both ends may belong to two districts. `kept`: they never do. `cut`: there is a gap, and it joins nothing. */
  readonly gap: 'free' | 'kept' | 'cut';
}

/**
 * A stage, and with it a district.
 */
export interface DivisionStage {
  /**
   * Whether it bears so much of the traffic (0 to 1) and so many amperes that are always on. More of either never makes it pass. Stages
   * that are alike share one and the same function.
   */
  readonly bears: (share: number, fixedAmps: number) => boolean;
  /** What it can give, amperes: of stages that would be used alike the one that can give more gets the busier district. Left out: 0. */
  readonly usable?: number | undefined;
  /** Sections that are its own in any case. */
  readonly feeds?: readonly number[] | undefined;
}

export interface DivisionProblem {
  readonly sections: readonly DivisionSection[];
  readonly joints: readonly DivisionJoint[];
  /** One district each; 1 to 12. */
  readonly stages: readonly DivisionStage[];
  /** Pairs of joints that are not both gaps between districts: a train would span them. */
  readonly conflicts?: readonly (readonly [number, number])[] | undefined;
}

export interface DivisionOptions {
  /** How far each district may be from the share that fits its stage, as a share of it (0.1: ten per cent). Left out: as far as stages bear. */
  readonly tolerance?: number | undefined;
  /** Every district has at least this part of the share that fits its stage, 0 to 1. */
  readonly least?: number | undefined;
  /** No district is fuller than this, 1 being all that its stage bears. */
  readonly fullest?: number | undefined;
}

export interface Division {
  /** Sections of each stage's district, in the order of the stages. */
  readonly parts: readonly (readonly number[])[];
  /** Joints between two districts, and those that are cut in any case. */
  readonly cuts: readonly number[];
  /** Sum over the joints between two districts. */
  readonly cost: number;
  /** Share of the traffic of each district, 0 to 1. */
  readonly shares: readonly number[];
  /** The largest share that its stage would bear with what is always on there, 0 to 1. */
  readonly most: readonly number[];
  /** Busiest district against one that is used as evenly as the stages allow: 1 is even. */
  readonly busiest: number;
  readonly evenness: Evenness;
}

/**
 * What no division gets round. With each of them left out by itself there would be one.
 */
export type Hindrance =
  /** All stages together bear less than there is. */
  | { readonly kind: 'too-much'; readonly bearable: number }
  /** One stretch is more than any stage bears: it has to be parted first. */
  | { readonly kind: 'one-section'; readonly section: number }
  /** Fewer sections than districts. */
  | { readonly kind: 'few-sections' }
  /** Stretches that no joint joins: more of them than districts. One section of each. */
  | { readonly kind: 'islands'; readonly sections: readonly number[] }
  /** Feeds of two stages on track that no gap may part. */
  | { readonly kind: 'feeds'; readonly sections: readonly number[] }
  /** Joints that may not be cut. */
  | { readonly kind: 'kept'; readonly joints: readonly number[] }
  /** Gaps that lie too near each other. */
  | { readonly kind: 'near'; readonly joints: readonly number[] }
  /** No division is as even as was wanted. */
  | { readonly kind: 'tolerance' };

/**
 * How sure it is. `found`: none costs less than `atLeast`, and whether one costs less than this is not known.
 */
export type Proof = { readonly kind: 'proven' } | { readonly kind: 'found'; readonly atLeast: number };

export type Divided =
  | { readonly kind: 'divided'; readonly division: Division; readonly proof: Proof }
  /** `nearest`: the most even one, which asks more of a stage than it bears. */
  | { readonly kind: 'impossible'; readonly because: readonly Hindrance[]; readonly nearest?: Division | undefined }
  /** Too large to be looked through: none was found, and none costs less than `atLeast`. */
  | { readonly kind: 'not-found'; readonly atLeast: number };

/**
 * How far it is: what gaps are tried to cost at most, and how much of that try is done, 0 to 1.
 */
export interface DivisionProgress {
  readonly cost: number;
  readonly done: number;
}

/**
 * Dividing a part at a time: whoever does it may look at the clock, tell how far it is, or stop.
 */
export type Dividing<Made> = Generator<DivisionProgress, Made>;

/**
 * Several ways, from the fewest gaps to the most even use, none of them worse than another in both.
 */
export type DivisionChoice =
  | { readonly kind: 'choice'; readonly ways: readonly { readonly division: Division; readonly proof: Proof }[] }
  | Exclude<Divided, { kind: 'divided' }>;
