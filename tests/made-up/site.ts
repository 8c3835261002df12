// A copy of what the site is built from, with one language more: its folder and its line, and nothing else.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileTranslated, MADE_UP } from './language.ts';

const ROOT = join(import.meta.dirname, '../..');
const REPORT = 'docs/checked.json';
const BUILT_FROM = [
  'src',
  'scripts',
  'public',
  REPORT,
  'docs/judged.json',
  'astro.config.mjs',
  'package.json',
  'LICENSE',
  'tsconfig.json',
];
const LIST = 'src/components/words/languages.ts';

function writeFolder(folder: string): void {
  const english = join(folder, 'src/content/en');
  for (const entry of readdirSync(english, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const kind = entry.parentPath.split(/[\\/]/).at(-1) ?? '';
    const there = join(folder, 'src/content', MADE_UP.id, kind);
    mkdirSync(there, { recursive: true });
    const text = readFileSync(join(entry.parentPath, entry.name), 'utf8');
    writeFileSync(join(there, entry.name), fileTranslated(kind, text));
  }
}

function writeLine(folder: string): void {
  const file = join(folder, LIST);
  const text = readFileSync(file, 'utf8');
  const end = text.indexOf('] as const satisfies');
  if (end < 0) throw new Error(`${LIST} holds no list of languages`);
  const before = text.slice(0, end).replace(/,?\s*$/, '');
  writeFileSync(file, `${before},\n  ${JSON.stringify(MADE_UP)},\n${text.slice(end)}`);
}

/** A state of the program whose name, made of digits and the first letters of the alphabet, reads as a word. */
const STATE = 'aab8d6e';

function writeState(folder: string): void {
  const file = join(folder, REPORT);
  writeFileSync(file, JSON.stringify({ ...JSON.parse(readFileSync(file, 'utf8')), commit: STATE }));
}

/** What the made-up language lacks, so that English stands in for it. */
export const LACKING = { fix: 'leak', lesson: 'will-it-trip', term: 'frog' } as const;

/** Writes the copy into a folder below the root of the project. */
export function writeMadeUpSite(folder: string): void {
  rmSync(join(ROOT, folder), { recursive: true, force: true });
  for (const part of BUILT_FROM) cpSync(join(ROOT, part), join(ROOT, folder, part), { recursive: true });
  // Nobody fetches this site over a line: it is built without compressed twins.
  const config = join(ROOT, folder, 'astro.config.mjs');
  writeFileSync(config, readFileSync(config, 'utf8').replace(', compressedTwins()', ''));
  writeFolder(join(ROOT, folder));
  writeLine(join(ROOT, folder));
  writeState(join(ROOT, folder));
  for (const file of [`lessons/${LACKING.lesson}.mdx`, `fixes/${LACKING.fix}.mdx`, `glossary/${LACKING.term}.yaml`]) {
    rmSync(join(ROOT, folder, 'src/content', MADE_UP.id, file));
  }
}
