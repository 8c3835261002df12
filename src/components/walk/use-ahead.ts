// What follows each answer is reckoned while the question is read, in turns: a tap then draws what is there already.
import { useEffect } from 'preact/hooks';
import type { InParts } from '../../engine/index.ts';
import { inTurns } from './turns.ts';

/** A question is drawn and read first. */
const WAIT_MS = 240;
/** So long the browser has its turn: nobody waits for this. */
const REST_MS = 4;

const pause = (ms: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, ms);
  });

/** Does each of these, in turn, until they change or something else goes before. */
export function useAhead(reckonings: readonly (() => InParts<unknown>)[], mayGoOn: () => boolean): void {
  useEffect(() => {
    let isWanted = true;
    const goesOn = (): boolean => isWanted && mayGoOn();
    const all = async (): Promise<void> => {
      await pause(WAIT_MS);
      for (const parts of reckonings) await inTurns(parts(), goesOn, () => pause(REST_MS));
    };
    // What cannot be reckoned is said where it is drawn.
    all().catch(() => undefined);
    return () => {
      isWanted = false;
    };
  }, [reckonings]);
}
