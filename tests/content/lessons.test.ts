// Every lesson has all that makes one, in words that most people read with ease.
import { fleschKincaid } from 'flesch-kincaid';
import { syllable } from 'syllable';
import { describe, expect, test } from 'vitest';
import { captionKeys } from '../../src/components/drawings/captions.ts';
import {
  type LessonText,
  minutesOf,
  type Named,
  sentencesOf,
  wordsIn,
} from '../../src/components/lesson-text/reading.ts';
import { CHECK_KINDS, type CheckKind, courseCheck } from '../../src/engine/index.ts';
import { PATH_IDS } from '../../src/layouts/course.ts';
import { rankOf } from '../../src/wizards/safety/dangers.ts';
import { dangersOf } from '../../src/wizards/safety/index.ts';
import { actsIn, isRecord, texts, type Words, wordsOf } from './folder.ts';

const LESSONS = wordsOf('en', 'lessons');
const COURSE = [...LESSONS].sort((one, two) => Number(one.data['order']) - Number(two.data['order']));
const ids = (kind: string): string[] => wordsOf('en', kind).map(({ id }) => id);
const SAID = new Map(wordsOf('en', 'words').flatMap(({ data }) => Object.entries(data)));

const text = (value: unknown): string => (typeof value === 'string' ? value : '');
const records = (value: unknown): Readonly<Record<string, unknown>>[] =>
  Array.isArray(value) ? value.filter(isRecord) : [];

interface Option {
  readonly says: string;
  readonly right: boolean;
  readonly because: string;
}
const optionsOf = (asked: Readonly<Record<string, unknown>>): Option[] =>
  records(asked['options']).map((one) => ({
    says: text(one['says']),
    right: one['right'] === true,
    because: text(one['because']),
  }));

/** The lesson as the site reads it. */
function lessonText({ data, body }: Words): LessonText {
  const asked = (one: Readonly<Record<string, unknown>>) => ({
    question: text(one['question']),
    options: optionsOf(one),
  });
  const [prediction = {}] = records([data['prediction']]);
  const [run = {}] = records([prediction['run']]);
  return {
    body,
    data: {
      point: text(data['point']),
      tries: records(data['tries']).map((one) => ({ do: text(one['do']) })),
      prediction: { ...asked(prediction), run: { do: text(run['do']) } },
      check: records(data['check']).map((one) =>
        one['computed'] === undefined ? asked(one) : { computed: kindNamed(text(one['computed'])) },
      ),
    },
  };
}

function kindNamed(id: string): CheckKind {
  const kind = CHECK_KINDS.find((known) => known === id);
  if (kind === undefined) throw new Error(`No question is computed by "${id}"`);
  return kind;
}

const CAUTIONS = new Map(wordsOf('en', 'cautions').map(({ id, data }) => [id, data]));
const said = (key: string): string => text(SAID.get(key));

/** What a lesson shows and only names. */
const NAMED: Named = {
  caution: (id) => [said(`rank-${rankOf(id)}`), text(CAUTIONS.get(id)?.['harm']), text(CAUTIONS.get(id)?.['do'])],
  drawing: (id) => captionKeys(id).map(said),
  computed: (kind) => [
    said(`asked-${kind}`),
    said(`asked-${kind}-right`),
    ...courseCheck(kind, 1).choices.map(({ value, unit }) => `${value} ${unit}`),
  ],
};

const cautionsIn = (body: string): string[] => [...body.matchAll(/<Caution id="([^"]+)"/g)].map(([, id = '']) => id);
const drawingsIn = (body: string): string[] => [...body.matchAll(/<Drawing id="([^"]+)"/g)].map(([, id = '']) => id);

const SEGMENTS = new Intl.Segmenter('en', { granularity: 'sentence' });

/** What a reader has to have of school years. Headings and list items count as sentences of their own. */
function gradeOf(lesson: LessonText): number {
  const lines = sentencesOf(lesson);
  const sentences = lines.flatMap((line) => [...SEGMENTS.segment(line)].map(({ segment }) => segment));
  const words = lines.flatMap((line) => line.match(/[A-Za-z][A-Za-z’'-]*/g) ?? []);
  const syllables = words.reduce((sum, word) => sum + syllable(word), 0);
  return fleschKincaid({ sentence: sentences.length, word: words.length, syllable: syllables });
}

/** Lessons at or below this school year. */
const MOST_GRADE = 8;

test('The course has its lessons, each at a place of its own, and each path leads over some', () => {
  expect(LESSONS.length).toBeGreaterThanOrEqual(8);
  const places = LESSONS.map(({ data }) => data['order']);
  expect(new Set(places).size).toBe(places.length);
  for (const path of PATH_IDS)
    expect(
      COURSE.some(({ data }) => texts(data['paths']).includes(path)),
      path,
    ).toBe(true);
});

test('Each question with new numbers stands in one lesson, and none is left over', () => {
  const asked = COURSE.flatMap((lesson) =>
    lessonText(lesson).data.check.flatMap((one) => ('computed' in one ? [one.computed] : [])),
  );
  expect(asked.toSorted()).toEqual([...CHECK_KINDS].sort());
});

describe.each(COURSE.map((lesson) => [lesson.id, lesson] as const))('The lesson %s', (_, lesson) => {
  const { data, body } = lesson;
  const read = lessonText(lesson);

  test('says its point in two sentences', () => {
    expect([...SEGMENTS.segment(text(data['point']))].length).toBe(2);
  });

  test('has a figure with something to try, and a question to predict with one outcome', () => {
    expect(data['figure']).toMatch(/\S/);
    expect(read.data.tries.length).toBeGreaterThan(0);
    const { options } = read.data.prediction;
    expect(options.length).toBeGreaterThanOrEqual(2);
    expect(options.filter(({ right = false }) => right)).toHaveLength(1);
  });

  test('asks three questions, one at least with new numbers each time, and explains every answer', () => {
    expect(read.data.check).toHaveLength(3);
    expect(read.data.check.some((one) => 'computed' in one)).toBe(true);
    for (const one of read.data.check) {
      if ('computed' in one) continue;
      expect(
        one.options.filter(({ right = false }) => right),
        one.question,
      ).toHaveLength(1);
      for (const { because, says } of one.options) expect(because.length, says).toBeGreaterThan(15);
    }
  });

  test('shows the practice in a drawing, and names common mistakes', () => {
    expect(drawingsIn(body).length).toBeGreaterThan(0);
    expect(body).toMatch(/^## Common mistakes\n\n(?:- .+\n?)+/m);
  });

  test('carries the cautions of what it has people do, and no other', () => {
    const brought = dangersOf(actsIn(data['acts']), texts(data['cautions']));
    const carried = cautionsIn(body);
    expect(
      brought.filter((id) => !carried.includes(id)).map((id) => `It lacks the caution "${id}" (${rankOf(id)}).`),
    ).toEqual([]);
    expect(
      carried.filter((id) => !brought.includes(id)).map((id) => `No act of it brings the caution "${id}".`),
    ).toEqual([]);
  });

  test('names another lesson, for what stands before and after it hangs on the path', () => {
    expect(body.match(/\b(?:next|last|previous) lesson\b|\blesson (?:before|after)\b/gi)).toBeNull();
  });

  test('has the rules of the coin before it asks for one', () => {
    const asked = body.search(/press a coin/i);
    if (asked >= 0) expect(cautionsIn(body.slice(0, asked))).toContain('coin-rules');
  });

  test('has each sentence with measures inside a paragraph', () => {
    expect(body.match(/^<Measured [^>]*\/>$/gm)).toBeNull();
  });

  test('leads on to work that is there', () => {
    const next = records(data['next']);
    expect(next.length).toBeGreaterThan(0);
    for (const one of next) {
      if (one['fix'] !== undefined) expect(ids('fixes')).toContain(one['fix']);
      if (one['complaint'] !== undefined) expect(ids('complaints')).toContain(one['complaint']);
    }
  });

  test('takes three to six minutes at 200 words a minute, with its cautions, drawings and computed questions, and says so', () => {
    const words = wordsIn(read, NAMED);
    expect(words, 'words').toBeGreaterThanOrEqual(3 * 200);
    expect(words, 'words').toBeLessThanOrEqual(6 * 200);
    expect(Math.abs(minutesOf(read, NAMED) - words / 200)).toBeLessThanOrEqual(0.5);
  });

  test(`can be read after ${MOST_GRADE} years of school`, () => {
    expect(Math.round(gradeOf(read) * 10) / 10).toBeLessThanOrEqual(MOST_GRADE);
  });
});

describe.each(CHECK_KINDS)('The computed question %s', (kind) => {
  test('has words for itself, its right answer and each mistake, and names what is given', () => {
    const asked = text(SAID.get(`asked-${kind}`));
    const { given, choices } = courseCheck(kind, 1);
    const mistakes = choices.flatMap(({ mistake }) => (mistake === undefined ? [] : [mistake]));
    const keys = ['right', ...mistakes].map((part) => `asked-${kind}-${part}`);
    expect(keys.filter((key) => !SAID.has(key))).toEqual([]);
    const places = [asked, ...keys.map((key) => text(SAID.get(key)))].flatMap((sentence) =>
      [...sentence.matchAll(/\{([\w-]+)\}/g)].map(([, name = '']) => name),
    );
    expect(places.filter((name) => name !== 'right' && !Object.hasOwn(given, name))).toEqual([]);
    for (const name of Object.keys(given)) expect(asked, `${name} is given`).toContain(`{${name}}`);
  });
});

describe('The look-out for hard reading', () => {
  const said = (body: string): LessonText => ({
    body,
    data: { point: '', tries: [], prediction: { question: '', options: [], run: { do: '' } }, check: [] },
  });

  test('finds an easy text easy', () => {
    expect(gradeOf(said('The train stops at the gap. Both rails are cut. So no current flows.'))).toBeLessThan(3);
  });

  test('finds a hard one hard', () => {
    const hard =
      'Notwithstanding considerable manufacturing variability, instantaneous electromagnetic characteristics of interconnected installations necessitate comprehensive investigation.';
    expect(gradeOf(said(hard))).toBeGreaterThan(MOST_GRADE);
  });
});
