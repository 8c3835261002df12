// The words of one computed question: its own, those round it, and units; not those of all other kinds.
import type { CheckKind } from '../engine/index.ts';
import type { Language } from './href.ts';
import { wordsOf } from './words.ts';

export async function checkWords(language: Language, kind: CheckKind): Promise<Record<string, string>> {
  const all = await wordsOf(language, ['check-yourself', 'units']);
  const own = `asked-${kind}`;
  return Object.fromEntries(
    Object.entries(all).filter(([key]) => !key.startsWith('asked-') || key === own || key.startsWith(`${own}-`)),
  );
}
