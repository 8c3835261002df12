// What follows each answer is reckoned while the question is read, in turns: a tap then draws what is there already.
import { useEffect } from 'preact/hooks';
import type { InParts } from '../../engine/index.ts';
import { doLater } from './use-later.ts';

/** A question is drawn and read first. */
const WAIT_MS = 240;

/** Does each of these, in turn, until they change or something else goes before. */
export function useAhead(reckonings: readonly (() => InParts<unknown>)[], mayGoOn: () => boolean): void {
  useEffect(() => {
    let isWanted = true;
    function* all(): InParts<void> {
      for (const parts of reckonings) yield* parts();
    }
    // What cannot be reckoned is said where it is drawn.
    doLater(all, () => isWanted && mayGoOn(), WAIT_MS).catch(() => undefined);
    return () => {
      isWanted = false;
    };
  }, [reckonings]);
}
