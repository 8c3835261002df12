// What may be wrong with a sheet that is one, part by part.

/** The parts of a sheet that are lists, and so told by their place in them. */
export const LISTS = ['trains', 'sections', 'joints', 'stages', 'supplies', 'districts'] as const;
export type List = (typeof LISTS)[number];

/** Why a part was left out or changed. */
export type FlawReason =
  | 'not-allowed'
  | 'twice'
  | 'taken'
  | 'names-nothing'
  | 'to-itself'
  | 'first-no-station'
  | 'second-station'
  | 'not-whole'
  | 'left-out'
  | 'too-many';

/** One part that was not read: a field of the sheet, or of the entry `at` (from 1) of a list, or that whole entry. */
export interface Flaw {
  readonly why: FlawReason;
  readonly list?: List;
  readonly at?: number;
  readonly field?: string;
  /** The mark that is there twice, that another section has already, or that names nothing; of what was left out, what stood there. */
  readonly mark?: string;
}
