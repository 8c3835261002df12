// Networks beside a textbook elimination and a general library. Runs in Node and, with the types taken out, in a browser.
import { impedance } from '../../src/engine/circuit/impedance.ts';
import { prepare } from '../../src/engine/circuit/matrix.ts';
import { calibrate, medianTime, ms } from './clock.mjs';

const STATIONS = 133;
const FARTHEST = 127;
const LEAST_DENSE_RATIO = 30;
const LEAST_LIBRARY_RATIO = 20;
const LEAST_SPARSE_RATIO = 3;
const SWEEP_MS = 5;
const AGREEMENT = 1e-9;

const wire = (from, to, ohms) => ({ id: `${from}-${to}`, from, to, ohms });

/** A bus and two rails of 133 places, fed at every tenth: 400 unknown voltages, 426 resistances with that of the supply. */
function longLayout() {
  const branches = [wire('supply', 'bus0', 0.05), wire('supply', 'earth', 0.1)];
  for (let i = 0; i < STATIONS; i++) {
    if (i % 10 === 0) branches.push(wire(`bus${i}`, `left${i}`, 0.02), wire(`right${i}`, 'earth', 0.02 + i / 1000));
    if (i + 1 < STATIONS) {
      branches.push(wire(`bus${i}`, `bus${i + 1}`, 0.01));
      branches.push(wire(`left${i}`, `left${i + 1}`, 0.03), wire(`right${i}`, `right${i + 1}`, 0.03));
    }
  }
  return { branches, reference: 'earth' };
}

const railsAt = (place) => [`left${place}`, `right${place}`];

/** The same as a full matrix, set up without the engine, and one ampere drawn at a place. */
function fullMatrix({ branches, reference }, place) {
  const names = [...new Set(branches.flatMap(({ from, to }) => [from, to]))].filter((name) => name !== reference);
  const index = new Map(names.map((name, i) => [name, i]));
  const rows = names.map(() => new Array(names.length).fill(0));
  const right = new Array(names.length).fill(0);
  const add = (from, to, siemens) => {
    const [a, b] = [index.get(from), index.get(to)];
    for (const [here, there] of [
      [a, b],
      [b, a],
    ]) {
      if (here !== undefined) rows[here][here] += siemens;
      if (here !== undefined && there !== undefined) rows[here][there] -= siemens;
    }
  };
  for (const { from, to, ohms } of branches) add(from, to, 1 / ohms);
  const [plus, minus] = railsAt(place);
  right[index.get(plus)] = 1;
  right[index.get(minus)] = -1;
  return { names, rows, right };
}

/** Gaussian elimination with row exchange as in a textbook: every multiplier is used, zero or not. */
function eliminate(rows, right) {
  const lines = rows.map((row) => Float64Array.from(row));
  const values = Float64Array.from(right);
  const n = values.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(lines[i][k]) > Math.abs(lines[pivot][k])) pivot = i;
    [lines[k], lines[pivot]] = [lines[pivot], lines[k]];
    [values[k], values[pivot]] = [values[pivot], values[k]];
    const top = lines[k];
    for (let i = k + 1; i < n; i++) {
      const line = lines[i];
      const factor = line[k] / top[k];
      for (let j = k; j < n; j++) line[j] -= factor * top[j];
      values[i] -= factor * values[k];
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    const line = lines[k];
    let sum = values[k];
    for (let j = k + 1; j < n; j++) sum -= line[j] * values[j];
    values[k] = sum / line[k];
  }
  return values;
}

/** The greatest ohms that a train or a short circuit sees at any place. */
function sweep(network) {
  const prepared = prepare(network);
  let most = 0;
  for (let place = 0; place < STATIONS; place++) most = Math.max(most, impedance(prepared, railsAt(place)));
  return most;
}

function assertAgreement(what, gap) {
  if (!(gap < AGREEMENT)) throw new Error(`${what}: off by ${gap}, not below ${AGREEMENT}`);
}

/** Ohms at some places, by elimination. */
function assertSweep(network) {
  const prepared = prepare(network);
  for (const place of [0, 4, 65, 131, 132]) {
    const { names, rows, right } = fullMatrix(network, place);
    const lost = eliminate(rows, right);
    const [plus, minus] = railsAt(place);
    const ohms = lost[names.indexOf(plus)] - lost[names.indexOf(minus)];
    assertAgreement('ohms of the sweep', Math.abs(impedance(prepared, [plus, minus]) - ohms));
  }
}

/** Rows of the networks; the library is handed in, so that this runs in a browser as well. */
export function networks({ lusolve, matrix, sparse }) {
  const network = longLayout();
  const { names, rows, right } = fullMatrix(network, FARTHEST);
  // One question factors the network and works out every volt at once, as the others do.
  const ours = () => impedance(prepare(network), railsAt(FARTHEST));
  const prepared = prepare(network);
  const lost = (name) => impedance(prepared, railsAt(FARTHEST), [name, network.reference]);
  const farthest = (volts) => Math.max(...names.map((name, i) => Math.abs(lost(name) - volts(i))));
  const [dense, thin] = [matrix(rows), sparse(rows)];
  const eliminated = eliminate(rows, right);
  const [byDense, byThin] = [lusolve(dense, right), lusolve(thin, right)];
  assertAgreement(
    'elimination',
    farthest((i) => eliminated[i]),
  );
  assertAgreement(
    'mathjs',
    farthest((i) => byDense.get([i, 0])),
  );
  assertAgreement(
    'mathjs, sparse',
    farthest((i) => byThin.get([i, 0])),
  );
  assertSweep(network);
  const time = medianTime(ours, 101, 100);
  const what = `${names.length} unknown volts, ${network.branches.length} resistances: ordered, factored, one ampere at one place, against`;
  const against = (name, yardstick, least) => ({
    name: `${what} ${name} (ms)`,
    ours: ms(time),
    yardstick: ms(yardstick),
    ratio: ms(yardstick / time),
    demand: `at least ${least} times as fast`,
    ok: yardstick / time >= least,
  });
  const swept = medianTime(() => sweep(network), 51, 30);
  const loop = medianTime(calibrate, 11, 5);
  return [
    against(
      'a textbook elimination',
      medianTime(() => eliminate(rows, right), 11, 3),
      LEAST_DENSE_RATIO,
    ),
    against(
      'mathjs lusolve',
      medianTime(() => lusolve(dense, right), 5, 2),
      LEAST_LIBRARY_RATIO,
    ),
    against(
      'mathjs lusolve of a sparse matrix',
      medianTime(() => lusolve(thin, right), 11, 5),
      LEAST_SPARSE_RATIO,
    ),
    {
      name: `the same, one ampere at each of ${STATIONS} places (ms); a plain loop`,
      ours: ms(swept),
      yardstick: ms(loop),
      ratio: ms(swept / loop),
      demand: `under ${SWEEP_MS} ms`,
      ok: swept < SWEEP_MS,
    },
  ];
}
