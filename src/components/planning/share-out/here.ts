// Works the answer out on the page, or lays it into a sheet: a worker does the first as a rule, so both come when they are wanted.
import type { ShareFound, takenInto } from '../../../wizards/share-out/index.ts';

const loadSharing = () => import('./sharing.ts');

export const shareHere = async (answers: Parameters<typeof takenInto>[1]): Promise<ShareFound> =>
  (await loadSharing()).shareOutFor(answers);

export const takenHere = async (...given: Parameters<typeof takenInto>): Promise<ReturnType<typeof takenInto>> =>
  (await loadSharing()).takenInto(...given);
