import { describe, expect, test } from 'vitest';
import { assertModel } from '../../src/engine/diagnosis/authoring.ts';
import { compile } from '../../src/engine/diagnosis/compile.ts';
import type { CheckRow } from '../../src/engine/diagnosis/model.ts';
import { SOMETHING_ELSE, WORD_CHANCE } from '../../src/engine/diagnosis/model.ts';
import { COMPLAINTS } from '../../src/wizards/put-it-right/faults/complaints.ts';
import type { FaultId } from '../../src/wizards/put-it-right/faults/faults.ts';
import { CHECKS, checksAsked } from '../../src/wizards/put-it-right/faults/fitting.ts';
import { FAULT_MODEL } from '../../src/wizards/put-it-right/faults/index.ts';
import type { CheckId } from '../../src/wizards/put-it-right/faults/rows.ts';

const { faults, checks, complaints } = FAULT_MODEL;
const faultIds = faults.map(({ id }) => id);
const classOf = new Map(faults.map(({ id, fixClass }) => [id, fixClass]));
const classes = new Set(classOf.values());
const KEBAB = /^[a-z]+(-[a-z]+)*$/;

/** Chance of each option for one fault, 0 to 1. */
function chances({ options, otherwise, when }: CheckRow, fault: string): number[] {
  const words = when[fault] ?? otherwise;
  const weights = options.map((_, i) => WORD_CHANCE[words[i] ?? 'never']);
  const total = weights.reduce((sum, one) => sum + one, 0);
  return weights.map((weight) => weight / total);
}

/** How far two faults lie apart in one check: half the sum of differences, 0 alike to 1 never the same answer. */
function apart(check: CheckRow, one: string, other: string): number {
  const second = chances(check, other);
  return chances(check, one).reduce((sum, chance, i) => sum + Math.abs(chance - (second[i] ?? 0)), 0) / 2;
}

const mostApart = (from: readonly CheckRow[], one: string, other: string) =>
  Math.max(...from.map((check) => apart(check, one, other)));

/** Pairs of faults of different repairs that one complaint can have. */
function rivals(priors: Readonly<Record<string, number>>): [string, string][] {
  const known = Object.keys(priors).filter((id) => id !== SOMETHING_ELSE);
  return known.flatMap((one, i) =>
    known.slice(i + 1).flatMap((other): [string, string][] => {
      return classOf.get(one) === classOf.get(other) ? [] : [[one, other]];
    }),
  );
}

function row(id: CheckId): CheckRow {
  const found = checks.find((check) => check.id === id);
  if (found === undefined) throw new Error(`no check ${id}`);
  return found;
}

/** The answer a fault most often gives. */
function answer(check: CheckId, fault: FaultId): string | undefined {
  const found = row(check);
  const of = chances(found, fault);
  return found.options[of.indexOf(Math.max(...of))];
}

/** The answer where nothing that the check looks for is wrong. */
const usualAnswer = (check: CheckId) => answer(check, 'address');

/** A check that never has another likeliest answer, as a sentence. */
function idle(check: CheckRow, all: readonly string[]): string[] {
  const likeliest = (fault: string) => {
    const of = chances(check, fault);
    return of.indexOf(Math.max(...of));
  };
  if (new Set(all.map(likeliest)).size > 1) return [];
  return [
    `The check "${check.id}" comes out alike whatever is wrong: name in \`when\` whom it shows (npm run map -- ${check.id}).`,
  ];
}

/** As few checks as the least-named fault has. Danger ends the walk at its first question. */
const LEAST_NAMED = 5;
const ASKED_ONCE: readonly string[] = ['unsafe-heat'];

/** A fault that somebody forgot to go through the checks for, as a sentence. */
function leftAlone(fault: string, all: readonly CheckRow[]): string[] {
  const named = all.filter(({ when }) => Object.hasOwn(when, fault)).length;
  if (named >= LEAST_NAMED || ASKED_ONCE.includes(fault)) return [];
  return [
    `The fault "${fault}" is named by ${named} check${named === 1 ? '' : 's'} and answers all others as most faults do: go through them (npm run map -- ${fault}).`,
  ];
}

describe('The fault model', () => {
  test('is wide enough: faults, repairs, checks and complaints', () => {
    expect(faults.length).toBeGreaterThanOrEqual(75);
    expect(classes.size).toBeGreaterThanOrEqual(50);
    expect(checks.length).toBeGreaterThanOrEqual(55);
    expect(complaints.map(({ id }) => id)).toEqual([
      'stops-at-gap',
      'trips-at-gap',
      'shuts-down-after-swap',
      'trips-with-traffic',
      'trips-at-power-on',
      'ignores-commands',
      'slow-far-away',
      'jerks-at-gap',
      'accessories-misbehave',
      'short-not-noticed',
      'loop-trips',
      'still-runs-past-gap',
      'trips-at-one-spot',
      'cuts-out-after-a-while',
    ]);
  });

  test('names everything in kebab-case', () => {
    const names = [...faultIds, ...classes, ...checks.flatMap(({ id, options }) => [id, ...options])];
    expect(names.filter((name) => !KEBAB.test(name))).toEqual([]);
  });

  test.each(checks)('has as many words as options in $id', ({ options, otherwise, when }) => {
    expect(options.length).toBeGreaterThanOrEqual(2);
    expect(options.length).toBeLessThanOrEqual(6);
    for (const words of [otherwise, ...Object.values(when)]) expect(words).toHaveLength(options.length);
  });

  test('has no mistake of an author that the engine knows', () => {
    expect(() => assertModel(FAULT_MODEL)).not.toThrow();
  });

  test.each(complaints)('is taken by the engine for $id', ({ id, priors }) => {
    const compiled = compile(FAULT_MODEL, id, { callMinutes: 60, wrongFixMinutes: 10, slip: 0 });
    expect(compiled.faults).toHaveLength(Object.keys(priors).length);
  });

  test.each(complaints)('leaves room for an unknown cause in $id, but not much', ({ priors }) => {
    const total = Object.values(priors).reduce((sum, share) => sum + share, 0);
    const share = (priors[SOMETHING_ELSE] ?? 0) / total;
    expect(share).toBeGreaterThan(0.01);
    expect(share).toBeLessThan(0.06);
    expect(Math.min(...Object.values(priors))).toBeGreaterThan(0);
  });

  test('reaches every fault from a complaint', () => {
    const reached = new Set(complaints.flatMap(({ priors }) => Object.keys(priors)));
    const unreached = faultIds.filter((fault) => !reached.has(fault));
    expect(unreached.map((fault) => `No complaint in complaints.ts has "${fault}" among its priors.`)).toEqual([]);
  });

  test('has for every fault a check that it answers otherwise than most faults do', () => {
    const shown = (fault: string) => (check: CheckRow) => {
      const usual = chances({ ...check, when: {} }, fault);
      return chances(check, fault).some((chance, i) => Math.abs(chance - (usual[i] ?? 0)) > 0.4);
    };
    expect(faultIds.filter((fault) => !checks.some(shown(fault)))).toEqual([]);
  });

  test.each(COMPLAINTS)('can tell causes of unlike repairs apart in $id', ({ id, priors }) => {
    const alike = rivals(priors).filter(([one, other]) => mostApart(checksAsked(id), one, other) < 0.4);
    expect(alike).toEqual([]);
  });

  test.each(COMPLAINTS)('can do so without a meter, though less well, in $id', ({ id, priors }) => {
    const without = checksAsked(id).filter(({ tool }) => tool !== 'multimeter');
    const alike = rivals(priors).filter(([one, other]) => mostApart(without, one, other) < 0.3);
    expect(alike).toEqual([]);
  });

  test('asks every check somewhere, and danger always', () => {
    const asked = COMPLAINTS.map(({ id }) => checksAsked(id).map((check) => check.id));
    expect(CHECKS.filter(({ id }) => !asked.some((ids) => ids.includes(id)))).toEqual([]);
    for (const ids of asked) expect(ids[0]).toBe('danger-now');
  });

  test('asks nothing of the far part’s unit before that part is connected', () => {
    const asked = checksAsked('still-runs-past-gap').map(({ id }) => id);
    for (const id of ['booster-lamp', 'pull-control-cable', 'two-lamps', 'meter-output'])
      expect(asked).not.toContain(id);
    expect(asked).toContain('jumper-test');
  });

  test('has no check that comes out alike whatever is wrong', () => {
    expect(checks.flatMap((check) => idle(check, faultIds))).toEqual([]);
  });

  test('says of every fault what it does to checks, and leaves not all to what most faults do', () => {
    expect(faultIds.flatMap((fault) => leftAlone(fault, checks))).toEqual([]);
  });

  describe('would notice', () => {
    const alike: CheckRow = { ...row('lamp-on-the-strip'), id: 'smell-the-rails', when: {} };
    test('a new check that all faults take alike', () => {
      expect(idle(alike, faultIds)).toEqual([
        'The check "smell-the-rails" comes out alike whatever is wrong: name in `when` whom it shows (npm run map -- smell-the-rails).',
      ]);
    });
    test('a new fault that stands in one check only', () => {
      const shown = { ...alike, when: { gremlin: alike.otherwise } };
      expect(leftAlone('gremlin', [shown, ...checks])).toEqual([
        'The fault "gremlin" is named by 1 check and answers all others as most faults do: go through them (npm run map -- gremlin).',
      ]);
    });
  });
});

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

  test('only the answer "none of these" shows that nothing got hot', () => {
    const shown = checks.flatMap(({ id, establishes }) =>
      Object.entries(establishes ?? {}).flatMap(([option, what]) => what.map((one) => `${id} ${option}: ${one}`)),
    );
    expect(shown).toEqual([
      'danger-now none: nothing-got-hot',
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

describe('The checks that mislead', () => {
  test('a locomotive stops with one rail cut just as it does with both', () => {
    expect(answer('other-locomotive-runs-on', 'one-rail')).toBe('stops');
    expect(answer('coach-in-far-part', 'one-rail')).toBe('dark');
    expect(answer('stand-across', 'one-rail')).toBe('nothing');
    expect(complaints.find(({ id }) => id === 'still-runs-past-gap')?.priors['one-rail']).toBeUndefined();
  });

  test('the jumper test shows it, and so does the card', () => {
    expect(answer('jumper-test', 'one-rail')).toBe('alive-with-one');
    expect(answer('card-through-gaps', 'one-rail')).toBe('not-cut');
    expect(answer('meter-across-the-gap', 'one-rail')).toBe('one-through');
    expect(usualAnswer('jumper-test')).toBe('dead-with-each');
  });

  test('stored energy drives a locomotive on over a good gap; another one stops', () => {
    expect(answer('other-locomotive-runs-on', 'stored-energy')).toBe('stops');
    expect(answer('other-locomotive-runs-on', 'old-feeder-left')).toBe('runs-on');
    expect(answer('coach-in-far-part', 'stored-energy')).toBe('dark');
    expect(answer('coach-in-far-part', 'old-feeder-left')).toBe('lit');
  });

  test('two lamps shine where the rails are reversed, and stay dark at unlike voltages or a dead far part', () => {
    for (const fault of ['feed-reversed', 'link-inverted'] as const) {
      expect(answer('two-lamps', fault)).toBe('both-light');
      expect(answer('meter-same-and-diagonal', fault)).toBe('same-rail-large');
      expect(answer('swap-track-wires', fault)).toBe('cured');
      expect(answer('vehicle-in-far-part', fault)).toBe('runs-well');
    }
    for (const fault of ['unlike-supplies', 'feed-missing', 'one-rail'] as const) {
      expect(answer('two-lamps', fault)).toBe('both-dark');
    }
  });

  test('a dead far part is not taken for one in phase by the meter', () => {
    expect(answer('meter-same-and-diagonal', 'feed-missing')).toBe('both-small');
  });

  test('a good control cable is missed when it is pulled, a dead one is not', () => {
    expect(answer('pull-control-cable', 'link-faulty')).toBe('nothing-changes');
    expect(answer('pull-control-cable', 'suppressor')).toBe('goes-dead');
  });

  test('a resistive short does not trip, and shows by warmth and ohms', () => {
    expect(answer('track-plug-pulled', 'leak')).toBe('no-fault-before');
    expect(answer('which-case-hot', 'leak')).toBe('wire-or-rail');
    expect(answer('meter-ohms-between-rails', 'leak')).toBe('some-ohms');
    expect(answer('lamp-in-series', 'metal-across')).toBe('bright');
  });

  test('resistance on the way lets a far coin stay on, a strong unit everywhere', () => {
    expect(answer('load-test', 'few-feeds')).toBe('weak-far');
    expect(answer('coin-far', 'thin-wire')).toBe('stays-on');
    expect(answer('load-test', 'high-trip')).toBe('firm-everywhere');
    expect(answer('coin-far', 'high-trip')).toBe('stays-on');
  });
});
