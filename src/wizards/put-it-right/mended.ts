// Checks that put it right by being done: who says that all is well after one has nothing left to mend.
import { signPosterior } from '../../engine/index.ts';
import type { Told } from './address.ts';
import { CANNOT } from './address.ts';
import type { ComplaintId } from './model/index.ts';
import { SIGN_MODEL } from './model/index.ts';
import { stateOf, walkModelNow } from './step.ts';

/** By check the answer that says so, and the sign of a cause that it mends. */
const MENDS = { 'write-anew': { option: 'cured', sign: 'written-anew', value: 'cured' } } as const;

const done = (seen: Told['seen']) =>
  Object.entries(MENDS).flatMap(([check, of]) => (seen[check] === of.option ? [{ check, ...of }] : []));

/** The likeliest fix class of what a check has put right; undefined where none has. */
export function mendedByCheck(complaint: ComplaintId, told: Told): string | undefined {
  const [one] = done(told.seen);
  if (one === undefined) return undefined;
  const shows = new Set(
    SIGN_MODEL.causes.filter(({ shows: row }) => mentions(row[one.sign], one.value)).map(({ fixClass }) => fixClass),
  );
  const answers = Object.entries(told.seen).flatMap(([check, option]) =>
    option === CANNOT ? [] : [{ check, option }],
  );
  const { tools, tried } = told;
  const state = stateOf({ complaint, answers, skipped: [], tools, tried, trusted: new Set() });
  return signPosterior(walkModelNow(), state).findings.find(({ fixClass }) => shows.has(fixClass))?.fixClass;
}

const mentions = (row: unknown, value: string): boolean => typeof row === 'object' && row !== null && value in row;

/** The answers without those that said so. */
export function withoutMending(seen: Told['seen']): Told['seen'] {
  const mended = new Set(done(seen).map(({ check }) => check));
  return Object.fromEntries(Object.entries(seen).filter(([check]) => !mended.has(check)));
}
