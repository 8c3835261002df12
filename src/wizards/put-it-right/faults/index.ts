// The fault model: what can be wrong, what can be checked, what people come with.
import type { FaultModel } from '../../../engine/index.ts';
import { COMPLAINTS } from './complaints.ts';
import { FAULTS } from './faults.ts';
import { CHECKS } from './fitting.ts';
import { HARMS } from './harms.ts';
import type { ComplaintId } from './rows.ts';

export { powerActsOf } from './acts.ts';
export type { FixClass } from './faults.ts';
export { checksAsked, checksOn } from './fitting.ts';
export type { CheckId, ComplaintId } from './rows.ts';

export const FAULT_MODEL: FaultModel = { faults: FAULTS, checks: CHECKS, complaints: COMPLAINTS, harms: HARMS };
/** Complaints of people who have two parts, since they say so themselves; with any other there may be one. */
export const TWO_PARTS: ReadonlySet<ComplaintId> = new Set<ComplaintId>([
  ...(['stops-at-gap', 'trips-at-gap', 'still-runs-past-gap', 'jerks-at-gap', 'ignores-commands'] as const),
  ...(['shuts-down-after-swap', 'loop-trips'] as const),
]);
export const COMPLAINT_IDS: readonly ComplaintId[] = COMPLAINTS.map(({ id }) => id);
