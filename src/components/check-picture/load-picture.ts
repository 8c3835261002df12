// What draws the pictures of checks is loaded while the first question is read, or with it where it has one: a tap then waits for none.
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { fetchStyles } from '../shared/index.ts';
import type { Say } from '../words/index.ts';

export interface PictureProps {
  readonly id: string;
  readonly say: Say;
}

export async function loadPicture(styles: string): Promise<ComponentType<PictureProps>> {
  const [{ CheckPicture }] = await Promise.all([import('./CheckPicture.tsx'), fetchStyles(styles)]);
  return CheckPicture;
}

/** The question is on the screen, and what follows its answers is reckoned. */
const WAIT_MS = 400;

/** Loads what draws pictures while nobody waits for it. What cannot be had is asked for again, and said, with the check that has one. */
export function usePicturesSoon(styles: string): void {
  useEffect(() => {
    const later = setTimeout(() => {
      loadPicture(styles).catch(() => undefined);
    }, WAIT_MS);
    return () => clearTimeout(later);
  }, [styles]);
}
