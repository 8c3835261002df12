// Where an address leads, remembered: a step back, or a step that was reckoned ahead, is there at once.
import type { InParts } from '../../engine/index.ts';
import type { LeftOut, Sitting, Told, Walk } from './address.ts';
import { parseWalk, replayWalk, stepsOfReplay } from './address.ts';
import { ended } from './mended.ts';
import type { ComplaintId } from './model/index.ts';

export interface Place {
  readonly told: Told;
  readonly leftOut: readonly LeftOut[];
  readonly walk: Walk;
}

const PLACES = new Map<string, Place>();
/** Most addresses of which it is remembered where they lead. Source: own-choice. */
const MOST_REMEMBERED = 200;

const keyOf = (complaint: ComplaintId, search: string, sitting: Sitting): string =>
  JSON.stringify([complaint, search, sitting]);

/** What an address tells. One that says that a check has put it right, and no more, is at the end too: that check is not to be done again. */
function standing(complaint: ComplaintId, search: string, sitting: Sitting): Pick<Place, 'told' | 'leftOut'> {
  const { told, leftOut } = parseWalk(search, sitting);
  return { told: ended(complaint, told), leftOut };
}

export function placeOf(complaint: ComplaintId, search: string, sitting: Sitting): Place {
  const key = keyOf(complaint, search, sitting);
  const known = PLACES.get(key);
  if (known !== undefined) return known;
  const { told, leftOut } = standing(complaint, search, sitting);
  const place = { told, leftOut, walk: replayWalk(complaint, told, sitting) };
  if (PLACES.size >= MOST_REMEMBERED) PLACES.clear();
  PLACES.set(key, place);
  return place;
}

/** The same a part at a time. */
export function* placeInParts(complaint: ComplaintId, search: string, sitting: Sitting): InParts<Place> {
  if (!PLACES.has(keyOf(complaint, search, sitting))) {
    yield* stepsOfReplay(complaint, standing(complaint, search, sitting).told, sitting);
    yield;
  }
  return placeOf(complaint, search, sitting);
}
