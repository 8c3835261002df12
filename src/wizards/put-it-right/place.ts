// Where an address leads, remembered: a step back, or a step that was reckoned ahead, is there at once.
import type { InParts } from '../../engine/index.ts';
import type { LeftOut, Sitting, Told, Walk } from './address.ts';
import { parseWalk, replayWalk, stepsOfReplay } from './address.ts';
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

export function placeOf(complaint: ComplaintId, search: string, sitting: Sitting): Place {
  const key = keyOf(complaint, search, sitting);
  const known = PLACES.get(key);
  if (known !== undefined) return known;
  const { told, leftOut } = parseWalk(search, sitting);
  const place = { told, leftOut, walk: replayWalk(complaint, told, sitting) };
  if (PLACES.size >= MOST_REMEMBERED) PLACES.clear();
  PLACES.set(key, place);
  return place;
}

/** The same a part at a time. */
export function* placeInParts(complaint: ComplaintId, search: string, sitting: Sitting): InParts<Place> {
  if (!PLACES.has(keyOf(complaint, search, sitting))) {
    yield* stepsOfReplay(complaint, parseWalk(search, sitting).told, sitting);
    yield;
  }
  return placeOf(complaint, search, sitting);
}
