// Networks beside a textbook elimination and a general library. Runs in Node and, with the types taken out, in a browser.
import { impedanceAlong, lowestOnWay } from '../../src/engine/circuit/along.ts';
import { prepare } from '../../src/engine/circuit/matrix.ts';
import { solve } from '../../src/engine/circuit/solve.ts';
import { calibrate, medianTime, ms } from './clock.mjs';

const STATIONS = 133;
const LEAST_DENSE_RATIO = 30;
const LEAST_LIBRARY_RATIO = 20;
const LEAST_SPARSE_RATIO = 3;
const SWEEP_MS = 5;
const AGREEMENT = 1e-9;

const wire = (from, to, ohms) => ({ id: `${from}-${to}`, from, to, ohms });

/** A bus and two rails of 133 places, fed at every tenth: 400 unknown voltages, 426 resistances with that of the supply. */
function longLayout() {
  const branches = [wire('supply', 'bus0', 0.05)];
  for (let i = 0; i < STATIONS; i++) {
    if (i % 10 === 0) branches.push(wire(`bus${i}`, `left${i}`, 0.02), wire(`right${i}`, 'earth', 0.02 + i / 1000));
    if (i + 1 < STATIONS) {
      branches.push(wire(`bus${i}`, `bus${i + 1}`, 0.01));
      branches.push(wire(`left${i}`, `left${i + 1}`, 0.03), wire(`right${i}`, `right${i + 1}`, 0.03));
    }
  }
  const sources = [{ id: 'supply', plus: 'supply', minus: 'earth', volts: 15, ohms: 0.1 }];
  const loads = Array.from({ length: 12 }, (_, i) => ({
    id: `train${i}`,
    plus: `left${i * 11}`,
    minus: `right${i * 11}`,
    amps: 0.3,
  }));
  const sections = Array.from({ length: STATIONS - 1 }, (_, i) => ({
    from: [`left${i}`, `right${i}`],
    to: [`left${i + 1}`, `right${i + 1}`],
    ohms: 0.06,
  }));
  return { network: { branches, sources, reference: 'earth' }, loads, sections };
}

/** The same as a full matrix, set up without the engine. */
function fullMatrix({ network, loads }) {
  const { branches, sources, reference } = network;
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
  const bring = (name, amps) => {
    if (index.has(name)) right[index.get(name)] += amps;
  };
  for (const { from, to, ohms } of branches) add(from, to, 1 / ohms);
  for (const { plus, minus, volts, ohms } of sources) {
    add(plus, minus, 1 / ohms);
    bring(plus, volts / ohms);
    bring(minus, -volts / ohms);
  }
  for (const { plus, minus, amps } of loads) {
    bring(plus, -amps);
    bring(minus, amps);
  }
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

/** Voltage at the worst place of a train of 1 A beside the others, and the greatest ohms a short circuit sees: every section anew. */
function sweep({ network, loads, sections }) {
  const prepared = prepare(network);
  const lowest = lowestOnWay(prepared, sections, 1, loads);
  const ohms = Math.max(...sections.map((section) => impedanceAlong(prepared, section).worst.ohms));
  return { lowest, ohms };
}

/** The same at the ends of the sections only, by elimination: volts with the train at each, and ohms there. */
function checkedSweep(layout) {
  const places = [0, 4, 65, 131, 132];
  return places.map((place) => {
    const volts = (amps) => {
      const train = { plus: `left${place}`, minus: `right${place}`, amps };
      const { names, rows, right } = fullMatrix({ ...layout, loads: [...layout.loads, train] });
      const found = eliminate(rows, right);
      return found[names.indexOf(train.plus)] - found[names.indexOf(train.minus)];
    };
    return { place, volts: volts(1), ohms: volts(0) - volts(1) };
  });
}

function assertAgreement(what, gap) {
  if (!(gap < AGREEMENT)) throw new Error(`${what}: off by ${gap}, not below ${AGREEMENT}`);
}

function assertSweep(layout) {
  const prepared = prepare(layout.network);
  for (const { place, volts, ohms } of checkedSweep(layout)) {
    const at = Math.min(place, STATIONS - 2);
    const section = layout.sections[at];
    const t = place - at;
    assertAgreement('ohms of the sweep', Math.abs(impedanceAlong(prepared, section).at(t) - ohms));
    assertAgreement('volts of the sweep', Math.abs(lowestOnWay(prepared, [section], 1, layout.loads).at(t) - volts));
  }
}

/** Rows of the networks; the library is handed in, so that this runs in a browser as well. */
export function networks({ lusolve, matrix, sparse }) {
  const layout = longLayout();
  const { names, rows, right } = fullMatrix(layout);
  const resistances = layout.network.branches.length + layout.network.sources.length;
  const ours = () => solve(prepare(layout.network), layout.loads);
  const found = ours();
  const farthest = (volts) => Math.max(...names.map((name, i) => Math.abs(found.volts(name) - volts(i))));
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
  assertSweep(layout);
  const time = medianTime(ours, 101, 100);
  const what = `${names.length} unknown volts, ${resistances} resistances: ordered, factored, solved, against`;
  const against = (name, yardstick, least) => ({
    name: `${what} ${name} (ms)`,
    ours: ms(time),
    yardstick: ms(yardstick),
    ratio: ms(yardstick / time),
    demand: `at least ${least} times as fast`,
    ok: yardstick / time >= least,
  });
  const swept = medianTime(() => sweep(layout), 51, 30);
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
      name: `the same, every place of a train and of a short circuit on ${layout.sections.length} sections (ms); a plain loop`,
      ours: ms(swept),
      yardstick: ms(loop),
      ratio: ms(swept / loop),
      demand: `under ${SWEEP_MS} ms`,
      ok: swept < SWEEP_MS,
    },
  ];
}
