// A fault model made ready to reckon with: words become chances, rows become typed arrays, mistakes of the author are named.

import type { CheckRow, FaultModel, FaultRow, Precondition } from './model.ts';
import { PRECONDITIONS, SOMETHING_ELSE, WORD_CHANCE } from './model.ts';

export interface DiagnosisSettings {
  /** Minutes until someone who knows has found the cause; the repair comes on top. From memory (judgement). */
  readonly callMinutes: number;
  /** Minutes of trust and undoing that a repair costs on top of its work when it did not help. From memory (judgement). */
  readonly wrongFixMinutes: number;
  /** Minutes that stand for each risk, 0 to 3. From memory (judgement). */
  readonly riskMinutes: readonly [number, number, number, number];
  /**
   * A repair waits while a cause under which it harms is likelier than this, 0 to 1: from `mend` on for any check that tells the two
   * apart or, where none is left, for the repair of that cause; from `ask` on for a quick check only. From memory (judgement).
   */
  readonly harmBelow: { readonly ask: number; readonly mend: number };
  /** Questions after which none is asked any more. */
  readonly mostQuestions: number;
  /** Share of `something-else` where a complaint gives none, 0 to 1. From memory (judgement). */
  readonly elseShare: number;
  /** Share of answers given at random, mixed into every likelihood, 0 to 1. */
  readonly slip: number;
  /** How many of the best checks are looked through with a second check after them, and among how many second ones; 0 looks one step ahead. */
  readonly lookAhead: { readonly checks: number; readonly second: number; readonly fixes: number };
}

/** What a diagnosis takes for granted; the minutes of a call and of a wrong repair, and the slips, its user has to say. */
const USUAL_SETTINGS = {
  riskMinutes: [0, 1, 6, 30],
  harmBelow: { ask: 0.005, mend: 0.05 },
  mostQuestions: 14,
  elseShare: 0.03,
  lookAhead: { checks: 5, second: 8, fixes: 3 },
} as const satisfies Partial<DiagnosisSettings>;

export type GivenSettings = Omit<DiagnosisSettings, keyof typeof USUAL_SETTINGS> & Partial<DiagnosisSettings>;

/** A fault model with numbers where the words were, for one complaint. */
export interface NumberedModel {
  readonly complaint: string;
  /** Shares before any answer are weights > 0; a row with id `something-else` is what no fix mends. */
  readonly faults: readonly (FaultRow & { readonly share: number })[];
  readonly checks: readonly NumberedCheck[];
  /** Fix class to fault ids under which doing it harms. */
  readonly harms?: Readonly<Record<string, readonly string[]>>;
}

export interface NumberedCheck extends Omit<CheckRow, 'otherwise' | 'when'> {
  /** Weight of each option, per fault in the order of `faults`; normalised per fault. */
  readonly chances: readonly (readonly number[])[];
}

export interface FixClass {
  readonly fixClass: string;
  /** Work of the repair with its proof, minutes: mean of its faults by share. */
  readonly minutes: number;
  /** Fault ids. */
  readonly faults: readonly string[];
}

export type CompiledCheck = Omit<CheckRow, 'otherwise' | 'when'>;

/** Faults stand class by class with `something-else` last; every array over options has one row of all faults per option. */
export interface Compiled {
  readonly complaint: string;
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
  readonly checks: readonly CompiledCheck[];
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

/**
 * Makes a fault model that `assertModel` accepts ready for one complaint. Faults without a share in it are left out; `something-else` is
 * always in. Throws RangeError when the complaint is not in the model.
 */
export function compile(model: FaultModel, complaintId: string, settings: GivenSettings): Compiled {
  const { elseShare } = { ...USUAL_SETTINGS, ...settings };
  const complaint = model.complaints.find(({ id }) => id === complaintId);
  if (complaint === undefined) throw new RangeError(`complaint "${complaintId}" is not in the model`);
  const { [SOMETHING_ELSE]: elseWeight, ...priors } = complaint.priors;
  const total = Object.values(priors).reduce((sum, share) => sum + share, 0);
  const known = model.faults.flatMap((row) => {
    const share = priors[row.id];
    return share === undefined ? [] : [{ ...row, share }];
  });
  const faults = [...known, somethingElse(elseWeight ?? (total * elseShare) / (1 - elseShare))];
  const checks = model.checks.map(({ otherwise, when, ...row }) => {
    const usual = otherwise.map((word) => WORD_CHANCE[word]);
    const words = (id: string): number[] | undefined => when[id]?.map((word) => WORD_CHANCE[word]);
    return { ...row, chances: faults.map(({ id }) => words(id) ?? (id === SOMETHING_ELSE ? anyhow(usual) : usual)) };
  });
  const { harms = {} } = model;
  return compileNumbers({ complaint: complaintId, faults, checks, harms }, settings);
}

function somethingElse(share: number): FaultRow & { readonly share: number } {
  return { id: SOMETHING_ELSE, fixClass: SOMETHING_ELSE, minutes: 1, share };
}

/** What nobody described answers half like a fault the check does not touch, half anyhow. */
function anyhow(usual: readonly number[]): number[] {
  const total = usual.reduce((sum, one) => sum + one, 0);
  return usual.map((one) => one / total / 2 + 1 / usual.length / 2);
}

/** The same from numbers in place of words, and without adding `something-else`. Throws RangeError as `compile` does. */
export function compileNumbers(model: NumberedModel, settings: GivenSettings): Compiled {
  const all = { ...USUAL_SETTINGS, ...settings };
  const { order, classes, classEnd, classOf } = inClasses(model.faults);
  const faults = order.flatMap((at) => model.faults[at] ?? []);
  const total = faults.reduce((sum, { share }) => sum + share, 0);
  if (!(total > 0)) throw new RangeError(`complaint "${model.complaint}": no fault has a share`);
  const classCost = Float64Array.from(classes, ({ minutes }) => minutes + all.wrongFixMinutes);
  const optionStart = new Int32Array(model.checks.length + 1);
  for (const [i, { options }] of model.checks.entries()) {
    optionStart[i + 1] = (optionStart[i] ?? 0) + options.length;
  }
  return {
    complaint: model.complaint,
    settings: all,
    faults: faults.map(({ share: _, ...row }) => row),
    share: Float64Array.from(faults, ({ share }) => share / total),
    classes,
    classEnd,
    classOf,
    classCost,
    perCost: classCost.map((cost) => 1 / cost),
    harms: classes.map(({ fixClass }) =>
      (model.harms?.[fixClass] ?? []).map((id) => faults.findIndex((row) => row.id === id)).filter((at) => at >= 0),
    ),
    checks: model.checks.map(({ chances: _, ...row }) => row),
    optionStart,
    likelihood: likelihoodOf(model.checks, order, all.slip),
    checkCost: Float64Array.from(model.checks, ({ minutes, risk }) => minutes + all.riskMinutes[risk]),
    needs: Int32Array.from(model.checks, ({ needs }) => bitsOf(needs)),
    establishes: Int32Array.from(
      model.checks.flatMap(({ options, establishes }) => options.map((id) => bitsOf(establishes?.[id] ?? []))),
    ),
    checkAt: new Map(model.checks.map(({ id }, i) => [id, i])),
  };
}

function inClasses(faults: NumberedModel['faults']): {
  readonly order: readonly number[];
  readonly classes: readonly FixClass[];
  readonly classEnd: Int32Array;
  readonly classOf: Int32Array;
} {
  const members = new Map<string, number[]>();
  const others: number[] = [];
  for (const [at, { id, fixClass }] of faults.entries()) {
    if (id === SOMETHING_ELSE) others.push(at);
    else members.set(fixClass, [...(members.get(fixClass) ?? []), at]);
  }
  let end = 0;
  const ends: number[] = [];
  const classes = [...members].map(([fixClass, places]) => {
    end += places.length;
    ends.push(end);
    const rows = places.flatMap((at) => faults[at] ?? []);
    const share = rows.reduce((sum, row) => sum + row.share, 0);
    const minutes = rows.reduce((sum, row) => sum + row.minutes * row.share, 0) / share;
    return { fixClass, minutes, faults: rows.map(({ id }) => id) };
  });
  const classOf = [...members.values()].flatMap((places, at) => places.map(() => at));
  return {
    order: [...[...members.values()].flat(), ...others],
    classes,
    classEnd: Int32Array.from(ends),
    classOf: Int32Array.from([...classOf, ...others.map(() => -1)]),
  };
}

function likelihoodOf(checks: readonly NumberedCheck[], order: readonly number[], slip: number): Float64Array {
  const rows = checks.flatMap(({ id, options, chances }) => {
    const weights = order.map((at) => chances[at] ?? []);
    const totals = weights.map((row) => row.reduce((sum, one) => sum + one, 0));
    if (weights.some((row, i) => row.length !== options.length || !((totals[i] ?? 0) > 0))) {
      throw new RangeError(`check "${id}": each fault needs ${options.length} weights that add up to more than 0`);
    }
    return options.map((_, k) =>
      weights.map((row, i) => ((1 - slip) * (row[k] ?? 0)) / (totals[i] ?? 1) + slip / options.length),
    );
  });
  return Float64Array.from(rows.flat());
}
