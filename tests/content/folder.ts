// Reads the words as they lie in src/content, without building the site.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { powerActsOf } from '../../src/wizards/put-it-right/model/acts.ts';
import type { Act } from '../../src/wizards/safety/acts.ts';
import { ACTS } from '../../src/wizards/safety/acts.ts';
import { dangersOf } from '../../src/wizards/safety/dangers.ts';

export const CONTENT = join(import.meta.dirname, '../../src/content');

/** The language that everything is there in. */
export const LANGUAGES: readonly string[] = ['en'];

/** A page or a list of words: its data, and below it the text of a page. */
export interface Words {
  readonly id: string;
  readonly file: string;
  readonly data: Readonly<Record<string, unknown>>;
  readonly body: string;
}

export function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const READ = new Map<string, readonly Words[]>();

/** All words of one kind in one language. */
export function wordsOf(language: string, kind: string): readonly Words[] {
  const words = READ.get(`${language}/${kind}`) ?? read(language, kind);
  READ.set(`${language}/${kind}`, words);
  return words;
}

function read(language: string, kind: string): Words[] {
  const folder = join(CONTENT, language, kind);
  if (!existsSync(folder)) return [];
  return readdirSync(folder).map((name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    const [, front = text, body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
    const data: unknown = parse(front);
    if (!isRecord(data)) throw new Error(`${name} holds no words`);
    return { id: name.replace(/\.[a-z]+$/, ''), file: join(folder, name), data, body };
  });
}

/** The texts in a list, or none. */
export function texts(value: unknown): string[] {
  return Array.isArray(value) ? value.filter((one): one is string => typeof one === 'string') : [];
}

/** The acts in a list, or none. */
export function actsIn(value: unknown): Act[] {
  return texts(value).flatMap((one) => ACTS.filter((act) => act === one));
}

/** What a check makes people do brings these, and what is named by hand. */
export const cautionsOfCheck = ({ id, data }: Words): string[] =>
  dangersOf([...powerActsOf(id), ...actsIn(data['acts'])], texts(data['cautions']));

export interface Step {
  readonly text: string;
  readonly acts: readonly Act[];
  readonly job: string | undefined;
  /** What the acts bring and what is named by hand. */
  readonly cautions: readonly string[];
}

/** The steps of a fix, each with all that it says. */
export function stepsOf(words: Words): Step[] {
  const { steps } = words.data;
  if (!Array.isArray(steps)) return [];
  return steps.filter(isRecord).map((step) => ({
    text: [step['do'], step['more']].filter((part) => typeof part === 'string').join(' '),
    acts: actsIn(step['acts']),
    job: typeof step['job'] === 'string' ? step['job'] : undefined,
    cautions: dangersOf(actsIn(step['acts']), texts(step['cautions'])),
  }));
}
