// What draws the pictures of checks is loaded with the first check that has one, or while the question before it is read: half of all walks see none.
import type { ComponentType } from 'preact';
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
