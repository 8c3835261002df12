// All checks as they are written, and the names of checks and complaints.
import { FIRST_CHECKS } from './checks-first.ts';
import { GAP_CHECKS } from './checks-gap.ts';
import { LOAD_CHECKS } from './checks-load.ts';
import { METER_CHECKS } from './checks-meter.ts';
import { PROTECTION_CHECKS } from './checks-protection.ts';
import { SIGNAL_CHECKS } from './checks-signal.ts';
import { UNIT_CHECKS } from './checks-units.ts';
import type { COMPLAINTS } from './complaints.ts';

export const ROWS = [
  ...FIRST_CHECKS,
  ...UNIT_CHECKS,
  ...SIGNAL_CHECKS,
  ...GAP_CHECKS,
  ...LOAD_CHECKS,
  ...PROTECTION_CHECKS,
  ...METER_CHECKS,
] as const;

export type CheckId = (typeof ROWS)[number]['id'];
export type ComplaintId = (typeof COMPLAINTS)[number]['id'];
