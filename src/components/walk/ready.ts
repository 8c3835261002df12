// The model is made ready, and where the walk stands is reckoned, before the next question is drawn: a tap that comes meanwhile does not wait for it.
import type { ComplaintId, Place, Sitting } from '../../wizards/put-it-right/index.ts';
import { placeInParts, readyInParts } from '../../wizards/put-it-right/index.ts';
import { always, inTurns } from './turns.ts';

export const modelReady = () => inTurns(readyInParts(), always);

/** Undefined once it is not wanted any more. */
export const placeReady = (
  complaint: ComplaintId,
  search: string,
  sitting: Sitting,
  isWanted: () => boolean = always,
): Promise<Place | undefined> => inTurns(placeInParts(complaint, search, sitting), isWanted);
