// What must hold of the checks, whatever the rows say: what comes first, what waits for what, what is never done under power.
import { describe, expect, test } from 'vitest';
import type { CheckId } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { isDoneFirst, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';

const { checks, causes } = SIGN_MODEL;
const classes = new Set(causes.map(({ fixClass }) => fixClass));

function row(id: CheckId) {
  const found = checks.find((check) => check.id === id);
  if (found === undefined) throw new Error(`no check ${id}`);
  return found;
}

describe('Safety', () => {
  const dangers = checks.flatMap(({ id, danger }) => Object.entries(danger ?? {}).map(([at, to]) => ({ id, at, to })));

  test('one question about heat, smell and mains comes before everything', () => {
    expect(checks.filter(({ first }) => first === true).map(({ id }) => id)).toEqual(['danger-now']);
    expect(row('danger-now').needs).toEqual([]);
    expect(row('danger-now').tool).toBe('eyes');
  });

  test('every danger is an option of its check and ends in a known repair', () => {
    expect(dangers.length).toBeGreaterThan(0);
    for (const { id, at, to } of dangers) {
      expect(checks.find((check) => check.id === id)?.options).toContain(at);
      expect(classes).toContain(to);
    }
  });

  test('only "nothing is warm" and "as warm as always" show that nothing got hot', () => {
    const shown = checks.flatMap(({ id, establishes }) =>
      Object.entries(establishes ?? {}).flatMap(([option, what]) =>
        what.filter(isDoneFirst).map((one) => `${id} ${option}: ${one}`),
      ),
    );
    expect(shown).toEqual([
      'danger-now none: nothing-got-hot',
      'danger-now as-always: nothing-got-hot',
      'read-labels all-fit: labels-read',
      'read-labels volts-differ: labels-read',
      'read-labels too-few-amps: labels-read',
      'read-labels unit-too-big: labels-read',
      'two-lamps both-dark: parts-agree',
      'load-test firm-everywhere: load-test-passed',
      'meter-same-and-diagonal diagonal-large: parts-agree',
    ]);
  });

  test('a coin comes only after a good load test, with nothing hot and no vehicle there', () => {
    const coins = checks.filter(({ tool }) => tool === 'coin');
    expect(coins.map(({ id }) => id)).toEqual(['coin-near', 'coin-far']);
    for (const { needs, risk } of coins) {
      expect(needs).toEqual(expect.arrayContaining(['vehicles-off', 'nothing-got-hot', 'load-test-passed']));
      expect(risk).toBeGreaterThanOrEqual(2);
    }
  });

  test('a load on the rails and a vehicle left across the gap wait until nothing is hot', () => {
    for (const id of ['load-test', 'stand-across'] as const) expect(row(id).needs).toContain('nothing-got-hot');
  });

  test('ohms are measured only with everything unplugged', () => {
    for (const id of ['meter-ohms-between-rails', 'meter-across-the-gap'] as const) {
      expect(row(id).needs).toEqual(expect.arrayContaining(['power-off', 'all-unplugged', 'vehicles-off']));
    }
  });

  test.each([
    'put-supplies-back',
    'borrow-supply',
    'feed-from-other-unit',
    'track-plug-pulled',
    'computer-and-earth',
    'pull-control-cable',
    'swap-track-wires',
    'jumper-test',
    'coach-in-far-part',
    'other-locomotive-runs-on',
    'unplug-across-boundary',
    'unclip-feeders',
    'lamp-in-series',
    'bridge-the-joiner',
    'clip-power-to-rails',
    'clip-thick-pair',
    'clip-along-the-bus',
    'accessories-own-supply',
    'meter-supply-current',
  ] as const)('%s pulls or clips nothing under power', (id) => {
    expect(row(id).needs).toContain('power-off');
  });
});
