// The words of a question or a fix, fetched with what draws them: most are never asked for in one walk.
import type { ComponentType } from 'preact';
import { useCallback } from 'preact/hooks';
import type { Walk } from '../../wizards/put-it-right/index.ts';
import { loadPicture, type PictureProps } from '../check-picture/index.ts';
import { fetchWords, type Loaded } from '../shared/index.ts';
import { Kept, useKept } from './kept.ts';
import type { PartProps } from './part-props.ts';
import { readAsked, readFix } from './word-shapes.ts';
import type { FetchedCheck, FetchedFix } from './words.ts';

export interface FetchedQuestion {
  readonly asked: FetchedCheck;
  /** Undefined where the check has none. */
  readonly Picture: ComponentType<PictureProps> | undefined;
}

type Where = Pick<PartProps, 'home' | 'pictureStyles'>;

const QUESTIONS = new Kept<FetchedQuestion>();
const FIXES = new Kept<FetchedFix>();

const askedAt = (home: string, id: string): string => `${home}put-it-right/asked/${id}.json`;
const fixAt = (home: string, fixClass: string): string => `${home}fixes/${fixClass}.json`;

async function loadQuestion(address: string, pictureStyles: string): Promise<FetchedQuestion> {
  const asked = readAsked(await fetchWords(address));
  return { asked, Picture: asked.check.picture === undefined ? undefined : await loadPicture(pictureStyles) };
}

const loadFix = async (address: string): Promise<FetchedFix> => readFix(await fetchWords(address));

export function useQuestion({ home, pictureStyles }: Where, id: string): Loaded<FetchedQuestion> {
  const address = askedAt(home, id);
  const load = useCallback(() => loadQuestion(address, pictureStyles), [address, pictureStyles]);
  return useKept(QUESTIONS, address, load);
}

export function useFix(home: string, fixClass: string): Loaded<FetchedFix> {
  const address = fixAt(home, fixClass);
  const load = useCallback(() => loadFix(address), [address]);
  return useKept(FIXES, address, load);
}

/** Begins to load what a place of the walk is drawn with. Fulfilled once it is there, or nothing is needed; rejected where it cannot be had. */
export async function beginWords({ home, pictureStyles }: Where, { state, check, fixClass }: Walk): Promise<void> {
  if (check !== undefined) {
    const address = askedAt(home, check);
    await QUESTIONS.get(address, () => loadQuestion(address, pictureStyles));
  }
  if (fixClass !== undefined && WITH_WORDS.has(state)) {
    const address = fixAt(home, fixClass);
    await FIXES.get(address, () => loadFix(address));
  }
}

/** The states that are drawn with the words of their fix. */
const WITH_WORDS: ReadonlySet<Walk['state']> = new Set<Walk['state']>(['proposing', 'fixing', 'solved']);
