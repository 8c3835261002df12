// The questions of the course whose numbers are new each time.
import type { Check } from './check.ts';
import { makeCheck } from './check.ts';
import { POWER_KINDS } from './power-kinds.ts';
import { SIGNAL_KINDS } from './signal-kinds.ts';
import { WIRING_KINDS } from './wiring-kinds.ts';

export type { Amount, Check, Choice } from './check.ts';
export { MOST_SEED, parseSeed } from './draw.ts';

/** The questions of the lessons: between which answers numbers are drawn, each in its own unit. Source: own-choice. */
const KINDS = { ...POWER_KINDS, ...WIRING_KINDS, ...SIGNAL_KINDS } as const;

export type CheckKind = keyof typeof KINDS;

const isKind = (id: string): id is CheckKind => Object.hasOwn(KINDS, id);
export const CHECK_KINDS: readonly CheckKind[] = Object.keys(KINDS).filter(isKind);

/** The question of this kind that a seed (whole, >= 1) gives. */
export const courseCheck = (kind: CheckKind, seed: number): Check => makeCheck(KINDS[kind], seed);
