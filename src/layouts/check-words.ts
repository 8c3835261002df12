// The words of one computed question: its own, those round it, and units; not those of all other kinds.
import type { CheckKind } from '../engine/index.ts';
import type { Language } from './href.ts';
import { wordsOf } from './words.ts';

/** Of the room that whatever asks shares, only what says that a part could not be loaded. */
const MISSING = ['words-missing', 'words-again'];

export async function checkWords(language: Language, kind: CheckKind): Promise<Record<string, string>> {
  const asking = Object.entries(await wordsOf(language, ['asking'])).filter(([key]) => MISSING.includes(key));
  const all = Object.entries(await wordsOf(language, ['check-yourself', 'units']));
  const own = `asked-${kind}`;
  const ours = all.filter(([key]) => !key.startsWith('asked-') || key === own || key.startsWith(`${own}-`));
  return Object.fromEntries([...asking, ...ours]);
}
