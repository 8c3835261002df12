// The fault model: what can be wrong, what can be checked, what people come with.
import type { FaultModel } from '../../engine/diagnosis-model.ts';
import { FIRST_CHECKS } from './checks-first.ts';
import { GAP_CHECKS } from './checks-gap.ts';
import { LOAD_CHECKS } from './checks-load.ts';
import { METER_CHECKS } from './checks-meter.ts';
import { PROTECTION_CHECKS } from './checks-protection.ts';
import { SIGNAL_CHECKS } from './checks-signal.ts';
import { UNIT_CHECKS } from './checks-units.ts';
import { COMPLAINTS } from './complaints.ts';
import { FAULTS } from './faults.ts';

export type { FaultId, FixClass } from './faults.ts';

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

export const FAULT_MODEL: FaultModel = { faults: FAULTS, checks: CHECKS, complaints: COMPLAINTS };
export const COMPLAINT_IDS: readonly ComplaintId[] = COMPLAINTS.map(({ id }) => id);
