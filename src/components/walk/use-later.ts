// What can wait until the next question is on the screen.
import { useEffect, useState } from 'preact/hooks';
import type { InParts } from '../../engine/index.ts';
import { always, inTurns } from '../shared/index.ts';

const WAIT_MS = 160;
/** So long the browser has its turn: nobody waits for this. */
const REST_MS = 4;

export const pause = (ms: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, ms);
  });

/** Does these parts a moment after the screen was drawn, with rests in between; gives up once they are not wanted any more. */
export async function doLater<Made>(
  parts: () => InParts<Made>,
  isWanted: () => boolean = always,
  wait: number = WAIT_MS,
): Promise<Made | undefined> {
  await pause(wait);
  return isWanted() ? inTurns(parts(), isWanted, () => pause(REST_MS)) : undefined;
}

/** The value as it was, until the new one's turn has come and what it is drawn from is ready; undefined before the first one's. */
export function useLater<Value>(value: Value, ready: (value: Value) => InParts<void>): Value | undefined {
  const [shown, setShown] = useState<{ readonly is: Value } | undefined>(undefined);
  useEffect(() => {
    let isWanted = true;
    const show = (): void => {
      if (isWanted) setShown({ is: value });
    };
    // What cannot be reckoned is said where it is drawn.
    doLater(
      () => ready(value),
      () => isWanted,
    ).then(show, show);
    return () => {
      isWanted = false;
    };
  }, [value]);
  return shown?.is;
}
