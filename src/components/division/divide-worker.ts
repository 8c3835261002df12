// Divides a sheet off the page, and tells now and then how far it is.
import type { Sheet } from '../../wizards/sheet/index.ts';
import { inTries, type Reply } from './work.ts';

const tell = (reply: Reply): void => postMessage(reply);

addEventListener('message', ({ data }: MessageEvent<Sheet>) => {
  const parts = inTries(data);
  for (let step = parts.next(); ; step = parts.next()) {
    if (step.done === true) return tell({ divided: step.value });
    tell({ tries: step.value });
  }
});
tell('started');
