// Divisions: layouts as large as a club's beside a solver of integer programmes on the same task, and how long others take.
import loadHighs from 'highs';
import { divide } from '../../src/engine/districts/index.ts';
import { divisionModel } from '../../tests/division-model.ts';
import { alike, layout } from '../../tests/divisions.ts';
import { calibrate, median, medianTime, ms, time } from './clock.mjs';

const LEAST_MEAN = 20;
const LEAST_RATIO = 5;
/** The other solver is stopped after so many seconds: what it takes counts as so long. */
const PATIENCE = 60;
const DENSE_MS = 10_000;
const SMALL_MS = 20;

const even = ({ sections }, districts) => sections.reduce((sum, { traffic }) => sum + traffic, 0) / districts;

function windowsOf(graph, districts, tolerance) {
  const fair = even(graph, districts);
  const window = {
    least: Math.ceil(fair * (1 - tolerance) - 1e-9),
    most: Math.floor(fair * (1 + tolerance) + 1e-9),
  };
  return Array.from({ length: districts }, () => window);
}

const costOf = (found) =>
  found.kind === 'divided' && found.proof.kind === 'proven' ? found.division.cost : found.kind;

/** One layout, both ways: how long each takes, and whether they agree. */
function both(highs, seed, districts, tolerance) {
  const graph = layout(60, 68, seed);
  const problem = { ...graph, stages: alike(districts) };
  const ours = medianTime(() => divide(problem, { tolerance }), 3, 1);
  const model = divisionModel(graph, windowsOf(graph, districts, tolerance), true);
  let solved;
  const theirs = time(() => {
    solved = highs.solve(model, { mip_rel_gap: 0, time_limit: PATIENCE });
  });
  const finished = solved.Status === 'Optimal' || solved.Status === 'Infeasible';
  const cost = solved.Status === 'Infeasible' ? 'impossible' : Math.round(solved.ObjectiveValue);
  return {
    ours,
    theirs,
    ratio: theirs / ours,
    finished,
    agree: !finished || cost === costOf(divide(problem, { tolerance })),
  };
}

const mean = (values) => Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);

function alone(name, count, joints, districts, tolerance, demand) {
  const problems = [1, 2, 3, 4, 5].map((seed) => ({ ...layout(count, joints, seed), stages: alike(districts) }));
  const longest = Math.max(...problems.map((problem) => medianTime(() => divide(problem, { tolerance }), 3, 1)));
  const loop = median([1, 2, 3].map(() => time(calibrate)));
  return {
    name: `${name}, the longest of five layouts (ms); a plain loop`,
    ours: ms(longest),
    yardstick: ms(loop),
    ratio: ms(longest / loop),
    demand: `under ${demand} ms`,
    ok: longest < demand,
  };
}

export async function districts() {
  const highs = await loadHighs();
  // Layouts that can be divided so evenly; where none can, the other solver sees it at once.
  const runs = [3, 7].flatMap((seed) =>
    [3, 4].flatMap((count) => [0.1, 0.03].map((tolerance) => both(highs, seed, count, tolerance))),
  );
  const [ours, theirs] = [mean(runs.map((run) => run.ours)), mean(runs.map((run) => run.theirs))];
  const least = Math.min(...runs.map(({ ratio }) => ratio));
  const agree = runs.every((run) => run.agree);
  const finished = runs.filter((run) => run.finished).length;
  return [
    {
      name: `60 sections with 68 joints in 3 and 4 districts at 10 and 3 %, both proven, ${finished} of ${runs.length} by HiGHS within ${PATIENCE} s${agree ? '' : ', NOT THE SAME'} (geometric mean, ms)`,
      ours: ms(ours),
      yardstick: ms(theirs),
      ratio: ms(theirs / ours),
      demand: `at least ${LEAST_MEAN} times as fast`,
      ok: agree && theirs / ours >= LEAST_MEAN,
    },
    {
      name: 'the layout among them where it is least',
      ours: '',
      yardstick: '',
      ratio: ms(least),
      demand: `never less than ${LEAST_RATIO} times`,
      ok: least >= LEAST_RATIO,
    },
    alone('60 sections with 88 joints in 4 districts at 3 %', 60, 88, 4, 0.03, DENSE_MS),
    alone('12 sections with 14 joints in 2 districts at 10 %', 12, 14, 2, 0.1, SMALL_MS),
  ];
}
