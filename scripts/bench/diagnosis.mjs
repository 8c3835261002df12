// The next step of a diagnosis: a made-up model of sixty faults and sixty checks, and the model of the site.
import { compileNumbers } from '../../src/engine/diagnosis/compile.ts';
import { nextStep } from '../../src/engine/diagnosis/diagnosis.ts';
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import { COMPLAINT_IDS, FAULT_MODEL } from '../../src/wizards/put-it-right/faults/index.ts';
import { compiledFor } from '../../src/wizards/put-it-right/step.ts';
import { COSTS } from '../../tests/engine/diagnosis/sample.ts';
import { randomModel } from '../../tests/reference/best-repair.ts';
import { calibrate, medianTime, ms } from './clock.mjs';

const SIZE = 60;
const STEP_MS = 2;
const SEED = 7;

const stepAfter = (compiled, checks) => {
  const answers = checks.slice(0, 3).map(({ id, options }) => ({ check: id, option: options[0] }));
  const state = { answers, setAside: [], skipped: [], tools: TOOLS };
  return () => nextStep(compiled, state);
};

/** Rows of the diagnosis. */
export function diagnosis() {
  const loop = medianTime(calibrate, 11, 5);
  const row = (name, task) => {
    const time = medianTime(task, 101, 150);
    return {
      name,
      ours: ms(time),
      yardstick: ms(loop),
      ratio: ms(time / loop),
      demand: `under ${STEP_MS} ms`,
      ok: time < STEP_MS,
    };
  };
  const model = randomModel(SEED, SIZE, SIZE, true);
  const made = stepAfter(compileNumbers(model, COSTS), model.checks);
  const [complaint] = COMPLAINT_IDS;
  const real = stepAfter(compiledFor(complaint), FAULT_MODEL.checks);
  return [
    row(`next step, ${SIZE} faults and ${SIZE} checks (ms); a plain loop`, made),
    row(
      `next step, "${complaint}" with ${FAULT_MODEL.faults.length} faults and ${FAULT_MODEL.checks.length} checks (ms); a plain loop`,
      real,
    ),
  ];
}
