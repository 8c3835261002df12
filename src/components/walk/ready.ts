// The model is made ready before the next question is drawn, and a tap that comes meanwhile does not wait for it.
import { walkModelReady } from '../../wizards/put-it-right/index.ts';

/** How long it is worked on before the browser has its turn. */
const TURN_MS = 8;

export function modelReady(): Promise<void> {
  let since = performance.now();
  return walkModelReady(async () => {
    if (performance.now() - since < TURN_MS) return;
    await new Promise((done) => setTimeout(done));
    since = performance.now();
  });
}
