// The engine against its yardsticks: the exact demand beside a simulation of a million moments, how long a large fleet takes, and networks
// beside a textbook elimination and a general library, divisions beside a solver of integer programmes.
import { lusolve, matrix, sparse } from 'mathjs';
import { chanceAbove, demand, even, fittingDemand } from '../../src/engine/power/demand.ts';
import { seeded } from '../../tests/seeded.ts';
import { calibrate, median, medianTime, ms, time } from './clock.mjs';
import { diagnosis } from './diagnosis.mjs';
import { districts } from './districts.mjs';
import { networks } from './networks.mjs';
import { wiring } from './wiring.mjs';

const DRAWS = 1_000_000;
const LEAST_RATIO = 50;
const LARGE_FLEET_MS = 20;

const standing = { kind: 'even', span: { from: 0.04, to: 0.04 } };
const group = (count, from, to) => ({ count, running: even(from, to), standing });

/** Forty locomotives of two kinds, twelve of them moving. */
const FLEET = { trains: [group(28, 0.2, 0.5), group(12, 0.5, 1)], moving: 12, fixed: [] };
const LIMIT = 7.5;

/** A hundred in five groups, thirty moving. */
const LARGE = {
  trains: [group(20, 0.06, 0.2), group(20, 0.1, 0.3), group(20, 0.2, 0.5), group(20, 0.25, 0.6), group(20, 0.5, 1)],
  moving: 30,
  fixed: [],
};

/** Share of random moments above the limit: the movers by a partial Fisher-Yates shuffle, each draw evenly spread. */
function simulate({ trains, moving }, limit, draws, random) {
  const count = trains.reduce((sum, one) => sum + one.count, 0);
  const extra = new Float64Array(count);
  const width = new Float64Array(count);
  let base = 0;
  let next = 0;
  for (const { count: alike, running, standing: stands } of trains) {
    for (let i = 0; i < alike; i++) {
      base += stands.span.from;
      extra[next] = running.span.from - stands.span.from;
      width[next] = running.span.to - running.span.from;
      next += 1;
    }
  }
  const order = Uint16Array.from({ length: count }, (_, i) => i);
  let above = 0;
  for (let draw = 0; draw < draws; draw++) {
    let total = base;
    for (let i = 0; i < moving; i++) {
      const other = i + Math.floor(random() * (count - i));
      const train = order[other];
      order[other] = order[i];
      order[i] = train;
      total += extra[train] + width[train] * random();
    }
    if (total > limit) above += 1;
  }
  return above / draws;
}

function against() {
  const exact = medianTime(() => demand(FLEET), 31, 20);
  const random = seeded(1);
  simulate(FLEET, LIMIT, DRAWS / 10, random);
  const chances = [];
  const simulated = median([1, 2, 3].map(() => time(() => chances.push(simulate(FLEET, LIMIT, DRAWS, random)))));
  const reference = chanceAbove(demand({ ...FLEET, step: 0.0005 }), LIMIT);
  const error = Math.abs(chanceAbove(demand(FLEET), LIMIT) - reference);
  const missed = median(chances.map((chance) => Math.abs(chance - reference)));
  const ratio = simulated / exact;
  return [
    {
      name: '40 trains, 12 moving, exact against 10^6 random moments (ms)',
      ours: ms(exact),
      yardstick: ms(simulated),
      ratio: ms(ratio),
      demand: `at least ${LEAST_RATIO} times as fast`,
      ok: ratio >= LEAST_RATIO,
    },
    {
      name: `the same, error of the chance above ${LIMIT} A (${ms(reference)})`,
      ours: ms(error),
      yardstick: ms(missed),
      ratio: ms(missed / Math.max(error, Number.EPSILON)),
      demand: 'the smaller error',
      ok: error < missed,
    },
  ];
}

/** The same with 500 lit coaches and 500 accessories, whole and as one of two districts. */
const LARGEST = {
  ...LARGE,
  fixed: [
    { count: 500, draw: even(0.005, 0.03) },
    { count: 500, draw: even(0.01, 0.03) },
  ],
};

const largeFleets = () => [
  large('100 trains in five groups, 30 moving', LARGE),
  large('the same, 500 coaches, 500 accessories', LARGEST),
  large('the same, one of two districts', { ...LARGEST, share: 0.5 }),
];

function large(name, fleet) {
  const ours = medianTime(() => fittingDemand(fleet), 21, 10);
  const loop = medianTime(calibrate, 11, 5);
  return {
    name: `${name} (ms); a plain loop over 2 million numbers`,
    ours: ms(ours),
    yardstick: ms(loop),
    ratio: ms(ours / loop),
    demand: `under ${LARGE_FLEET_MS} ms`,
    ok: ours < LARGE_FLEET_MS,
  };
}

/** Rows of name, ours, yardstick, ratio, demand and whether it is met. */
export async function run() {
  return [
    ...against(),
    ...largeFleets(),
    ...networks({ lusolve, matrix, sparse }),
    ...wiring(),
    ...diagnosis(),
    ...(await districts()),
  ];
}
