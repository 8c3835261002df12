// Long reckoning in turns: after a few milliseconds the browser has its turn, so that a tap or a scroll never waits for it.
import type { InParts } from '../../engine/index.ts';

/** How long is worked before the browser has its turn. */
const TURN_MS = 8;

/** Where a browser knows how: after a tap, yet before other work. */
async function browsersTurn(): Promise<void> {
  if ('scheduler' in globalThis && 'yield' in scheduler) await scheduler.yield();
  else await new Promise((done) => setTimeout(done));
}

export const always = (): boolean => true;

/** Does all parts; gives up, undefined, once it is not wanted any more. */
export async function inTurns<Made>(
  parts: InParts<Made>,
  isWanted: () => boolean,
  theirTurn: () => Promise<void> = browsersTurn,
): Promise<Made | undefined> {
  let since = performance.now();
  while (isWanted()) {
    const step = parts.next();
    const isTheirTurn = performance.now() - since >= TURN_MS;
    if (isTheirTurn) {
      await theirTurn();
      since = performance.now();
    }
    if (step.done === true) return step.value;
  }
  return undefined;
}
