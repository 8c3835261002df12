// One name for each thing. The glossary says which; the other names stand there as "also", in what people say (the
// search), and nowhere else.
import { describe, expect, test } from 'vitest';
import type { Words } from './folder.ts';
import { isRecord, texts, wordsOf } from './folder.ts';

const KINDS = ['cautions', 'checks', 'complaints', 'fixes', 'glossary', 'lessons', 'questions', 'words'] as const;

/** Lists of ids, and what people say: not sentences that are shown. */
const NOT_SHOWN = ['says', 'also', 'cautions', 'sources', 'drawing', 'figure', 'picture', 'href'];

/** The term of the glossary, and what nobody is to call it in a sentence that is shown. */
const NAMES = [
  ['unit', ['power stage', 'stage', 'output stage', 'track output stage']],
  ['new part', ['far part', 'near part', 'new section', 'old section']],
  ['supply', ['power supply', 'power pack']],
  ['throttle', ['handheld', 'handset', 'cab']],
  ['control cable', ['control link', 'signal cable', 'booster cable', 'booster lead']],
  ['insulated rail joiner', ['insulated joiner', 'insulating joiner', 'plastic joiner']],
  ['rail joiner', ['fishplate']],
  ['feeder', ['dropper', 'drop wire']],
  ['bus', ['track bus', 'buss', 'ring main']],
  ['breaker', ['circuit breaker', 'cut-out']],
  ['trip current', ['trip level', 'trip setting']],
  ['power district', ['booster district', 'booster section', 'booster zone']],
  ['locomotive', ['engine', 'loco']],
  ['coach', ['carriage', 'passenger car']],
  ['turnout', ['point motor', 'set of points', 'track switch']],
  ['reversing section', ['reversing loop', 'return loop', 'balloon', 'wye']],
  ['track detector', ['block detector', 'occupancy detector']],
  ['mains', ['house current', 'household current', 'line voltage']],
] as const;

/** Every sentence below a value that is shown, without its placeholders. */
function sentencesIn(value: unknown): string[] {
  if (typeof value === 'string') return [value.replaceAll(/\{[\w-]+\}/g, '')];
  if (Array.isArray(value)) return value.flatMap(sentencesIn);
  if (!isRecord(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => (NOT_SHOWN.includes(key) ? [] : sentencesIn(inner)));
}

const shownBy = ({ data, body }: Words): string[] => [
  ...sentencesIn(data),
  body.replaceAll(/\]\([^)]*\)|<[^>]*>/g, ''),
];

const FILES = KINDS.flatMap((kind) => wordsOf('en', kind).map((words) => ({ of: `${kind}/${words.id}`, words })));

const GLOSSARY = new Map(wordsOf('en', 'glossary').map(({ data }) => [data['term'], texts(data['also'])]));

/** Where a name stands as a word of its own, in one or several. */
function usesOf(name: string): string[] {
  const found = new RegExp(`(?<![\\w-])${name}(?:s|es)?(?![\\w-])`, 'i');
  return FILES.filter(({ words }) => shownBy(words).some((sentence) => found.test(sentence))).map(({ of }) => of);
}

test('the sentences are really looked through', () => {
  expect(FILES.length).toBeGreaterThan(300);
  expect(usesOf('command station').length).toBeGreaterThan(50);
});

describe.each(NAMES)('what is a %s', (term, others) => {
  test.each(others)('is not called a %s', (other) => {
    expect(usesOf(other)).toEqual([]);
  });

  test('stands in the glossary under that name, with the others beside it', () => {
    expect(GLOSSARY.get(term)).toEqual(expect.arrayContaining([...others]));
  });
});

/** Words that nobody says at a layout. */
const STIFF = [
  'for a breath',
  'falls away',
  'as the last means',
  'least dear',
  'by intention',
  'in the course of',
  'prior to',
];

test.each(STIFF)('nothing is said in stiff words: “%s”', (words) => expect(usesOf(words)).toEqual([]));

test('no search word is the talk of one product: its pair of wire colours', () => {
  const talk = /\b(?:red and brown|brown and red)\b/i;
  const says = FILES.flatMap(({ of, words }) => texts(words.data['says']).map((said) => `${of}: ${said}`));
  expect(says.length).toBeGreaterThan(500);
  expect(says.filter((said) => talk.test(said))).toEqual([]);
});
