// Checks that put it right by being done: who says that all is well after one has nothing left to mend.
import { signPosterior } from '../../engine/index.ts';
import type { Told } from './address.ts';
import { CANNOT } from './address.ts';
import type { ComplaintId } from './model/index.ts';
import { SIGN_MODEL } from './model/index.ts';
import { stateOf, walkModelNow } from './step.ts';

/** By check the answer that says so, and the sign of a cause that it mends. To do it once more would bring the trouble back. */
const MENDS = {
  'write-anew': { option: 'cured', sign: 'written-anew', value: 'cured' },
  'swap-track-wires': { option: 'cured', sign: 'swap', value: 'cured' },
} as const;

const done = (seen: Told['seen']) =>
  Object.entries(MENDS).flatMap(([check, of]) => (seen[check] === of.option ? [{ check, ...of }] : []));

/** The check that was done last and has put it right; undefined where none has. */
export const mendingCheck = (seen: Told['seen']): string | undefined => done(seen)[0]?.check;

/**
 * The likeliest fix class of what a check has put right; undefined where none has. A repair that was tried counts too: what it should have
 * cleared may still have been there, and the check has cleared it.
 */
export function mendedByCheck(complaint: ComplaintId, told: Told): string | undefined {
  const [one] = done(told.seen);
  if (one === undefined) return undefined;
  const answers = Object.entries(told.seen).flatMap(([check, option]) =>
    option === CANNOT ? [] : [{ check, option }],
  );
  const state = stateOf({ complaint, answers, skipped: [], tools: told.tools, tried: [], trusted: new Set() });
  const { causes } = signPosterior(walkModelNow(), state);
  const likely = causes.filter(({ fault }) => SURELY.has(wordOf(fault, one.sign, one.value) ?? ''));
  const [best] = likely.toSorted((a, b) => b.chance - a.chance);
  return CLASS_OF.get(best?.fault ?? '');
}

/** A cause that a check puts right seldom is not what it was because the check was done. */
const SURELY: ReadonlySet<string> = new Set(['always', 'usually']);
const CLASS_OF = new Map(SIGN_MODEL.causes.map(({ id, fixClass }) => [id, fixClass]));

function wordOf(cause: string, sign: string, value: string): string | undefined {
  const row: unknown = SIGN_MODEL.causes.find(({ id }) => id === cause)?.shows[sign];
  if (typeof row !== 'object' || row === null) return undefined;
  const word: unknown = Object.entries(row).find(([name]) => name === value)?.[1];
  return typeof word === 'string' ? word : undefined;
}

/** The answers without those that said so. */
export function withoutMending(seen: Told['seen']): Told['seen'] {
  const mended = new Set(done(seen).map(({ check }) => check));
  return Object.fromEntries(Object.entries(seen).filter(([check]) => !mended.has(check)));
}

/** What is told, ended where a check has put it right by being done: what it mended has helped. */
export function ended(complaint: ComplaintId, told: Told): Told {
  const mended = mendedByCheck(complaint, told);
  if (mended === undefined || told.fixed.includes(mended)) return told;
  const others = (tried: readonly string[]): string[] => tried.filter((one) => one !== mended);
  return { ...told, tried: others(told.tried), left: others(told.left), fixed: [...told.fixed, mended] };
}
