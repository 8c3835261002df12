// Which checks go with what people come with: a question about a reversing section, an accessory or a unit that is not connected yet would
// only be answered with "I cannot tell".
import type { CheckRow } from '../../engine/diagnosis-model.ts';
import { FIRST_CHECKS } from './checks-first.ts';
import { GAP_CHECKS } from './checks-gap.ts';
import { LOAD_CHECKS } from './checks-load.ts';
import { METER_CHECKS } from './checks-meter.ts';
import { PROTECTION_CHECKS } from './checks-protection.ts';
import { SIGNAL_CHECKS } from './checks-signal.ts';
import { UNIT_CHECKS } from './checks-units.ts';
import type { COMPLAINTS } from './complaints.ts';

export const CHECKS = [
  ...FIRST_CHECKS,
  ...UNIT_CHECKS,
  ...SIGNAL_CHECKS,
  ...GAP_CHECKS,
  ...LOAD_CHECKS,
  ...PROTECTION_CHECKS,
  ...METER_CHECKS,
] as const;

export type CheckId = (typeof CHECKS)[number]['id'];
export type ComplaintId = (typeof COMPLAINTS)[number]['id'];

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

/** The checks that are asked with a complaint, in their order. */
export function checksFor(complaint: ComplaintId): readonly CheckRow[] {
  return CHECKS.filter(({ id }) => {
    if (complaint === 'still-runs-past-gap') return BEFORE_FEEDING.includes(id);
    return (ONLY[id]?.includes(complaint) ?? true) && !(NOT[id]?.includes(complaint) ?? false);
  });
}
