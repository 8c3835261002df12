// A chip stands for what was said, not for a word that happens to stand in what people say for it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { Listener } from '../../src/wizards/put-it-right/index.ts';
import { CONTENT, isRecord, texts, wordsOf } from '../content/folder.ts';
import { REPORTED_CASES } from '../judge/cases/cases.ts';

const LANGUAGES = ['de', 'fr', 'nl'];

/** Lines by check/option, in one language or in English. */
function phrasesIn(language: string): ReadonlyMap<string, readonly string[]> {
  const read: unknown = parse(readFileSync(join(CONTENT, `phrases/${language}/checks.yaml`), 'utf8'));
  return new Map(Object.entries(isRecord(read) ? read : {}).map(([id, lines]) => [id, texts(lines)]));
}

const PHRASES = LANGUAGES.map(phrasesIn);
const SAID = wordsOf('en', 'checks').flatMap(({ id: check, data: { options } }) =>
  Object.entries(isRecord(options) ? options : {}).map(([option, words]) => ({
    check,
    option,
    lines: [
      ...texts(isRecord(words) ? words['says'] : []),
      ...PHRASES.flatMap((lines) => lines.get(`${check}/${option}`) ?? []),
    ],
  })),
);
const LISTENER = new Listener(SAID);
const heardIn = (text: string): string[] => LISTENER.hear(text).map(({ check, option }) => `${check}/${option}`);

describe('A word that many say for many things', () => {
  test.each([
    ['now at every start the system clicks off', 'how-driven/at-the-unit'],
    ['where do you even start?', 'how-driven/at-the-unit'],
    ['same model bought twice, same decoder', 'which-vehicles/one-kind'],
    ['the sound locomotives stop', 'which-vehicles/one-kind'],
    ['changing the wheels changed nothing', 'last-change/nothing'],
    ['one of the turnouts is older', 'when-it-happens/at-another-place'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test('“only” is part of what is said', () => {
    expect(heardIn('only the sound locomotives do it')).toContain('which-vehicles/one-kind');
    expect(heardIn('the sound locomotives run fine')).not.toContain('which-vehicles/one-kind');
  });
});

describe('What is well', () => {
  test.each([
    ['Summer = perfect. Winter = dead siding. Every year.', 'weather/warm'],
    ['in summer it is fine', 'weather/warm'],
    ['Im Sommer läuft alles bestens', 'weather/warm'],
  ])('“%s” is not heard as %s', (text, answer) => {
    expect(heardIn(text)).not.toContain(answer);
  });

  test('says nothing of what comes after “until”', () => {
    expect(heardIn('all is fine until in summer the rails buckled in the heat')).toContain('weather/warm');
  });

  test('is heard where being well is the answer', () => {
    expect(heardIn('all the others are fine')).toContain('which-vehicles/one-vehicle');
    expect(heardIn('only in winter')).toContain('weather/cold');
    expect(heardIn('Winter = dead siding')).toContain('weather/cold');
  });
});

describe('Words that belong together', () => {
  test('stand near each other in the text', () => {
    expect(heardIn('one day the other locomotive met a joiner')).not.toContain('which-places/one-spot');
    expect(heardIn('always at one joiner')).toContain('which-places/one-spot');
  });
});

describe('Each line that people say', () => {
  test('is heard as its own answer, in every language; at most one in twenty is said alike for another', () => {
    const lines = SAID.flatMap(({ check, option, lines: own }) =>
      own.map((line) => ({ line, answer: `${check}/${option}` })),
    );
    const lost = lines.filter(({ line, answer }) => !heardIn(line).includes(answer));
    expect(lost.length).toBeLessThan(lines.length / 20);
  });

  test.each(PHRASES.map((phrases, at) => ({ language: LANGUAGES[at] ?? '', phrases })))(
    'in $language too',
    ({ phrases }) => {
      const lines = [...phrases].flatMap(([answer, own]) => own.map((line) => ({ line, answer })));
      const lost = lines.filter(({ line, answer }) => !heardIn(line).includes(answer));
      expect(lines.length).toBeGreaterThan(300);
      expect(lost.length).toBeLessThan(lines.length / 20);
    },
  );
});

/** What a reader tapped for a case, or else what was found for it. */
function coded({ taps, tapsOfAnother, shown }: (typeof REPORTED_CASES)[number], check: string): readonly string[] {
  const tapped = [taps[check], tapsOfAnother?.[check]].filter((one) => one !== undefined);
  const found = shown[check];
  return tapped.length > 0 || found === undefined || found === 'cannot' ? tapped : [found];
}

describe('On the reported cases, as they were told', () => {
  const chips = REPORTED_CASES.flatMap((one) =>
    LISTENER.hear(one.told).flatMap(({ check, option }) => {
      const answers = coded(one, check);
      return answers.length === 0 ? [] : [answers.includes(option)];
    }),
  );

  test('three chips in four that a reader spoke of too agree with that reader', () => {
    expect(chips.length).toBeGreaterThan(80);
    expect(chips.filter((agrees) => agrees).length / chips.length).toBeGreaterThanOrEqual(0.75);
  });
});
