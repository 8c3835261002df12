// What a sheet is worked on with, and its words: loaded once there is a sheet.
import * as v from 'valibot';
import { fetchWords } from '../shared/index.ts';
import { SENTENCES } from '../words/index.ts';
import { Editor } from './Editor.tsx';
import { loadParts } from './SheetParts.tsx';
import type { Words } from './sayings.ts';

export interface Editing {
  readonly Editor: typeof Editor;
  readonly words: Words;
}

/** @param address where the words are */
export async function editing(address: string, stop: AbortSignal): Promise<Editing> {
  // Needed as soon as the words are there; what fails is told where it is drawn.
  loadParts().catch(() => undefined);
  return { Editor, words: v.parse(SENTENCES, await fetchWords(address, stop)) };
}
