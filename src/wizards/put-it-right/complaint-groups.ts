// What people come with, in groups: whoever looks for theirs reads seven lines, then eight at most.
import type { ComplaintId, ENDS_AT_ONCE } from './model/index.ts';

interface ComplaintGroup {
  readonly id: string;
  /** The commonest first. */
  readonly complaints: readonly (ComplaintId | keyof typeof ENDS_AT_ONCE)[];
}

/** Danger first, whether often or not; the last group is for whom no other fits. Words: `put-right-group-<id>`. */
export const COMPLAINT_GROUPS = [
  { id: 'danger', complaints: ['short-not-noticed', 'house-protection-goes', 'tingles'] },
  {
    id: 'switches-off',
    complaints: [
      'trips-at-power-on',
      'trips-at-gap',
      'trips-with-traffic',
      'trips-at-one-spot',
      'loop-trips',
      'cuts-out-after-a-while',
      'now-and-then',
      'trips-when-set-on',
    ],
  },
  { id: 'stands-still', complaints: ['stops-at-gap', 'stops-at-a-spot', 'nothing-works', 'short-in-mid-run'] },
  { id: 'runs-badly', complaints: ['one-locomotive-only', 'slow-far-away', 'jerks-at-gap', 'all-slow'] },
  { id: 'does-not-obey', complaints: ['ignores-commands', 'starts-by-itself', 'still-runs-past-gap'] },
  {
    id: 'beside-the-trains',
    complaints: ['accessories-misbehave', 'handhelds-dead', 'empty-shown-occupied', 'programming-fails'],
  },
  {
    id: 'since-or-else',
    complaints: ['since-rewired', 'shuts-down-after-swap', 'dead-since-a-short', 'wrong-one-trips', 'none-of-these'],
  },
] as const satisfies readonly ComplaintGroup[];
