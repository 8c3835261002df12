// A model made ready to weigh with: rows as typed arrays.

import type { CheckRow, FaultRow, Precondition } from './model.ts';
import { PRECONDITIONS } from './model.ts';

export interface DiagnosisSettings {
  /** Minutes until someone who knows has found the cause; the repair comes on top. Source: from-memory (judgement). */
  readonly callMinutes: number;
  /** Minutes of trust and undoing that a repair costs on top of its work when it did not help. Source: from-memory (judgement). */
  readonly wrongFixMinutes: number;
  /** Minutes that stand for each risk, 0 to 3. Source: from-memory (judgement). */
  readonly riskMinutes: readonly [number, number, number, number];
  /**
   * A repair waits while a cause under which it harms is likelier than this, 0 to 1: from `mend` on for any check that tells the two
   * apart or, where none is left, for the repair of that cause; from `ask` on for a quick check only. Source: from-memory (judgement).
   */
  readonly harmBelow: { readonly ask: number; readonly mend: number };
  /** Questions after which none is asked any more. */
  readonly mostQuestions: number;
  /** Questions that could not be answered after which none is asked any more; without it they count as all others do. */
  readonly mostSkipped?: number;
  /** Share of `something-else`, 0 to 1. Source: from-memory (judgement). */
  readonly elseShare: number;
  /** How many of the best checks are looked through with a second check after them, and among how many second ones; 0 looks one step ahead. */
  readonly lookAhead: { readonly checks: number; readonly second: number; readonly fixes: number };
}

export interface FixClass {
  readonly fixClass: string;
  /** Work of the repair with its proof, minutes: mean of its faults by share. */
  readonly minutes: number;
  /** Fault ids. */
  readonly faults: readonly string[];
}

/** Faults stand class by class with `something-else` last; every array over options has one row of all faults per option. */
export interface Compiled {
  readonly settings: DiagnosisSettings;
  readonly faults: readonly FaultRow[];
  /** Chance of each fault before any answer. */
  readonly share: Float64Array;
  readonly classes: readonly FixClass[];
  /** Where the faults of each class end; the next class begins there. */
  readonly classEnd: Int32Array;
  /** Place of the class of each fault, -1 for `something-else`. */
  readonly classOf: Int32Array;
  /** What a wrong try of each class costs, minutes, and one over it. */
  readonly classCost: Float64Array;
  readonly perCost: Float64Array;
  /** For each class the places of the faults under which its repair harms. */
  readonly harms: readonly (readonly number[])[];
  readonly checks: readonly CheckRow[];
  /** Place of the first option of each check among all options, with one more entry for the end. */
  readonly optionStart: Int32Array;
  /** P(option | fault) at [option x faults + fault]. */
  readonly likelihood: Float64Array;
  /** Minutes of each check with its risk. */
  readonly checkCost: Float64Array;
  /** Preconditions each check needs, and that each option shows to hold, as bits in the order of PRECONDITIONS. */
  readonly needs: Int32Array;
  readonly establishes: Int32Array;
  readonly checkAt: ReadonlyMap<string, number>;
}

/** The preconditions as one bit each. */
export function bitsOf(preconditions: readonly Precondition[]): number {
  return preconditions.reduce((bits, one) => bits | (1 << PRECONDITIONS.indexOf(one)), 0);
}
