// Whether the site's own faces are on the device.
import { type Entry, keyOf, shelf } from './stored.ts';

const KEPT = '1';
const ID = 'faces';

/** That they were fetched, so that a page finds them. */
export const FACES: Entry<typeof KEPT> = {
  id: ID,
  read: (text) => (text === KEPT ? text : undefined),
  write: (kept) => kept,
};

/** Stand in the head of every page, so in as few bytes as may be. */
export const areFacesKept = (): boolean => shelf()?.getItem(keyOf(ID)) === KEPT;
export const keepFaces = (): void => shelf()?.setItem(keyOf(ID), KEPT);
