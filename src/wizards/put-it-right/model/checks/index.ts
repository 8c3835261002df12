// All checks, and the names of them.
import { ACCESSORY_CHECKS } from './accessories.ts';
import { CONTROL_CHECKS } from './control.ts';
import { GAP_CHECKS } from './gap.ts';
import { LAYOUT_CHECKS } from './layout.ts';
import { METER_CHECKS } from './meter.ts';
import { PROTECTION_CHECKS } from './protection.ts';
import { SIGNAL_CHECKS } from './signal.ts';
import { TOLD_CHECKS } from './told.ts';
import { TRACK_CHECKS } from './track.ts';
import { TRAIN_CHECKS } from './trains.ts';
import { UNIT_CHECKS } from './units.ts';

/** In the order in which equal ones are asked: memory, looking, doing, measuring. */
export const CHECKS = [
  ...TOLD_CHECKS,
  ...LAYOUT_CHECKS,
  ...UNIT_CHECKS,
  ...SIGNAL_CHECKS,
  ...GAP_CHECKS,
  ...TRACK_CHECKS,
  ...TRAIN_CHECKS,
  ...PROTECTION_CHECKS,
  ...ACCESSORY_CHECKS,
  ...CONTROL_CHECKS,
  ...METER_CHECKS,
] as const;

export type CheckId = (typeof CHECKS)[number]['id'];
