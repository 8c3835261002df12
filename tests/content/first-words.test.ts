// What somebody reads first of an answer to "Is my power enough?": no praise before what has to be put right, and nothing that contradicts it.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fitsOf,
  headlineOf,
  leadOf,
  levelsOf,
  limitWords,
  remedyName,
  severalOf,
  toDoOf,
  tonightOf,
  triedOf,
  verdictOf,
  warningsOf,
} from '../../src/components/planning/enough-current/answer-texts.ts';
import { Numbers } from '../../src/components/words/numbers.ts';
import type { FixWords } from '../../src/components/words/words.ts';
import { sayer } from '../../src/components/words/words.ts';
import { concluded } from '../../src/wizards/enough-current/result.ts';
import { LEAST_LIMIT } from '../../src/wizards/planning/questions.ts';
import { spread } from '../spread.ts';
import { told } from '../wizards/told.ts';
import { wordsOf } from './folder.ts';

const SENTENCES: Readonly<Record<string, string>> = Object.fromEntries(
  wordsOf('en', 'words').flatMap(({ data }) => Object.entries(data).map(([key, text]) => [key, String(text)])),
);
const EVENING = { do: 'Run your busiest evening.', cautions: [] };
const TEST = {
  do: 'Prove that a short trips.',
  cautions: [],
  job: { title: 'Load test, then coin', href: '/en/fixes/load-test-and-coin/' },
};
const FIXES: Readonly<Record<string, FixWords>> = Object.fromEntries(
  wordsOf('en', 'fixes').map(({ id, data }) => [
    id,
    {
      title: String(data['title']),
      short: String(data['short']),
      lead: '',
      because: '',
      needs: '',
      effort: '',
      before: [],
      steps: id === 'power-is-enough' ? [EVENING, TEST] : [],
      verify: '',
      next: '',
    },
  ]),
);

/** The steps, where they begin with the test. */
function provedFirst(found: Parameters<typeof severalOf>[0]) {
  const steps = severalOf(found)?.fix.steps;
  return steps?.[0]?.job?.href === TEST.job.href ? steps : undefined;
}

/** Four modern H0 locomotives, two of them moving, on 16 V d.c. and 3 A, a unit for 3 A: the quick answer, and what is told after it. */
const QUICK = {
  system: 'two-rail',
  scale: 'h0',
  modern: '4',
  older: '0',
  moving: '2',
  'supply-kind': 'dc',
  'supply-volts': '16 V',
  'supply-amps': '5 A',
  'supply-plug': 'centre-plus',
  'unit-limit': '3 A',
  'unit-input': 'dc',
  'unit-input-volts': '16 V',
  'unit-plug': 'centre-plus',
} as const;
const REST = {
  sound: '0',
  stored: '0',
  coaches: '0',
  accessories: '0',
  'unit-rails': 'follows',
  'own-use': 'handhelds',
} as const;
const SMALL_Z = {
  scale: 'z',
  modern: '2',
  moving: '1',
  'supply-volts': '20 V',
  'supply-amps': '2 A',
  'unit-limit': '1.5 A',
  'unit-input-volts': '20 V',
} as const;

type Texts = Readonly<Record<string, string>>;

function read(more: Texts, rest: Texts = REST) {
  const answers = told({ ...QUICK, ...rest, ...more });
  const { reckoning, conclusion } = concluded(answers);
  const say = sayer(SENTENCES, 'en');
  const numbers = new Numbers('en', 'metric', SENTENCES);
  const found = { say, numbers, fixes: FIXES, answers, language: 'en', reckoning, conclusion };
  const first = [verdictOf(found).word, headlineOf(found), ...warningsOf(found), leadOf(found)];
  return {
    reckoning,
    conclusion,
    chip: verdictOf(found).word,
    headline: headlineOf(found),
    warnings: warningsOf(found).join(' '),
    lead: leadOf(found),
    tonight: tonightOf(found),
    proved: provedFirst(found),
    others: conclusion.remedies.map((remedy) => remedyName(remedy, found)),
    first: first.join(' '),
    tried: triedOf(found),
    fits: fitsOf(found).join(' '),
    levels: levelsOf(reckoning),
    limit: limitWords(reckoning, say, numbers),
    toDo: toDoOf(found),
    chosen: conclusion.chosen === undefined ? undefined : remedyName(conclusion.chosen, found),
  };
}

describe('rails above what is usual for the scale', () => {
  const high: [string, Texts][] = [
    ['Z at 20 V', SMALL_Z],
    ['N at 20 V', { scale: 'n', modern: '2', moving: '1', 'supply-volts': '20 V', 'unit-input-volts': '20 V' }],
    ['H0 at 22 V', { 'supply-volts': '22 V', 'unit-input-volts': '22 V' }],
  ];

  test.each(high)('%s that follow the supply: they are set lower before anything is said of trains', (_, texts) => {
    const said = read(texts);
    expect(said.conclusion.outcome).toBe('rail-voltage-too-high');
    expect(said.first).toMatch(/lower/);
    expect(`${said.first} ${said.tonight}`).not.toMatch(/ample|nothing to buy|can run/);
    expect(said.tonight).toMatch(/no train/);
  });

  test.each(high)('%s, when nobody has told where they come from: that is looked at first', (_, texts) => {
    const said = read(texts, {});
    expect(said.conclusion).toMatchObject({ kind: 'depends', deciding: { unknown: 'rails' } });
    expect(`${said.first} ${said.tonight}`).not.toMatch(/ample|nothing to buy|can run/);
  });

  test('a volt above it is told right below the verdict, which stands', () => {
    const said = read({ 'supply-volts': '19 V', 'unit-input-volts': '19 V' });
    expect(said.conclusion.outcome).toBe('power-is-enough');
    expect(said.warnings).toMatch(/19.V.*15 to 18/);
  });

  test('22 V at scale 1 are usual', () => {
    const said = read({ scale: '1', 'supply-volts': '22 V', 'unit-input-volts': '22 V', 'supply-amps': '8 A' });
    expect(said.headline).not.toMatch(/higher/);
  });

  test('a set output is judged by what it is set to', () => {
    expect(read({ ...SMALL_Z, 'unit-rails': 'set', 'unit-rail-volts': '10 V' }).conclusion.outcome).toBe(
      'power-is-enough',
    );
  });
});

test('24 V for Z on an input that nobody has read: unplugged, and labels first; nobody measures with it', () => {
  const said = read({ ...SMALL_Z, 'supply-volts': '24 V', 'supply-amps': '5 A', 'unit-input-volts': 'unknown' });
  expect(said.conclusion).toMatchObject({ outcome: 'read-both-labels', kind: 'labels-first' });
  expect(said.warnings).toMatch(/unplugged.*24.V.*9 to 12/);
  expect(said.first).not.toMatch(/[Mm]easure|22.V/);
  expect(said.tonight).toMatch(/stays unplugged/);
});

test('18 V for Z on a unit that nobody has read: unplugged too, though no track is forbidden 18 V', () => {
  const unread = {
    'unit-input': 'unknown',
    'unit-input-volts': 'unknown',
    'unit-limit': 'unknown',
    'unit-rails': 'follows',
  };
  const said = read({ ...SMALL_Z, 'supply-volts': '18 V', 'supply-amps': '8 A', ...unread });
  expect(said.conclusion.kind).toBe('labels-first');
  expect(said.warnings).toMatch(/unplugged.*18.V.*9 to 12/);
  expect(said.tonight).toMatch(/stays unplugged/);
});

test('18 V for H0 on a unit that nobody has read is nothing unusual', () => {
  const said = read({ 'supply-volts': '18 V', 'unit-input': 'unknown', 'unit-input-volts': 'unknown' });
  expect(said.conclusion.kind).toBe('labels-first');
  expect(said.tonight).not.toMatch(/unplugged/);
});

test('one figure that nobody has read is named', () => {
  expect(read({ 'supply-amps': 'unknown' }).lead).toMatch(/amperes of the supply\.$/);
  expect(read({ 'unit-limit': 'unknown' }).lead).toMatch(/amperes the unit passes\.$/);
});

test('equal ratings trip perhaps: said with the verdict, and one stays beside it tonight', () => {
  const said = read({ 'supply-amps': '3 A' });
  expect(said.warnings).toMatch(/may be too small to trip.*: test it/);
  expect(said.tonight).toMatch(/Stay beside it/);
  expect(read({}).tonight).not.toMatch(/Stay beside it/);
});

test('lamps that were told as filament are not asked for again', () => {
  for (const coaches of ['10', '20', '30', '40', '60']) {
    const said = read({ modern: '6', moving: '3', coaches, lamps: 'filament' });
    expect(said.headline).not.toMatch(/the lamps/);
    expect(said.conclusion.deciding?.unknown).not.toBe('coach-lamps');
  }
  expect(read({ modern: '6', moving: '3', coaches: '30', lamps: 'filament' }).conclusion.deciding?.unknown).toBe(
    'coach-draws',
  );
});

describe('too much for what is there', () => {
  test('four older locomotives of scale 1 on a supply that cannot trip its unit: what helps the trains stands beside it', () => {
    const garden = {
      scale: '1',
      modern: '0',
      older: '4',
      moving: '3',
      coaches: '10',
      lamps: 'filament',
      'supply-volts': '20 V',
      'supply-amps': '5 A',
      'unit-limit': '10 A',
      'unit-input-volts': '20 V',
    };
    const { conclusion } = read(garden);
    expect(conclusion.outcome).toBe('supply-cannot-trip');
    expect(conclusion.remedies.map(({ id }) => id)).toContain('fewer-moving');
  });

  test('24 trains that only stand: they are parked before anything is bought', () => {
    const club = {
      modern: '30',
      older: '10',
      sound: '10',
      moving: '16',
      coaches: '20',
      lamps: 'led',
      'supply-volts': '18 V',
      'supply-amps': '8 A',
      'unit-limit': '5 A',
      'unit-input-volts': '19 V',
      'unit-rails': 'set',
      'unit-rail-volts': '15 V',
      'own-use': 'many',
    };
    const { lead, tonight, conclusion } = read(club);
    expect(lead).toMatch(/^Divide/);
    expect(tonight).toMatch(
      /^Tonight: up to \d of your mix moving at once, or 6 with all that waits on switched-off track/,
    );
    expect(conclusion.mayMove?.alone).toBeGreaterThan(conclusion.mayMove?.tight ?? 0);
  });

  test('what runs but is tight: tonight says so, with the same number as the answer', () => {
    const { conclusion, tonight } = read({ modern: '0', older: '3', moving: '3' });
    expect(conclusion.chosen?.id).toBe('fewer-moving');
    expect(tonight).toMatch(new RegExp(`tight: ${conclusion.chosen?.counts.moving} have room`));
    expect(conclusion.remedies.map(({ id }) => id)).not.toContain('breakers-and-sub-districts');
  });

  test('no train before the rails are measured, and then none is counted either', () => {
    const either = {
      modern: '8',
      older: '3',
      moving: '6',
      'supply-kind': 'ac',
      'supply-amps': '3 A',
      'supply-plug': 'terminals',
      'unit-limit': '5 A',
      'unit-input': 'either',
      'unit-plug': 'terminals',
    };
    const { conclusion, tonight } = read(either);
    expect(tonight).toMatch(/no train/);
    expect(conclusion.mayMove).toBeUndefined();
  });

  test('a hundred trains that are too many even standing: fewer on powered track, not fewer at once', () => {
    const many = {
      modern: '100',
      moving: '100',
      sound: '100',
      coaches: '500',
      lamps: 'filament',
      'supply-amps': '4 A',
    };
    const { conclusion, lead } = read(many);
    expect(conclusion).toMatchObject({ outcome: 'mute-and-park', chosen: undefined });
    expect(lead).toMatch(/Even what only stands/);
  });
});

test('a trip current below which a short surely trips: what the unit itself takes is kept back where nobody has told it', () => {
  const weak = { 'supply-amps': '2 A' };
  const untold = read(weak, {});
  expect(untold.conclusion.tripBelow).toBeCloseTo(1.7, 9);
  expect(untold.lead).toMatch(/1\.7.A.*0\.3 A/);
  expect(read({ ...weak, 'own-use': 'bare' }).conclusion.tripBelow).toBeCloseTo(2, 9);
});

describe('a supply that gives hardly more than its unit takes for itself', () => {
  const tiny = { 'supply-amps': '0.2 A' };
  const scale1 = { scale: '1', 'supply-volts': '18 V', 'unit-input-volts': '18 V' };

  test('is too small for the unit however low that is set: a larger one is named, and no trip current', () => {
    for (const rest of [REST, {}]) {
      const said = read(tiny, rest);
      expect(said.conclusion).toMatchObject({ outcome: 'supply-cannot-trip', tripBelow: undefined });
      expect(said.lead).toMatch(/too small for this unit.*One of 4.A surely trips it/);
      expect(said.lead).not.toMatch(/below|set/);
      expect(said.toDo.toDo).toMatch(/^A supply of .* 4.A$/);
    }
  });

  test('nor is a trip current named where no permitted supply surely trips it', () => {
    const said = read({ ...scale1, ...tiny, 'unit-limit': '10 A' });
    expect(said.conclusion).toMatchObject({ outcome: 'supply-cannot-trip', toBuy: undefined, tripBelow: undefined });
    expect(said.lead).toMatch(/too small for this unit, however low that is set/);
    expect(said.toDo).toEqual({});
  });

  test('behind a unit for 30 A: that is set to what the scale bears, and the supply is too small besides', () => {
    const said = read({ ...scale1, ...tiny, 'unit-limit': '30 A' });
    expect(said.conclusion).toMatchObject({ outcome: 'lower-trip-level', tripBelow: undefined, remedies: [] });
    expect(said.lead).toMatch(/trips at 30.A.*at most 10.A.*supply of 0\.2.A is too small/);
    expect(said.lead).not.toMatch(/ 0.A/);
  });
});

test('no trip current is advised that a unit’s label would not be taken with, whatever is told of unit, supply and own use', () => {
  fc.assert(
    fc.property(
      fc.record({
        scale: fc.constantFrom('z', 'n', 'tt', 'h0', '0', '1'),
        kind: fc.constantFrom('dc', 'ac'),
        supply: fc.oneof(spread(0.1, 1.5), spread(0.1, 40)),
        limit: spread(0.3, 30),
        use: fc.oneof(fc.constantFrom('bare', 'handhelds', 'many', 'unknown'), spread(0, 5)),
        rails: fc.constantFrom('set', 'converter'),
      }),
      ({ scale, kind, supply, limit, use, rails }) => {
        const said = read(
          {
            ...{
              scale,
              'supply-kind': kind,
              'unit-input': 'either',
              'supply-plug': 'terminals',
              'unit-plug': 'terminals',
            },
            ...{ 'supply-volts': '14 V', 'unit-input-volts': '8-24 V', 'unit-rails': rails, 'unit-rail-volts': '12 V' },
            ...{ 'supply-amps': `${supply} A`, 'unit-limit': `${limit} A` },
          },
          { ...REST, ...(typeof use === 'number' ? { 'own-use': 'measured', idle: `${use} A` } : { 'own-use': use }) },
        );
        const { tripBelow, toBuy, chosen, remedies } = said.conclusion;
        if (tripBelow !== undefined) expect(tripBelow).toBeGreaterThan(LEAST_LIMIT);
        for (const amps of [toBuy?.amps ?? 1, ...[chosen, ...remedies].flatMap((one) => one?.ratings ?? [])])
          expect(amps).toBeGreaterThan(0);
        // Digits of a current that is none: "0 A", "-0.1 A".
        expect(`${said.lead} ${said.toDo.toDo ?? ''}`).not.toMatch(/(?<![\d.])0\s*A\b|[-−]\d/u);
      },
    ),
    { numRuns: 60 },
  );
});

test('where even what stands is too much, “fewer moving” says that it holds only with all others parked', () => {
  const club = { modern: '40', moving: '14', sound: '20', 'supply-volts': '18 V', 'unit-limit': '5 A' } as const;
  const said = read({ ...club, 'unit-input-volts': '14-20 V' }, { stored: '0' });
  const fewer = said.conclusion.remedies.find(({ id }) => id === 'fewer-moving');
  expect(fewer?.counts).toMatchObject({ moving: 8, parked: 32 });
  expect(said.others.filter((name) => /8, with all others on switched-off track/.test(name))).toHaveLength(1);
});

test('3 A on 3 A: the test whether a short trips is the first step, at the place that the warning names', () => {
  const said = read({ 'supply-amps': '3 A' }, { ...REST, 'own-use': 'bare' });
  expect(said.warnings).toMatch(/in a short: test it/);
  expect(said.proved?.[0]?.do).toMatch(/load test, then the coin near the unit/);
  expect(said.proved?.[0]?.do).toMatch(/the load test, then the coin near the unit.*on both rails/);
  expect(said.proved?.[0]?.job).toEqual(TEST.job);
  // Its dangers stand at the sentence that says to press it, not one page further.
  expect(said.proved?.[0]?.do).toMatch(/only after a pass/);
  expect(said.proved?.[0]?.cautions).toEqual(expect.arrayContaining(['coin-rules', 'resistor-hot']));
  expect(said.proved?.slice(1)).toEqual([EVENING, TEST]);
  expect(read({}).proved).toBeUndefined();
});

describe('what is tried beside the answer', () => {
  test('eight moving of eight, lit coaches untold, equal ratings: the same word, and the same provisos, as when it is told', () => {
    const said = read({ modern: '8', moving: '8', 'supply-amps': '5 A', 'unit-limit': '5 A' }, {});
    expect(said.tried.word).toBe(said.chip);
    expect(said.tried.word).toBe('it depends');
    expect(said.tried.sentence).toContain(said.headline);
    expect(said.tried.sentence).toMatch(/lit coaches/);
    expect(said.tried.sentence).toMatch(/may be too small to trip the unit in a short: test it/);
  });

  test('a smaller supply that cannot trip the unit is no enough for the trains', () => {
    const said = read({ 'supply-amps': '2 A' });
    expect(said.tried).toMatchObject({ tone: 'short', word: said.chip });
    expect(said.tried.sentence).toContain(said.headline);
  });
});

describe('what is to be got', () => {
  const CLUB_OF_FORTY = {
    modern: '40',
    moving: '14',
    sound: '20',
    'supply-volts': '18 V',
    'supply-amps': '8 A',
    'unit-limit': '5 A',
    'unit-input-volts': '19 V',
    'unit-rails': 'set',
    'unit-rail-volts': '15 V',
  };

  test('for more districts: so many boosters, and what each of their supplies gives', () => {
    const said = read(CLUB_OF_FORTY);
    expect(said.conclusion.outcome).toBe('more-districts');
    const boosters = (said.conclusion.chosen?.usable.length ?? 1) - 1;
    expect(said.chosen).toBe(`${boosters} more boosters, each with a supply of 6\u00a0A`);
    expect(read({ ...CLUB_OF_FORTY, boosters: '1' }).chosen).toMatch(/those that you have among them/);
  });

  test('beside a larger supply for the command station: which of them is whose', () => {
    const names = read({
      modern: '9',
      moving: '8',
      'supply-amps': '3.5 A',
      'unit-limit': '3.4 A',
      'own-use': 'many',
    }).others;
    expect(names.join('; ')).toMatch(
      /A booster with the freed supply, and a supply of [\d.]+\u00a0A for the command station/,
    );
    expect(names.join('; ')).toMatch(
      /A booster with its own supply of [\d.]+\u00a0A, and a supply of [\d.]+\u00a0A for the command station/,
    );
    expect(names.join('; ')).not.toMatch(/\d A \+ \d| × /);
  });

  test('a hundred of a hundred on 5 A: districts, and how many may move with them; with 3 A not even they carry a quarter, and that is said', () => {
    const hundred = { modern: '100', moving: '100', 'unit-limit': '5 A', 'supply-amps': '6 A' };
    const said = read(hundred);
    expect(said.conclusion.outcome).toBe('more-districts');
    expect(said.lead).toMatch(/Even 6 districts.*no more than 3\d moving at once/);
    const less = read({ ...hundred, 'unit-limit': '3 A', 'supply-amps': '4 A' });
    expect(less.conclusion.outcome).toBe('fewer-moving');
    expect(less.fits).toMatch(/Even 6 districts would carry no more than \d+ moving/);
  });
});

describe('where a short perhaps does not trip the unit', () => {
  test('the box is headed by the test that its button opens, with what that takes', () => {
    const said = read({ 'supply-amps': '3 A' });
    expect(said.proved?.[0]?.do).toMatch(/Prove that a short switches the unit off/);
    expect(said.toDo).toEqual({
      toDo: 'Test whether a short trips it',
      price: 'Half an hour.',
    });
  });

  test('a remedy that follows is named after it, with its own price', () => {
    const said = read({
      modern: '14',
      moving: '2',
      sound: '14',
      'supply-amps': '3 A',
      'unit-limit': '3 A',
      'unit-input-volts': '19 V',
    });
    expect(said.conclusion.outcome).toBe('mute-and-park');
    expect(said.toDo.toDo).toMatch(/^Test first, then: /);
    expect(said.toDo.price).toMatch(/^Half an hour\. Then: costs nothing/);
  });
});

describe('labels of which one was read in full', () => {
  test('what is missing on the other is named', () => {
    const said = read({
      'unit-limit': 'unknown',
      'unit-input': 'unknown',
      'unit-input-volts': 'unknown',
      'unit-plug': 'unknown',
    });
    expect(said.conclusion.outcome).toBe('read-both-labels');
    expect(said.headline).toMatch(/what is missing/);
    expect(said.lead).toMatch(/how many amperes the unit passes.*a\.c\. or d\.c\..*volts that the unit/);
    expect(said.lead).not.toMatch(/two labels/);
  });

  test('both are named where both are unread', () => {
    const none = Object.fromEntries(
      Object.keys(QUICK)
        .filter((id) => /^(?:supply|unit)-/.test(id))
        .map((id) => [id, 'unknown']),
    );
    expect(read(none).lead).toMatch(/two labels/);
  });
});

test('no train at all: that nothing is judged but an empty track comes first, and nothing is praised', () => {
  const said = read({ modern: '0', older: '0', moving: '0' });
  expect(said.chip).toBe('it depends');
  expect(said.headline).toMatch(/no train/);
  expect(`${said.first} ${said.tonight ?? ''}`).not.toMatch(/0 moving|can run|ample/);
});

test('a limit that nobody has read is no level to plan with: nothing is drawn of it, and where it is named that is said', () => {
  const said = read({ 'unit-limit': 'unknown' });
  expect(said.levels).toBeUndefined();
  expect(said.limit).toMatch(/usual for this scale, not read/);
  expect(read({}).levels?.hard).toBeCloseTo(3, 6);
  expect(read({}).limit).not.toMatch(/not read/);
});
