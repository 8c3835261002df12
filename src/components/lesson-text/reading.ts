// All that a person reads of a lesson, and how long that takes. Its cautions and the numbers of a computed question come on top.

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
    readonly prediction: Asked;
    readonly check: readonly (Asked | { readonly computed: string })[];
  };
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

/** What is read on the way: the point, what to try, the prediction, the text, and the questions; of answers the right one's reason. */
export function sentencesOf({ data, body = '' }: LessonText): string[] {
  const { point, tries, prediction, check } = data;
  const asked = [prediction, ...check].flatMap((one) => ('question' in one ? [one] : []));
  return [
    point,
    ...tries.map((one) => one.do),
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

export const wordsIn = (lesson: LessonText): number =>
  sentencesOf(lesson).reduce((sum, line) => sum + line.split(/\s+/).filter((word) => /\w/.test(word)).length, 0);

/** Minutes that the words take, at 200 a minute. */
export const minutesOf = (lesson: LessonText): number => Math.max(1, Math.round(wordsIn(lesson) / PACE));
