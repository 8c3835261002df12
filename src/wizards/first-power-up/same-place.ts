// Whether two tests are made at one place.
import type { Where } from '../plan/index.ts';

export const isSame = (one: Where, other: Where): boolean => JSON.stringify(one) === JSON.stringify(other);
