// A real wiring answer: how long it takes, how many circuits it factors, and what laying each plan once is worth.
import { Skyline } from '../../src/engine/circuit/skyline.ts';
import { solvePlan } from '../../src/engine/wiring/plan-circuit.ts';
import { parseAddress, QUESTIONS } from '../../src/wizards/planning/index.ts';
import { wire } from '../../src/wizards/wire-it/index.ts';
import { calibrate, medianTime, ms } from './clock.mjs';

/** A thin bus under a long track, so that nearly every remedy is tried. */
const ADDRESS =
  '?bus-length=12&bus-wire=0.5+mm2&feed-by=bus&scale=h0&supply-amps=6&supply-kind=dc&supply-plug=unknown&supply-volts=18&system=two-rail&track-length=12&wire-amps=3&wire-trip=5&wire-volts=16';
const ANSWER_MS = 20;
const LEAST_RATIO = 1.5;

const { answers } = parseAddress(Object.values(QUESTIONS), ADDRESS);

/** How many matrices are factored meanwhile. */
function factorings(task) {
  const { factor } = Skyline.prototype;
  let count = 0;
  Skyline.prototype.factor = function counted() {
    count += 1;
    return factor.call(this);
  };
  try {
    task();
  } finally {
    Skyline.prototype.factor = factor;
  }
  return count;
}

const TRAIN = 1.5;

export function wiring() {
  const found = wire(answers);
  const plans = found.candidates.flatMap((one) => one.plans);
  const once = () => {
    for (const plan of plans) {
      const circuit = solvePlan(plan);
      circuit.train(TRAIN);
      circuit.short();
    }
  };
  const anew = () => {
    for (const plan of plans) {
      solvePlan(plan).train(TRAIN);
      solvePlan(plan).short();
    }
  };
  const answer = medianTime(() => wire(answers), 31, 20);
  const loop = medianTime(calibrate, 11, 5);
  const [ours, yardstick] = [medianTime(once, 51, 30), medianTime(anew, 51, 30)];
  return [
    {
      name: `a wiring answer with ${found.candidates.length} candidates, ${factorings(() => wire(answers))} circuits factored (ms); a plain loop`,
      ours: ms(answer),
      yardstick: ms(loop),
      ratio: ms(answer / loop),
      demand: `under ${ANSWER_MS} ms`,
      ok: answer < ANSWER_MS,
    },
    {
      name: `its ${plans.length} plans, each one circuit for train and short, against one for each (ms)`,
      ours: ms(ours),
      yardstick: ms(yardstick),
      ratio: ms(yardstick / ours),
      demand: `at least ${LEAST_RATIO} times as fast`,
      ok: yardstick / ours >= LEAST_RATIO,
    },
  ];
}
