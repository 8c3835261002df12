// What a sheet is worked on with, and its words: loaded once there is a sheet.
import * as v from 'valibot';
import { fetchWords } from '../shared/index.ts';
import { SENTENCES } from '../words/index.ts';
import type { Words } from './sayings.ts';

export interface EditorPart extends Pick<typeof import('./Editor.tsx'), 'Editor'> {
  readonly words: Words;
}

/** @param address where the words are */
export async function loadEditor(address: string, stop: AbortSignal): Promise<EditorPart> {
  const [{ Editor }, words] = await Promise.all([import('./Editor.tsx'), fetchWords(address, stop)]);
  return { Editor, words: v.parse(SENTENCES, words) };
}
