// A model of signs with numbers in place of words, for examples whose chances are printed and for models counted out: one sign per check, which it
// reads without a slip, no circumstance, and `something-else` only where it is given.
import type { DiagnosisSettings } from '../../src/engine/diagnosis/compile.ts';
import { SOMETHING_ELSE } from '../../src/engine/diagnosis/model.ts';
import type { SignCause, SignCheck, SignModel } from '../../src/engine/diagnosis/sign-model.ts';
import type { CauseTables } from '../../src/engine/diagnosis/sign-tables.ts';
import type { SignState, WalkModel, WalkSettings } from '../../src/engine/diagnosis/sign-walk.ts';
import { walkModel } from '../../src/engine/diagnosis/sign-walk.ts';

type Named = 'id' | 'minutes' | 'options';

export interface NumberedCheck extends Pick<SignCheck, Named>, Partial<Omit<SignCheck, Named>> {
  /** Weight of each option, per fault in the order of `faults`; normalised per fault. */
  readonly chances: readonly (readonly number[])[];
}

export interface NumberedModel {
  /** Shares before any answer are weights > 0; a row with id `something-else`, the last, is what no fix mends. */
  readonly faults: readonly {
    readonly id: string;
    readonly fixClass: string;
    readonly minutes: number;
    readonly share: number;
  }[];
  readonly checks: readonly NumberedCheck[];
}

export interface Costs {
  readonly callMinutes: number;
  readonly wrongFixMinutes: number;
}

/** Minutes of a call and of a wrong repair that the expectations here are reckoned with. */
export const COSTS = { callMinutes: 60, wrongFixMinutes: 10 } as const satisfies Costs;

/** Nobody slips, no row is doubted, and a repair is proposed whatever its chance: so that sums can be done by hand. */
export const PLAIN: WalkSettings = {
  ...COSTS,
  riskMinutes: [0, 1, 6, 30],
  harmBelow: { ask: 0.005, mend: 0.05 },
  mostQuestions: 14,
  elseShare: 0.1,
  lookAhead: { checks: 5, second: 8, fixes: 3 },
  slips: { memory: 0, eye: 0, instrument: 0 },
  rowsDoubted: 0,
  halfFits: 0,
  proposeFrom: { cheap: 0, work: 0, dear: 0 },
  patience: { after: 14, each: 0, least: 1 },
};

export const START: SignState = {
  opening: 'all',
  answers: [],
  setAside: [],
  skipped: [],
  tools: ['multimeter'],
};

/** Nothing is proposed or withheld but for its minutes. */
export function numberedWalk(model: NumberedModel, costs: Costs, more: Partial<DiagnosisSettings> = {}): WalkModel {
  const known = model.faults.filter(({ id }) => id !== SOMETHING_ELSE);
  const all = model.faults.reduce((sum, { share }) => sum + share, 0);
  const elseShare = 1 - known.reduce((sum, { share }) => sum + share, 0) / all;
  const made = walkModel(wordedModel(model, known), {
    ...PLAIN,
    ...costs,
    ...more,
    elseShare,
  });
  return { ...made, tables: { ...made.tables, causes: made.compiled.faults.map(({ id }) => tablesOf(model, id)) } };
}

/** The same without its numbers: what each cause shows is put in by `tablesOf`. */
function wordedModel({ checks }: NumberedModel, known: NumberedModel['faults']): SignModel {
  return {
    signs: checks.map(({ id, options }) => ({
      id,
      values: options,
      sound: options[0] ?? '',
      unaffected: mixOf(options),
    })),
    circumstances: [],
    causes: known.map(({ id, fixClass, minutes }): SignCause => ({ id, fixClass, minutes, shows: {} })),
    checks: checks.map(({ chances: _, ...row }) => ({
      tool: 'eyes',
      risk: 0,
      needs: [],
      source: 'eye',
      reads: row.id,
      reading: Object.fromEntries(row.options.map((option) => [option, option])),
      ...row,
    })),
    openings: [
      { id: 'all', often: 1, says: {}, shares: Object.fromEntries(known.map(({ id, share }) => [id, share])) },
    ],
    core: [],
  };
}

const mixOf = (options: readonly string[]) =>
  Object.fromEntries(options.map((option): [string, 'sometimes'] => [option, 'sometimes']));

function tablesOf({ faults, checks }: NumberedModel, id: string): CauseTables {
  const at = faults.findIndex((fault) => fault.id === id);
  const groups = checks.map(({ options, chances }) => {
    const row = chances[at] ?? options.map(() => 1);
    const total = row.reduce((sum, one) => sum + one, 0);
    return { by: 0, width: options.length, chances: Float64Array.from(row, (one) => one / total) };
  });
  return { circumstances: [], well: 0, groups };
}
