// Whole answers, drawn as a browser draws them: what they say from the verdict down to the last step, and that no part contradicts another.
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { describe, expect, test, vi } from 'vitest';

vi.mock('../../src/components/planning/frame/reckon.ts', async () => {
  const { shareOutFor } = await import('../../src/wizards/share-out/index.ts');
  return {
    useReckoned: (task: string, answers: Answers, here: (answers: Answers) => unknown) =>
      task === 'share' ? shareOutFor(answers) : here(answers),
  };
});
vi.mock('../../src/components/planning/frame/use-stages.ts', () => ({ useStages: (last: number) => last }));
vi.mock('../../src/components/planning/frame/Surer.tsx', () => ({ Surer: () => null }));
vi.mock('../../src/components/link/Share.tsx', () => ({ Share: () => null }));
vi.mock('../../src/components/planning/enough-current/WhatIf.tsx', () => ({ WhatIf: () => null }));

import { EnoughAnswer } from '../../src/components/planning/enough-current/EnoughAnswer.tsx';
import { ShareOutAnswer } from '../../src/components/planning/share-out/ShareOutAnswer.tsx';
import { WhichSupplyAnswer } from '../../src/components/planning/which-supply-where/WhichSupplyAnswer.tsx';
import { WireAnswer } from '../../src/components/planning/wire-it/WireAnswer.tsx';
import { inMeasures, Numbers } from '../../src/components/words/index.ts';
import type { FixWords, StepWords } from '../../src/components/words/words.ts';
import { sayer } from '../../src/components/words/words.ts';
import type { WizardId } from '../../src/wizards/index.ts';
import { type Answers, replay } from '../../src/wizards/planning/index.ts';
import { told, WIZARDS } from '../wizards/told.ts';
import { stepsOf, wordsOf } from './folder.ts';

const ANSWERS = {
  'enough-current': EnoughAnswer,
  'which-supply-where': WhichSupplyAnswer,
  'share-out': ShareOutAnswer,
  'wire-it': WireAnswer,
} as const;

const SENTENCES: Readonly<Record<string, string>> = Object.fromEntries(
  wordsOf('en', 'words').flatMap(({ data }) => Object.entries(data).map(([key, text]) => [key, String(text)])),
);

const TEST_JOB_ID = 'load-test-and-coin';
const TEST_JOB = { title: 'Load test, then coin', href: '/en/fixes/load-test-and-coin/' };
const FIXES: Readonly<Record<string, FixWords>> = Object.fromEntries(
  wordsOf('en', 'fixes').map((page): [string, FixWords] => {
    const text = (name: string): string => String(page.data[name] ?? '');
    const steps = stepsOf(page).map(
      ({ text: act, job }): StepWords => ({
        do: act,
        cautions: [],
        ...(job === TEST_JOB_ID ? { job: TEST_JOB } : {}),
      }),
    );
    const named = { title: text('title'), short: text('short'), effort: text('effort') };
    return [page.id, { ...named, lead: '', because: '', needs: '', before: [], steps, verify: '', next: '' }];
  }),
);

interface Drawn {
  /** From the verdict to the buttons, and the rest above the steps. */
  readonly top: string;
  readonly rest: string;
  readonly steps: readonly string[];
}

/** The answer to what is told, tags taken out. */
function drawn(wizard: WizardId, texts: Readonly<Record<string, string>>): Drawn {
  const machine = WIZARDS.find(({ name }) => name === wizard)?.machine;
  if (machine === undefined) throw new Error(wizard);
  const { used, left, snapshot } = replay(machine, told(texts));
  if (snapshot.value !== 'surer' && snapshot.value !== 'worked-out') throw new Error(String(snapshot.value));
  const numbers = new Numbers('en', 'metric', SENTENCES);
  const { words, fixes } = inMeasures({ words: SENTENCES, fixes: FIXES }, numbers);
  const given = {
    ...{ say: sayer(words, 'en'), numbers, fixes, cautions: {}, inGarden: false, language: 'en' },
    ...{ home: '/en/', release: '1.0.0', answers: used, questions: {}, left, diagramStyles: '' },
    onAsk: () => undefined,
    onTell: () => undefined,
  };
  const html = renderToString(h(ANSWERS[wizard], given));
  const plain = html
    .replaceAll(/<svg[\s\S]*?<\/svg>/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/[\s\u00a0\u202f]+/g, ' ');
  const [above = '', below = ''] = plain.split(': step by step');
  const [top = '', ...rest] = above.split(SENTENCES['to-do-start'] ?? '');
  return { top, rest: rest.join(' '), steps: below.split(/Step \d+ of \d+/).slice(1) };
}

const dc = (volts: number, amps: number) => ({
  ...{ 'supply-kind': 'dc', 'supply-volts': `${volts} V`, 'supply-amps': `${amps} A`, 'supply-plug': 'centre-plus' },
});
const unit = (limit: number, input = '14-24 V') => ({
  ...{ 'unit-limit': `${limit} A`, 'unit-input': 'dc', 'unit-input-volts': input, 'unit-plug': 'centre-plus' },
});
const trains = (scale: string, modern: number, moving: number) => ({
  ...{ system: 'two-rail', scale, modern: String(modern), older: '0', moving: String(moving) },
});
const CLUB = { ...trains('h0', 40, 14), sound: '20', stored: '0', ...dc(18, 5), ...unit(5) };
const plan = (districts: number, amps = 6, busiest = 'unknown') => ({
  ...{ divided: 'planned', 'plan-districts': String(districts), 'plan-limit': '5 A', 'plan-amps': `${amps} A` },
  'plan-busiest': busiest,
});
const enough = (texts: Readonly<Record<string, string>>): Drawn => drawn('enough-current', texts);

const DEMANDS_TEST = /test it/i;
const DOES_TEST = /Prove that a short/;

describe('a supply that may be too small to trip its unit', () => {
  test.each([
    [
      'six of ten in a garden, where larger boosters take its place',
      { ...trains('1', 10, 6), ...dc(22, 5), ...unit(5) },
    ],
    ['two of four in a garden', { ...trains('1', 4, 2), ...dc(22, 5), ...unit(5) }],
    ['five of ten', { ...trains('h0', 10, 5), ...dc(16, 3), ...unit(3) }],
    ['a club', CLUB],
  ])('is said on top, and where a test is asked for a step does it: %s', (_, texts) => {
    const { top, steps } = enough(texts);
    expect(top).toMatch(/too small to trip/);
    expect(top).toMatch(/Stay beside it/);
    expect(DEMANDS_TEST.test(top)).toBe(DOES_TEST.test(steps.join(' ')));
  });

  // There the next line says so, and a bar above it would push the first act off the screen of a phone.
  test.each([
    ['will do', plan(4)],
    ['has equal supplies', plan(4, 5)],
    ['is too small', plan(3)],
  ])('in a plan that %s: tonight says to stay beside it, and a step does the test', (_, planned) => {
    const { top, steps } = enough({ ...CLUB, ...planned });
    expect(top).toMatch(/Stay beside it/);
    expect(steps.join(' ')).toMatch(DOES_TEST);
  });

  test('in wiring: the bar names what its last step does', () => {
    const { top, steps } = drawn('wire-it', { ...WIRE, 'supply-amps': '3 A' });
    expect(top).toMatch(/the coin after it/);
    expect(steps.at(-1)).toMatch(/Load test, then coin/);
  });

  test('beside a booster whose supply is exchanged: the one that runs tonight is named', () => {
    const two = {
      ...{ system: 'two-rail', scale: 'h0' },
      ...Object.fromEntries(
        (['station', 'booster'] as const).flatMap((name, at) => [
          [`${name}-limit`, at === 0 ? '3 A' : '5 A'],
          [`${name}-input`, 'dc'],
          [`${name}-input-volts`, '14-20 V'],
          [`${name}-plug`, 'centre-plus'],
          [`${name}-rails`, 'follows'],
        ]),
      ),
      ...{ 'one-kind': 'dc', 'one-volts': '16 V', 'one-amps': '3 A', 'one-plug': 'centre-plus' },
      ...{ 'two-kind': 'dc', 'two-volts': '18 V', 'two-amps': '5 A', 'two-plug': 'centre-plus' },
    };
    const { top, steps } = drawn('which-supply-where', two);
    expect(top).toMatch(/unplug both\..*Stay beside it/);
    expect(steps[1]).toMatch(/Supply 2 .* is for the command station. Supply 1 is left over/);
    expect(steps[2]).toMatch(/From 5\.1 A on/);
  });

  test('whose command station keeps a supply that may not trip it: a short is tried before trains run', () => {
    const one = {
      ...{ system: 'two-rail', scale: 'h0', 'station-limit': '3 A', 'booster-limit': '5 A' },
      ...{ 'station-input': 'dc', 'station-input-volts': '16 V', 'station-plug': 'centre-plus' },
      ...{ 'booster-input': 'dc', 'booster-input-volts': '14-20 V', 'booster-plug': 'centre-plus' },
      ...{ 'station-rails': 'follows', 'booster-rails': 'follows' },
      ...{ 'one-kind': 'dc', 'one-volts': '16 V', 'one-amps': '3 A', 'one-plug': 'centre-plus' },
      ...{ 'two-kind': 'dc', 'two-volts': '18 V', 'two-amps': '5 A', 'two-plug': 'centre-plus' },
    };
    const { steps } = drawn('which-supply-where', one);
    const at = (words: RegExp): number => steps.findIndex((step) => words.test(step));
    expect(at(DOES_TEST)).toBeGreaterThan(0);
    expect(at(DOES_TEST)).toBeLessThan(at(/^ Read the volts on both sides/));
  });
});

describe('a supply with fewer volts than the unit is told to take', () => {
  const few = { ...trains('h0', 4, 2), ...dc(12, 5), ...unit(3, '18 V') };

  test('is taken to do, and that is said: one figure at the input is the most', () => {
    const { top, rest } = enough(few);
    expect(top + rest).toMatch(/one figure was told, 18 V, and taken as the most: it is taken to run on 12 V too/);
    const range = enough({ ...few, 'unit-input-volts': '10-18 V' });
    expect(range.rest + range.steps).not.toMatch(/taken as the most/);
    // Where the rails have what the scale asks for, it stands among what was assumed.
    const usual = enough({ ...few, 'supply-volts': '16 V' });
    expect(usual.rest).not.toMatch(/taken as the most/);
    expect(usual.steps.join(' ')).toMatch(/it is taken to run on 16 V too/);
  });

  test('cannot lift the rails into the range of the scale, whatever the unit is set to', () => {
    const { top, rest } = enough(few);
    expect(top + rest).toMatch(/rails stand at 12 V at the most, whatever the unit is set to/);
  });

  test('nor to what they are set to: the bar says so', () => {
    const { top } = enough({ ...few, 'unit-rails': 'set', 'unit-rail-volts': '15 V' });
    expect(top).toMatch(/The rails are set to 15 V, and this supply lifts them to 12 V at the most/);
  });
});

test('a unit set to more volts than its supply has, of two that are set alike: the bar names it', () => {
  const two = {
    ...{ system: 'two-rail', scale: 'h0' },
    ...Object.fromEntries(
      (['station', 'booster'] as const).flatMap((name) => [
        ...[[`${name}-limit`, '3 A'] as const, [`${name}-input`, 'dc'] as const],
        ...[[`${name}-input-volts`, '19 V'] as const, [`${name}-plug`, 'centre-plus'] as const],
        ...[[`${name}-rails`, 'set'] as const, [`${name}-rail-volts`, '15 V'] as const],
      ]),
    ),
    ...{ 'one-kind': 'dc', 'one-volts': '18 V', 'one-amps': '4 A', 'one-plug': 'centre-plus' },
    ...{ 'two-kind': 'dc', 'two-volts': '12 V', 'two-amps': '4 A', 'two-plug': 'centre-plus' },
  };
  const { top } = drawn('which-supply-where', two);
  expect(top).toMatch(/is set to 15 V, and its supply lifts the rails to 12 V at the most/);
});

describe('a supply that cannot trip its unit', () => {
  test('and is too little for the trains as well: the headline says both, what burns first', () => {
    const { top } = enough({ ...trains('h0', 12, 9), ...dc(16, 2), ...unit(3) });
    expect(top).toMatch(/This supply cannot make the unit trip, nor feed all your trains\./);
  });

  test('and is enough for them: the headline says nothing of too little', () => {
    const { top } = enough({ ...trains('h0', 2, 1), ...dc(16, 2), ...unit(3) });
    expect(top).toMatch(/This supply cannot make the unit trip/);
    expect(top).not.toMatch(/too little/);
  });

  test('in one of two districts, of which one has too little: both are said, what burns first', () => {
    const { top } = enough({
      ...{ ...CLUB, ...dc(18, 3), divided: 'divided', districts: '2', 'limit-b': '5 A', 'amps-b': '6 A' },
      ...{ 'traffic-a': 'unknown', 'traffic-b': 'unknown' },
    });
    expect(top).toMatch(
      /A short would not switch off: A\..*put that right first\. And district [AB] has too little for its trains\./,
    );
  });
});

describe('a unit that trips higher than the scale bears', () => {
  const high = (count: number, moving: number) => enough({ ...trains('h0', count, moving), ...dc(16, 10), ...unit(8) });

  test('and gives too little, lowered as it must be, for the trains as well: the headline says both', () => {
    const { top } = high(20, 16);
    expect(top).toMatch(/The unit trips too high, and cannot feed all your trains\./);
    expect(top).toMatch(/trips too high/);
  });

  test('and is enough for them: the headline says what is to be done, and nothing of too little', () => {
    const { top } = high(2, 1);
    expect(top).toMatch(/Lower the trip current/);
    expect(top).not.toMatch(/cannot feed/);
  });
});

describe('what is free', () => {
  test('stands before what is bought, with its price: in a club', () => {
    expect(enough(CLUB).steps.slice(0, 2).join(' ')).toMatch(/Turn the sound off/);
    expect(enough(CLUB).top).toMatch(/Mute standing trains \(costs nothing\).*3 districts.*more boosters/);
  });

  test('and in a plan that does once what stands is quiet, with its step; the larger plan is told below with its price', () => {
    const { top, rest, steps } = enough({ ...CLUB, ...plan(3) });
    expect(top).toMatch(/Mute standing trains \(costs nothing\).*your plan would do.*2 boosters of 5 A/);
    expect(steps[1]).toMatch(/^ ?Turn the sound off/);
    expect(rest).toMatch(/4 districts, shared evenly: 3 boosters of 5 A, each with a supply of 6 A 360 to 1,110/);
  });

  test('and in a plan that does once what stands is parked: its headline and its step say so, not a further division', () => {
    const { top, steps } = enough({ ...CLUB, ...plan(3, 6, '4') });
    expect(top).toMatch(/Your plan will do once what only stands is parked/);
    expect(top).not.toMatch(/Divide district/);
    expect(steps.join(' ')).not.toMatch(/as the answer names/);
  });

  test('a plan whose traffic has to be shared out otherwise names the boosters and where they draw, not what cannot be moved yet', () => {
    const { top, steps } = enough({ ...CLUB, ...plan(4, 5, '4') });
    expect(top).toMatch(/Of ten trains under way: A \d/);
    expect(top).toMatch(/3 boosters of 5 A/);
    expect(steps.join(' ')).not.toMatch(/Move two trains/);
    expect(steps.join(' ')).toMatch(/Draw the layout/);
  });

  test('no share of the traffic is held out that the other districts could not bear', () => {
    const { rest, top } = enough({
      ...trains('h0', 10, 9),
      ...dc(16, 3),
      ...unit(3),
      ...plan(2, 4),
      'plan-limit': '3 A',
    });
    expect(top + rest).not.toMatch(/would have enough with/);
  });

  test('a plan with one busy district: how many boosters, and their price', () => {
    const { top, rest } = enough({ ...CLUB, ...plan(3, 6, '5') });
    expect(top).toMatch(/3 boosters of 5 A/);
    expect(rest).toMatch(/360 to 1,110/);
  });
});

test('four districts are told with the three that are tight beside them', () => {
  const { top, rest } = enough({ ...trains('1', 10, 6), ...dc(22, 8), ...unit(6) });
  expect(top).toMatch(/3 more boosters/);
  expect(rest).toMatch(/2 more boosters, each with a supply of 8 A 240 to 740 [\s\S]*? tight/);
});

test('how many may move is told of trains that are mixed like all of them, where they differ', () => {
  expect(enough(CLUB).top).toMatch(/up to 9 of your mix moving/);
  expect(enough({ ...trains('h0', 10, 5), ...dc(16, 3), ...unit(3) }).rest).not.toMatch(/of your mix/);
});

describe('with nothing that moves', () => {
  test('tonight is not left out, and no breakers are praised for no trains', () => {
    const { top, rest } = enough({ ...trains('h0', 0, 0), ...dc(16, 3), ...unit(3) });
    expect(top).toMatch(/Tonight: stay beside it/);
    expect(rest).not.toMatch(/Breakers/);
  });

  test('nothing is enough for no moving trains', () => {
    expect(enough({ ...trains('h0', 6, 0), ...dc(16, 3), ...unit(3) }).top).not.toMatch(/0 moving/);
  });
});

test('a share told of the busiest district that is less than the mean is not called untold', () => {
  const { rest } = enough({ ...CLUB, ...plan(3, 6, '3') });
  expect(rest).toMatch(/Taken as shared evenly/);
  expect(rest).not.toMatch(/nobody has told/);
});

const WIRE = {
  ...{ system: 'two-rail', scale: 'h0', ...dc(16, 5) },
  ...{ 'wire-volts': '16 V', 'wire-trip': '3 A', 'wire-amps': '2 A' },
  ...{ 'bus-length': '14 m', 'bus-wire': '0.75 mm2', 'track-length': '14 m', 'feed-by': 'bus' },
};

describe('wiring', () => {
  test('tonight is less than what was just called not enough', () => {
    expect(drawn('wire-it', WIRE).top).toMatch(/not enough.*at most 1\.9 A/);
  });

  test('rails set to more than the supply has: the bar says so, and it is worked out with what the supply has', () => {
    const low = { ...WIRE, 'wire-volts': '18 V', 'supply-volts': '15 V' };
    const said = /The rails are set to 18 V, and this supply lifts them to 15 V at the most/;
    expect(drawn('wire-it', low).top).toMatch(said);
    expect(drawn('wire-it', low).top).toMatch(/a train has [\d.]+ V of 15 V/);
    const unknown = drawn('wire-it', { ...low, 'bus-wire': 'unknown' });
    expect(unknown.top).toMatch(said);
    expect(unknown.rest).toMatch(/Worked out with: 15 V/);
  });

  test('a supply that lifts no rails to what decoders need comes before the wires, whatever the rails are set to', () => {
    const { top } = drawn('wire-it', { ...WIRE, 'supply-volts': '6 V', 'supply-kind': 'dc' });
    expect(top).toMatch(
      /are set to 16 V, and this supply lifts them to 6 V at the most\. That is less than decoders need/,
    );
  });

  test('a ring whose feeders nobody has counted asks for these alone, and keeps warning and tonight', () => {
    const { top, rest, steps } = drawn('wire-it', {
      ...WIRE,
      ...{ 'supply-amps': '3 A', 'bus-shape': 'ring', 'bus-way': 'unknown' },
    });
    expect(top).toMatch(/Count the feeders.*may give way first.*pull the plug/);
    expect(steps).toHaveLength(2);
    expect(rest).not.toMatch(/The way:|The track:|The wire:/);
  });
});

describe('where to divide: an oval, six trains, 3 A and 2 A', () => {
  const beginner = { system: 'two-rail', scale: 'h0', shape: 'oval', modern: '6', older: '0' };
  const AMPS = { 'station-amps': '3 A', 'booster-amps': '2 A' };
  const MUCH = { ...AMPS, 'booster-amps': '3 A', modern: '10', moving: '7' };
  const { top, rest, steps } = drawn('share-out', { ...beginner, ...AMPS });

  test('two places are named on top, in the words of the trade, and labels come before any plug', () => {
    expect(top).toMatch(/cut both rails at 2 places/);
    expect(top.match(/Between “/g)).toHaveLength(2);
    expect(top).toMatch(/Between “Back straight, left” and “Back straight, right”/);
    expect(top).toMatch(/Read all four labels before you plug anything/);
  });

  test('that one unit carries all of it comes first, with its amperes; dividing is a choice', () => {
    expect(top).toMatch(
      /One unit carries all of this, if its labels .*often gives 1\.\d A of 2\.7 A.*Divide for .*To divide it, cut/,
    );
    expect(rest).toMatch(/two breakers behind the command station do it, without a booster/);
  });

  test('where one unit is too little, the headline divides it', () => {
    const { top: many } = drawn('share-out', { ...beginner, ...MUCH });
    expect(many).toMatch(/^\D*Divide it at 2 places\./);
    expect(many).not.toMatch(/carries all/);
  });

  test('one short must not stop everyone: two breakers at named gaps, and no more power', () => {
    const behind = drawn('share-out', { ...beginner, ...AMPS, aim: 'shorts' });
    expect(behind.top).toMatch(/2 gaps and two breakers.*no more power.*Between “/);
    expect(behind.top).not.toMatch(/all four labels/);
    expect(behind.steps.join(' ')).toMatch(/Gap both rails where the two parts meet\. Between “/);
    expect(behind.steps.join(' ')).toMatch(/Connect each breaker/);
    expect(behind.rest).toMatch(/Breaker 1/);
  });

  test('and where one unit is too little it says that breakers would not do', () => {
    const { rest: many } = drawn('share-out', { ...beginner, ...MUCH, aim: 'shorts' });
    expect(many).toMatch(/breakers give no more power/);
  });

  test('a loop is in the headline, its gaps and its device are in the steps', () => {
    const loop = drawn('share-out', { ...beginner, ...MUCH, shape: 'out-and-back' });
    expect(loop.top).toMatch(/Divide it at 1 place, and gap the loop too/);
    expect(loop.steps.join(' ')).toMatch(/whatever you divide, at both ends of the loop\. Between “[^”]*” and “Loop”/i);
    const at = (what: RegExp): number => loop.steps.findIndex((step) => what.test(step));
    expect(at(/what turns the rails of the loop over/)).toBeGreaterThan(at(/whatever you divide/));
    expect(at(/Prove each gap/)).toBeGreaterThan(at(/what turns the rails of the loop over/));
  });

  test('three parts: every gap by its place, and the steps have them', () => {
    const parts = drawn('share-out', { ...beginner, ...AMPS, modern: '14' });
    expect(parts.top).toMatch(/Two parts are too few.*Read the label of every unit and every supply/);
    expect((parts.top + parts.rest).match(/Between “/g)?.length).toBeGreaterThan(2);
    expect(parts.steps[0]).toMatch(/cut both rails at these places\. Between “/);
  });

  test('what the units pass is assumed, and the numbers say where the amperes come from', () => {
    expect(steps.at(-1)).toMatch(/its supply brings 3 A to the track.*the unit passes 3 A \(assumed.*is 2\.7 A/);
    expect(steps.at(-1)).toMatch(/see “Make it surer”/);
  });

  test('another way with fewer gaps says that it is less even', () => {
    const passing = drawn('share-out', {
      ...{ ...beginner, ...AMPS, shape: 'oval-passing' },
    });
    expect(passing.steps.at(-1)).toMatch(/2 gaps, shared [^:]*: fewer gaps, less even/);
    expect(passing.steps.at(-1)).not.toMatch(/[4-9] gaps, shared [^:]*: fewer gaps/);
  });

  test('nothing is called enough before the labels are read, and amperes hold only if the labels say so', () => {
    expect(top + rest).toMatch(/if its labels say so/);
    expect(top + rest).not.toMatch(/has enough|is enough/);
  });

  test('without trains nothing is called enough and no steps stand there: the one thing to do is to count them', () => {
    const none = drawn('share-out', { ...beginner, modern: '0', 'station-amps': '3 A', 'booster-amps': '2 A' });
    expect(none.steps).toEqual([]);
    expect(none.top).toMatch(/trains first.*no trains.*Count the trains/);
    expect(none.top + none.rest).not.toMatch(/enough/);
  });

  test('the steps read the labels, switch off, list every path, gap there, and prove it at the end', () => {
    expect(steps[0]).toMatch(/Read both labels/);
    expect(steps[1]).toMatch(/Switch everything off/);
    expect(steps[2]).toMatch(/List every path/);
    expect(steps[3]).toMatch(/Gap both rails.*“Back straight, left”/);
    expect(steps.at(-2)).toMatch(/a short trips/);
  });

  test('an oval with a passing track is gapped on both tracks of its station or beside it', () => {
    const { top: passing } = drawn('share-out', {
      ...{ ...beginner, shape: 'oval-passing' },
      ...{ 'station-amps': '3 A', 'booster-amps': '2 A' },
    });
    expect(passing).toMatch(/Passing track/);
  });
});
