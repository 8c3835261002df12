// The next step of a diagnosis over the model of the site, circumstances included; and how long the model takes to be made ready.
import { signStep, TOOLS, walkModel } from '../../src/engine/index.ts';
import { SIGN_MODEL, walkModelNow } from '../../src/wizards/put-it-right/index.ts';
import { calibrate, median, medianTime, ms, time } from './clock.mjs';

const STEP_MS = 5;
const ANSWERS = 8;

/** For each opening a walk that gives to each question an answer without danger: the first, the next time the second, and so on. */
function walkOf(model, opening) {
  let state = { opening, answers: [], setAside: [], skipped: [], tools: TOOLS };
  while (state.answers.length < ANSWERS) {
    const step = signStep(model, state);
    if (step.kind === 'hand-on') break;
    if (step.kind === 'fix') {
      state = { ...state, setAside: [...state.setAside, step.fixClass] };
      continue;
    }
    const { options, danger = {} } = SIGN_MODEL.checks.find(({ id }) => id === step.check);
    const safe = options.filter((option) => danger[option] === undefined);
    const option = safe[state.answers.length % safe.length];
    state = { ...state, answers: [...state.answers, { check: step.check, option }] };
  }
  return state;
}

/** Rows of the diagnosis. */
export function diagnosis() {
  const loop = medianTime(calibrate, 11, 5);
  const model = walkModelNow();
  const states = SIGN_MODEL.openings
    .map(({ id }) => walkOf(model, id))
    .filter(({ answers }) => answers.length === ANSWERS);
  if (states.length < SIGN_MODEL.openings.length / 2) throw new Error('too few walks come to eight answers');
  const size = `${SIGN_MODEL.causes.length} causes and ${SIGN_MODEL.checks.length} checks`;
  const row = (name, value, demand, ok) => ({
    name,
    ours: ms(value),
    yardstick: ms(loop),
    ratio: ms(value / loop),
    demand,
    ok,
  });
  const step = median(states.map((state) => medianTime(() => signStep(model, state), 7, 3)));
  const ready = median(Array.from({ length: 7 }, () => time(() => walkModel(SIGN_MODEL, model.settings))));
  return [
    row(`next step after ${ANSWERS} answers, ${size} (ms); a plain loop`, step, `under ${STEP_MS} ms`, step < STEP_MS),
    row(`the model made ready, ${size} (ms); a plain loop`, ready, '', true),
  ];
}
