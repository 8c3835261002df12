// The model is made ready, and where the walk stands is reckoned, before the next question is drawn: a tap that comes meanwhile does not wait for it.
import type { ComplaintId, Sitting } from '../../wizards/put-it-right/index.ts';
import { placeInParts, readyInParts } from '../../wizards/put-it-right/index.ts';
import { always, inTurns } from '../shared/index.ts';
import { beginWords } from './fetched.ts';
import type { PartProps } from './part-props.ts';
import { pause } from './use-later.ts';

export async function modelReady(): Promise<void> {
  // Its script was read just now, which takes a turn of its own.
  await pause(0);
  await inTurns(readyInParts(), always);
}

/** Words that take longer come after what stands around them: then the page says that they are on their way. */
const LATE_MS = 120;

interface Step extends Pick<PartProps, 'home' | 'pictureStyles'> {
  readonly complaint: ComplaintId;
  readonly search: string;
  readonly sitting: Sitting;
}

/** Reckons a step and begins to load its words; fulfilled once it can be drawn whole, they are late, or it is not wanted any more. */
export async function soon({ complaint, search, sitting, ...where }: Step, isWanted = always): Promise<void> {
  const place = await inTurns(placeInParts(complaint, search, sitting), isWanted);
  if (place === undefined) return;
  const words = beginWords(where, place.walk).catch(() => undefined);
  await Promise.race([words, pause(LATE_MS)]);
}
