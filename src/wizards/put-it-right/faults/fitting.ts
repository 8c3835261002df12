// Which checks go with what people come with: a question about a reversing section, an accessory or a unit that is not connected yet would
// only be answered with "I cannot tell".
import type { CheckRow } from '../../../engine/index.ts';
import type { Forbidden } from './acts.ts';
import { ACTS_OF, FORBIDDEN_AFTER, FORBIDS } from './acts.ts';
import type { CheckId, ComplaintId } from './rows.ts';
import { ROWS } from './rows.ts';

/** Every check with what it makes people do. */
export const CHECKS = ROWS.map((row) => ({ ...row, acts: ACTS_OF[row.id], forbids: FORBIDDEN_AFTER[row.id] ?? {} }));

/** With the far part not yet connected nothing can be asked of its unit, its volts or its trains. */
export const BEFORE_FEEDING: readonly CheckId[] = [
  'danger-now',
  'which-vehicles',
  'last-change',
  'follow-every-wire',
  'joint-by-hand',
  'list-every-path',
  'card-through-gaps',
  'jumper-test',
  'coach-in-far-part',
  'other-locomotive-runs-on',
  'unplug-across-boundary',
  'follow-the-red-rail',
  'throw-turnouts',
  'unclip-feeders',
  'uncouple',
  'meter-across-the-gap',
];

/** Checks that make sense with these complaints only. */
const ONLY: Readonly<Partial<Record<CheckId, readonly ComplaintId[]>>> = {
  // There is a train in a reversing section only where that is the trouble.
  'short-locomotive-through-loop': ['loop-trips'],
  'does-it-reverse': ['loop-trips'],
  // What was never exchanged cannot be put back.
  'put-supplies-back': ['shuts-down-after-swap'],
  'accessories-own-supply': ['accessories-misbehave', 'trips-with-traffic'],
  'accessory-moment': ['accessories-misbehave', 'trips-with-traffic'],
};

/** Checks that make no sense with these complaints. */
const NOT: Readonly<Partial<Record<CheckId, readonly ComplaintId[]>>> = {
  // Where nothing runs, nothing is timed, shared out, thinned out or left to cool.
  'time-a-metre': ['stops-at-gap', 'trips-at-power-on', 'ignores-commands'],
  'move-trains-over': ['stops-at-gap', 'trips-at-power-on', 'ignores-commands'],
  'halve-the-trains': ['stops-at-gap', 'ignores-commands'],
  uncouple: ['trips-at-power-on', 'ignores-commands', 'slow-far-away'],
  'cool-air': ['stops-at-gap', 'trips-at-power-on', 'ignores-commands'],
  'lamps-at-the-jerk': ['trips-at-power-on', 'short-not-noticed'],
  // A reversing section changes its polarity: what is compared across its ends means nothing.
  // What goes off at switching on lets nobody compare the two parts or drive.
  'stand-across': ['loop-trips', 'trips-at-power-on'],
  'two-lamps': ['loop-trips', 'trips-at-power-on'],
  'meter-same-and-diagonal': ['loop-trips', 'trips-at-power-on'],
  'vehicle-in-far-part': ['trips-at-power-on'],
  'longer-locomotive': ['trips-at-power-on'],
};

/** Checks that are not worth a question with these complaints, though what is known of them counts. */
const UNASKED: Readonly<Partial<Record<CheckId, readonly ComplaintId[]>>> = {
  // Where nothing goes off, there is no moment before it and none at which something else happens.
  'dim-or-snap': ['short-not-noticed'],
  'what-else-happens': ['short-not-noticed'],
  // The complaint has said it already.
  'when-it-happens': ['trips-at-power-on'],
  'last-change': ['shuts-down-after-swap'],
  // Nobody looks at turnouts because of a jerk at the gap.
  'accessories-without-trains': ['jerks-at-gap'],
};

function fits(id: CheckId, complaint: ComplaintId): boolean {
  if (complaint === 'still-runs-past-gap') return BEFORE_FEEDING.includes(id);
  return (ONLY[id]?.includes(complaint) ?? true) && !(NOT[id]?.includes(complaint) ?? false);
}

/** The checks that say something about a complaint, in their order. One that does what its first line forbids is withheld. */
export function checksOn(complaint: ComplaintId): readonly CheckRow[] {
  return CHECKS.filter(({ id }) => fits(id, complaint)).map((check) => {
    const met = FORBIDS[complaint].filter(({ act }) => check.acts.includes(act));
    const unasked = UNASKED[check.id]?.includes(complaint) ?? false;
    if (unasked || met.some(({ until }) => until === undefined)) return { ...check, withheld: true };
    return { ...check, needs: [...new Set([...check.needs, ...met.flatMap(shownFirst)])] };
  });
}

const shownFirst = ({ until }: Forbidden) => (until === undefined ? [] : [until]);

/** The checks that are asked with a complaint, in their order. */
export const checksAsked = (complaint: ComplaintId): readonly CheckRow[] =>
  checksOn(complaint).filter(({ withheld = false }) => !withheld);
