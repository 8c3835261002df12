// What a language lacks of the words that the first one has. It may: such a page is there in that one and says so.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { FALLBACK } from '../../src/components/words/languages.ts';
import { ROOT } from '../machine.mjs';

const filesIn = (folder) => (existsSync(folder) ? readdirSync(folder).sort() : []);
const sentencesIn = (file) => (existsSync(file) ? Object.keys(parse(readFileSync(file, 'utf8')) ?? {}) : []);

/**
 * Files that are not there, as `fixes/leak.mdx`, and sentences of rooms that are not, as `words/walk.yaml: walk-back`.
 * @param {string} language its folder in src/content
 * @param {string} [root] the folder that holds src
 * @returns {{ pages: string[], sentences: string[] }}
 */
export function lacking(language, root = ROOT) {
  const [whole, own] = [FALLBACK, language].map((id) => join(root, 'src/content', id));
  const kinds = filesIn(whole).filter((kind) => kind !== 'words');
  const pages = kinds.flatMap((kind) => {
    const there = new Set(filesIn(join(own, kind)));
    return filesIn(join(whole, kind)).flatMap((file) => (there.has(file) ? [] : [`${kind}/${file}`]));
  });
  const sentences = filesIn(join(whole, 'words')).flatMap((room) => {
    const there = new Set(sentencesIn(join(own, 'words', room)));
    return sentencesIn(join(whole, 'words', room)).flatMap((key) => (there.has(key) ? [] : [`words/${room}: ${key}`]));
  });
  return { pages, sentences };
}

/** In one line; empty where nothing is lacking. */
export function lackingLine(language, root = ROOT) {
  const { pages, sentences } = lacking(language, root);
  if (pages.length + sentences.length === 0) return '';
  return `${language} lacks ${pages.length} pages and ${sentences.length} sentences (npm run map -- ${language})`;
}
