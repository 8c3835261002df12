// All that a person reads of a lesson, and how long that takes. The time with the figure comes on top, and so do reasons of wrong answers.

import type { CheckKind } from '../../engine/index.ts';

interface Option {
  readonly says: string;
  readonly right?: boolean;
  readonly because: string;
}

interface Asked {
  readonly question: string;
  readonly options: readonly Option[];
}

export interface LessonText {
  readonly body?: string | undefined;
  readonly data: {
    readonly point: string;
    readonly tries: readonly { readonly do: string }[];
    readonly prediction: Asked & { readonly run: { readonly do: string } };
    readonly check: readonly (Asked | { readonly computed: CheckKind })[];
  };
}

/** What a lesson shows and only names, in words: a caution, what stands below a drawing, a question with its answers and the right reason. */
export interface Named {
  readonly caution: (id: string) => readonly string[];
  readonly drawing: (id: string) => readonly string[];
  readonly computed: (kind: CheckKind) => readonly string[];
}

/** Words a minute. */
const PACE = 200;

/** Without tags, places and marks: what is left is said. */
const plain = (text: string): string =>
  text
    .replaceAll(/<Measured\s+text="([^"]*)"\s*\/>/g, '$1')
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\{either:([^|{}]*)\|[^{}]*\}/g, '$1')
    .replaceAll(/\{(?:m|cm|mm|mm2):([\d.]+)[^{}]*\}/g, '$1')
    .replaceAll(/\{[\w-]+\}/g, '1')
    .replaceAll(/\]\([^)]*\)/g, '')
    .replaceAll(/[[\]*_`]/g, '');

/** What its author wrote: the point, what to try, the prediction, the text, and the questions; of answers the right one's reason. */
export function sentencesOf({ data, body = '' }: LessonText): string[] {
  const { point, tries, prediction, check } = data;
  const asked = [prediction, ...check].flatMap((one) => ('question' in one ? [one] : []));
  return [
    point,
    ...tries.map((one) => one.do),
    prediction.run.do,
    ...asked.flatMap(({ question, options }) => [question, ...options.map(({ says }) => `${says}.`)]),
    ...asked.flatMap(({ options }) => options.flatMap(({ right = false, because }) => (right ? [because] : []))),
    ...body
      .split('\n')
      .map((line) => line.replace(/^\s*(?:#+|[-*]|\d+\.)\s+/, '').trim())
      .filter((line) => line !== ''),
  ]
    .map(plain)
    .filter((line) => /\w/.test(line));
}

const idsOf = (body: string, tag: string): string[] =>
  [...body.matchAll(new RegExp(`<${tag} id="([^"]+)"`, 'g'))].map(([, id = '']) => id);

/** What it shows besides, from elsewhere. */
function namedIn({ data, body = '' }: LessonText, named: Named): string[] {
  return [
    ...idsOf(body, 'Caution').flatMap(named.caution),
    ...idsOf(body, 'Drawing').flatMap(named.drawing),
    ...data.check.flatMap((one) => ('computed' in one ? named.computed(one.computed) : [])),
  ].map(plain);
}

export const wordsIn = (lesson: LessonText, named: Named): number =>
  [...sentencesOf(lesson), ...namedIn(lesson, named)].reduce(
    (sum, line) => sum + line.split(/\s+/).filter((word) => /\w/.test(word)).length,
    0,
  );

/** Minutes that the words take, at 200 a minute. */
export const minutesOf = (lesson: LessonText, named: Named): number =>
  Math.max(1, Math.round(wordsIn(lesson, named) / PACE));
