// Works the answer out on the page, or lays it into a sheet: a worker does the first as a rule, so both come when they are wanted.
import type { ShareFound, takenInto } from '../../../wizards/share-out/index.ts';

const loadSharing = () => import('./sharing.ts');

/** `fail` is told where it cannot be worked out here; nothing comes of it then. */
export const shareHere = (
  answers: Parameters<typeof takenInto>[1],
  fail: () => void = () => undefined,
): Promise<ShareFound> =>
  new Promise((done) => {
    loadSharing()
      .then(({ shareOutFor }) => done(shareOutFor(answers)))
      .catch(fail);
  });

export const takenHere = async (...given: Parameters<typeof takenInto>): Promise<ReturnType<typeof takenInto>> =>
  (await loadSharing()).takenInto(...given);
