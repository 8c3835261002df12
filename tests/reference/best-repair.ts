// The slow twin of the diagnosis: every order of checks, fixes and the call for help, for small models of numbers.
import { SOMETHING_ELSE } from '../../src/engine/diagnosis/model.ts';
import { signStep } from '../../src/engine/diagnosis/sign-step.ts';
import type { SignState, WalkModel } from '../../src/engine/diagnosis/sign-walk.ts';
import { seeded } from '../seeded.ts';
import type { Costs, NumberedModel } from './numbered.ts';
import { START } from './numbered.ts';

/** Option of each check, -1 while it was not asked; and whether each fault was set aside. */
interface Known {
  readonly options: readonly number[];
  readonly aside: readonly boolean[];
}

/** Minutes to the end of the best of all walks: checks, wrong and right fixes, and help, which finds the cause but does not mend it. */
export function bestMinutes(model: NumberedModel, costs: Costs): number {
  const seen = new Map<string, number>();
  const best = (known: Known, weights: readonly number[]): number => {
    const key = `${known.options.join()}/${known.aside.join()}`;
    const before = seen.get(key);
    if (before !== undefined) return before;
    const value = Math.min(
      callNow(model, costs, weights),
      ...fixClasses(model).map((one) => tryFix(model, costs, known, weights, one, best)),
      ...model.checks.map((_, at) => askFirst(model, known, weights, at, best)),
    );
    seen.set(key, value);
    return value;
  };
  const total = model.faults.reduce((sum, { share }) => sum + share, 0);
  const shares = model.faults.map(({ share }) => share / total);
  return best({ options: model.checks.map(() => -1), aside: shares.map(() => false) }, shares);
}

type Best = (known: Known, weights: readonly number[]) => number;

const add = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);
const fixClasses = (model: NumberedModel): string[] => [
  ...new Set(model.faults.map(({ fixClass }) => fixClass).filter((one) => one !== SOMETHING_ELSE)),
];
const workOf = (model: NumberedModel, at: number): number => {
  const row = model.faults[at];
  return row === undefined || row.id === SOMETHING_ELSE ? 0 : row.minutes;
};

function callNow(model: NumberedModel, { callMinutes }: Costs, weights: readonly number[]): number {
  return add(weights.map((weight, at) => weight * (callMinutes + workOf(model, at))));
}

function tryFix(
  model: NumberedModel,
  { wrongFixMinutes }: Costs,
  known: Known,
  weights: readonly number[],
  fixClass: string,
  best: Best,
): number {
  const mended = model.faults.map((row) => row.fixClass === fixClass);
  if (mended.every((one, at) => !one || known.aside[at])) return Number.POSITIVE_INFINITY;
  const work = model.faults.find((row) => row.fixClass === fixClass)?.minutes ?? 0;
  const right = add(weights.filter((_, at) => mended[at]));
  const left = weights.map((weight, at) => (mended[at] ? 0 : weight));
  const wrong = add(left);
  const after =
    wrong > 0 ? best({ ...known, aside: known.aside.map((one, at) => one || mended[at] === true) }, left) : 0;
  return right * work + wrong * (work + wrongFixMinutes) + after;
}

function askFirst(model: NumberedModel, known: Known, weights: readonly number[], at: number, best: Best): number {
  if (known.options[at] !== -1) return Number.POSITIVE_INFINITY;
  const check = model.checks[at];
  const after = check?.options.map((_, option) => {
    const left = weights.map((weight, fault) => weight * chanceOf(model, at, fault, option));
    const options = known.options.map((one, place) => (place === at ? option : one));
    return add(left) > 0 ? best({ ...known, options }, left) : 0;
  });
  return add(weights) * (check?.minutes ?? 0) + add(after ?? []);
}

/** P(option | fault) of a check by its place. */
export function chanceOf(model: NumberedModel, check: number, fault: number, option: number): number {
  const row = model.checks[check]?.chances[fault] ?? [];
  return (row[option] ?? 0) / add(row);
}

/** Average minutes of the walks that `signStep` makes, over every cause and every answer, and the longest one in questions. */
export function minutesOfWalks(
  model: NumberedModel,
  walked: WalkModel,
  costs: Costs,
): { readonly minutes: number; readonly questions: number } {
  let questions = 0;
  const walk = (state: SignState, weights: readonly number[]): number => {
    if (!(add(weights) > 0)) return 0;
    questions = Math.max(questions, state.answers.length);
    const step = signStep(walked, state);
    if (step.kind === 'hand-on') return callNow(model, costs, weights);
    if (step.kind === 'fix') {
      const go: Best = (_, left) => walk({ ...state, setAside: [...state.setAside, step.fixClass] }, left);
      const aside = model.faults.map((row) => state.setAside.includes(row.fixClass));
      return tryFix(model, costs, { options: [], aside }, weights, step.fixClass, go);
    }
    const at = model.checks.findIndex(({ id }) => id === step.check);
    const go: Best = ({ options }, left) => {
      const option = model.checks[at]?.options[options[at] ?? 0] ?? '';
      return walk({ ...state, answers: [...state.answers, { check: step.check, option }] }, left);
    };
    const known = {
      options: model.checks.map(({ id }) => (state.answers.some(({ check }) => check === id) ? 0 : -1)),
      aside: [],
    };
    return askFirst(model, known, weights, at, go);
  };
  const total = model.faults.reduce((sum, { share }) => sum + share, 0);
  const minutes = walk(
    START,
    model.faults.map(({ share }) => share / total),
  );
  return { minutes, questions };
}

const WEIGHTS = [0.97, 0.8, 0.3, 0.07, 0.01];

/** A random model with as many faults and checks at most; the same seed gives the same model. */
export function randomModel(seed: number, mostFaults: number, mostChecks: number, exact = false): NumberedModel {
  const random = seeded(seed);
  const below = (count: number): number => Math.floor(random() * count);
  const faultCount = exact ? mostFaults : 2 + below(mostFaults - 1);
  const checkCount = exact ? mostChecks : 1 + below(mostChecks);
  const faults = Array.from({ length: faultCount }, (_, i) => ({
    id: `fault-${i}`,
    fixClass: `fix-${i}`,
    minutes: 1 + below(40),
    share: 0.02 + random() ** 2,
  }));
  const all = [...faults, { id: SOMETHING_ELSE, fixClass: SOMETHING_ELSE, minutes: 1, share: 0.05 }];
  return {
    faults: all,
    checks: Array.from({ length: checkCount }, (_, i) => {
      const options = Array.from({ length: 2 + below(exact ? 4 : 2) }, (_option, k) => `option-${k}`);
      return {
        id: `check-${i}`,
        minutes: 0.5 + below(16) / 2,
        options,
        chances: all.map(() => options.map(() => WEIGHTS[below(WEIGHTS.length)] ?? 1)),
      };
    }),
  };
}
