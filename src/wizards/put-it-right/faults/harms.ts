// Repairs that do harm while another cause is the true one. They are not proposed while such a cause is still possible: first comes what
// harms nobody, an inspection, or a check that tells the two apart. Source: common practice, no source. See decision 009.
import type { FaultId, FixClass } from './faults.ts';
import { LEAKS } from './groups.ts';

/** A bad contact on the mains side only gets hotter with a stronger supply behind it. */
const BAD_CONTACT = ['mains-sag', 'socket-damaged'] as const;

export const HARMS: Readonly<Partial<Record<FixClass, readonly FaultId[]>>> = {
  // Its page puts power on, a load and a coin across the rails: with a leak that is what already glows.
  'protection-set-wrong': LEAKS,
  'supply-too-small': [...BAD_CONTACT, ...LEAKS],
  'not-enough': [...BAD_CONTACT, ...LEAKS],
};
