// The rows against the circuit: where a row says that a sign has a value never or rarely under a cause, the virtual layout must not show it often.
// What is left stands here with its reason.
import { mkdirSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { SignId } from '../../src/wizards/put-it-right/model/signs.ts';
import type { TableFault } from './injection.ts';
import type { Cell } from './physics.ts';
import { Physics, wilson } from './physics.ts';
import { SIGN_READS } from './signs.ts';
import { allInjected } from './walks.ts';

const LAYOUTS = 8;

/** Signs that the table has written into it and does not work out. */
const WRITTEN: ReadonlySet<string> = new Set<SignId>(['since']);

interface Unlike {
  readonly because: string;
  readonly cells: readonly (readonly [TableFault, SignId])[];
}

/** Where the circuit is not what the row speaks of. */
const UNLIKE: readonly Unlike[] = [
  {
    because:
      'the part is not yet connected, by what the person came with: its wires are out and nothing is asked of them',
    cells: [
      ['forgotten-path', 'feed-wires'],
      ['old-feeder-left', 'feed-wires'],
      ['gap-closed', 'feed-wires'],
      ['stored-energy', 'feed-wires'],
      ['still-straddling', 'feed-wires'],
      ['forgotten-path', 'swap'],
      ['old-feeder-left', 'swap'],
      ['stored-energy', 'volts'],
      ['still-straddling', 'volts'],
      ['stored-energy', 'commands'],
      ['still-straddling', 'commands'],
    ],
  },
  {
    because: 'stage and breaker are one on the table: no other one opens in its place',
    cells: [
      ['breaker-setting', 'trouble'],
      ['breaker-setting', 'goes-off'],
      ['breaker-setting', 'unit-shows'],
      ['breaker-setting', 'goes-with-unit'],
      ['breaker-setting', 'goes-with-supply'],
      ['breaker-setting', 'before'],
    ],
  },
  {
    because: 'a weaker supply collapses under the coin before the slow unit sees it',
    cells: [['slow-trip', 'goes-with-supply']],
  },
  {
    because: 'both units are shorted on each other, and which of them goes off is chance',
    cells: [
      ['leftover-wiring', 'goes-with-unit'],
      ['reverser-grading', 'goes-with-unit'],
      ['wheel-bridges-frog', 'goes-with-unit'],
    ],
  },
  {
    because: 'the two sides are read at the gap between the parts, the row speaks of those of the loop',
    cells: [
      ['loop-too-short', 'sides'],
      ['two-auto-reversers', 'sides'],
    ],
  },
  { because: 'each supply of the table has a mains lead of its own', cells: [['mains-sag', 'where']] },
  { because: 'volts are read while the trains still charge', cells: [['inrush', 'volts']] },
  {
    because: 'the vehicle with the wide wheel stands on the frog while it is read',
    cells: [['wheel-bridges-frog', 'commands']],
  },
  {
    because: 'half of the trains of the table are still too many for it',
    cells: [
      ['supply-limit', 'fewer'],
      ['supply-hiccup', 'fewer'],
    ],
  },
];

const REASONS = new Map(
  UNLIKE.flatMap(({ because, cells }) => cells.map(([cause, sign]) => [`${cause} ${sign}`, because])),
);

const named = ({ cause, sign, value, word, shown, of }: Cell): string =>
  `${cause} · ${sign} · ${value}: ${word}, shown on ${shown} of ${of}`;

describe('What a row calls never or rarely', () => {
  let denied: readonly Cell[] = [];
  let others: readonly Cell[] = [];

  beforeAll(() => {
    const physics = new Physics();
    for (const one of allInjected(LAYOUTS)) physics.add(one);
    const outside = physics.outside(LAYOUTS);
    denied = outside.denied.filter(({ sign }) => !WRITTEN.has(sign));
    others = outside.others.filter(({ sign }) => !WRITTEN.has(sign));
    mkdirSync('reports', { recursive: true });
    const lines = (cells: readonly Cell[]): string =>
      cells.map((cell) => `${named(cell)} · ${REASONS.get(`${cell.cause} ${cell.sign}`) ?? ''}`).join('\n');
    writeFileSync(
      'reports/physics.txt',
      `The circuit shows what the row denies\n${lines(denied)}\n\nThe row allows several ways, the table builds one\n${lines(others)}\n`,
    );
  }, 300_000);

  test('is not shown often by the circuit, but for what stands here with its reason', () => {
    expect(denied.filter(({ cause, sign }) => !REASONS.has(`${cause} ${sign}`)).map(named)).toEqual([]);
  });

  test('is read off for more than forty signs', () => {
    expect(Object.keys(SIGN_READS).length).toBeGreaterThan(40);
  });
});

test('The interval of a share is that of the textbook: 8 of 10 leave 49 to 94 %', () => {
  const [low, high] = wilson(8, 10);
  expect(low).toBeCloseTo(0.49, 2);
  expect(high).toBeCloseTo(0.943, 2);
});
