// The words of one computed question: its own, those round it, and units; not those of all other kinds.
import type { CheckKind } from '../engine/index.ts';
import type { Language } from './href.ts';
import { CHECK_ASKING, CHECK_ROOMS } from './rooms.ts';
import { wordsOf } from './words.ts';

export async function checkWords(language: Language, kind: CheckKind): Promise<Record<string, string>> {
  const asking = Object.entries(await wordsOf(language, ['asking'])).filter(([key]) =>
    CHECK_ASKING.some((one) => one === key),
  );
  const all = Object.entries(await wordsOf(language, CHECK_ROOMS));
  const own = `asked-${kind}`;
  const ours = all.filter(([key]) => !key.startsWith('asked-') || key === own || key.startsWith(`${own}-`));
  return Object.fromEntries([...asking, ...ours]);
}
