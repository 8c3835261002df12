// Which sentences the code asks for, read off its text: literal keys, and keys with a hole such as `fault-${id}`.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';

export const SRC = join(import.meta.dirname, '../../src');

/** A key as the code writes it: its fixed parts, between which there are holes. */
export type Asked = readonly string[];

const textOf = (file: string): string => readFileSync(join(SRC, file), 'utf8');

const codeBelow = (folder: string): string[] =>
  readdirSync(join(SRC, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(?:tsx?|astro)$/.test(entry.name))
    .map((entry) => relative(SRC, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));

/** A folder's code, as paths below src. */
export const codeIn = (...folders: readonly string[]): string[] => folders.flatMap(codeBelow).sort();

const resolve = (from: string, to: string): string => relative(SRC, join(SRC, dirname(from), to)).replaceAll('\\', '/');

/** What a statement takes from another file: names, `default`, or everything. */
interface Taken {
  readonly from: string;
  readonly names: readonly string[];
}

/** The files that a file draws in, types left aside; what is taken through a door comes from behind it. */
function takenBy(file: string): Taken[] {
  const text = textOf(file);
  const stated = [...text.matchAll(/^(?:import|export) (?!type\b)([^;'"]*?) from '(\.[^']+)'/gm)];
  const loaded = [...text.matchAll(/import\('(\.[^']+)'\)/g)];
  return [
    ...stated.map(([, what = '', to = '']) => ({ from: resolve(file, to), names: namesIn(what) })),
    ...loaded.map(([, to = '']) => ({ from: resolve(file, to), names: [] })),
  ];
}

function namesIn(what: string): string[] {
  const [outside = '', inside = ''] = what.split(/[{}]/);
  const named = inside.split(',').map((name) => name.trim().split(' as ')[0] ?? '');
  const whole = /\w/.test(outside) ? ['default'] : [];
  return [...whole, ...named.filter((name) => name !== '' && !name.startsWith('type '))];
}

/** What is drawn in; what is taken through a door is looked for behind it. */
function behindDoors({ from, names }: Taken): string[] {
  if (!(from.startsWith('components/') && existsSync(join(SRC, from)))) return [];
  if (!from.endsWith('/index.ts')) return [from];
  return takenBy(from)
    .filter((behind) => behind.names.some((name) => names.includes(name)))
    .flatMap(behindDoors);
}

/** A component and every component that it draws with, now or later. */
export function drawnBy(entry: string): string[] {
  const found = new Set(behindDoors({ from: entry, names: ['default'] }));
  // A set that grows is walked to its end.
  for (const file of found) for (const one of takenBy(file).flatMap(behindDoors)) found.add(one);
  return [...found].sort();
}

/** The text between a bracket and the one that closes it. */
function insideBrackets(text: string, from: number): string {
  let depth = 1;
  let at = from;
  for (; at < text.length && depth > 0; at += 1) {
    if ('([{'.includes(text[at] ?? '')) depth += 1;
    if (')]}'.includes(text[at] ?? '')) depth -= 1;
  }
  return text.slice(from, at - 1);
}

/** What stands before the first comma that is not inside brackets. */
function firstArgument(text: string): string {
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    if ('([{'.includes(text[at] ?? '')) depth += 1;
    if (')]}'.includes(text[at] ?? '')) depth -= 1;
    if (text[at] === ',' && depth === 0) return text.slice(0, at);
  }
  return text;
}

/** Keys inside quotation marks; the test of a choice, as in `x === 'a' ? …`, is none. */
function keysIn(text: string): Asked[] {
  const quoted =
    /(?<!===\s*|case\s+)(?:'([a-z][a-z0-9-]*)'|`((?:[a-z0-9-]|\$\{(?:[^{}`]|`[^`]*`)*\})+)`)(?!\s*(?:===|\?))/g;
  return [...text.matchAll(quoted)].map(([, plain, holed = '']) =>
    plain === undefined ? holed.split(/\$\{(?:[^{}`]|`[^`]*`)*\}/) : [plain],
  );
}

/** What a file surely asks for: the first thing each `say(…)` is given. */
export function surelyAsked(text: string): Asked[] {
  return [...text.matchAll(/\bsay\(/g)].flatMap(({ index, 0: call }) =>
    keysIn(firstArgument(insideBrackets(text, index + call.length))),
  );
}

/** What a file may ask for: every key that it names. A bare hole names nothing. */
export const maybeAsked = (text: string): Asked[] => [
  ...surelyAsked(text),
  ...keysIn(text).filter(([start = '']) => start !== ''),
];

export const askedBy = (files: readonly string[], asked: (text: string) => Asked[]): Asked[] =>
  files.flatMap((file) => asked(textOf(file)));

const kebab = (name: string): string => name.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`);

/** Every id that the code names: what a hole can be filled with. */
export const idsIn = (files: readonly string[]): ReadonlySet<string> =>
  new Set([
    ...['1', '2', '3', 'true', 'false'],
    ...files.flatMap((file) => {
      const text = textOf(file).replace(/^\s*(?:\/\/|\/?\*).*$/gm, '');
      const quoted = [...text.matchAll(/['"`]([A-Za-z0-9-]+)['"`]/g)].map(([, id = '']) => id);
      const named = [...text.matchAll(/(?<![\w'-])([a-z][A-Za-z0-9]*)\??:\s/g)].map(([, id = '']) => kebab(id));
      const counted = [...text.matchAll(/`([a-z][a-z-]*)-\$\{/g)].map(([, id = '']) => id);
      return [...quoted, ...named, ...counted];
    }),
  ]);

/** Whether a hole can hold this: an id, or ids joined. */
function fits(value: string, ids: ReadonlySet<string>): boolean {
  if (ids.has(value)) return true;
  return [...value.matchAll(/-/g)].some(
    ({ index }) => ids.has(value.slice(0, index)) && fits(value.slice(index + 1), ids),
  );
}

/** Whether this sentence is one that the code asks for. */
export function isAsked(key: string, asked: readonly Asked[], ids: ReadonlySet<string>): boolean {
  return asked.some((parts) => {
    if (parts.length === 1) return parts[0] === key;
    const found = new RegExp(`^${parts.join('([a-z0-9-]+)')}$`).exec(key);
    return found?.slice(1).every((value) => fits(value, ids)) === true;
  });
}

/** Whether there is a sentence for what the code asks for. */
export const isSaid = (parts: Asked, keys: readonly string[]): boolean =>
  parts.length === 1
    ? keys.includes(parts[0] ?? '')
    : keys.some((key) => new RegExp(`^${parts.join('[a-z0-9-]+')}$`).test(key));

/** A key as the code writes it, for a sentence about it. */
export const written = (parts: Asked): string => parts.join('…');
