// What was read on a meter, set beside what was expected: which of the row's options that is.
import { OWN_USE_DOUBT, SINE_FACTOR, stepFinding, TRACK_LIMITS } from '../../engine/index.ts';
import type { TestRow } from '../plan/index.ts';

/** What is typed in for a row, in the order in which it is read. */
export const FIELDS = {
  'meter-two-stages': ['rails', 'other-rails'],
  'load-test': ['open', 'near', 'far'],
  'meter-supply-current': ['idle', 'running'],
} as const;

type WithFields = keyof typeof FIELDS;
export type ReadingField = (typeof FIELDS)[WithFields][number];

const hasFields = (kind: string): kind is WithFields => Object.hasOwn(FIELDS, kind);

/** None where nothing is measured, or nothing of this layout can be expected. */
export const fieldsOf = ({ kind, readings }: Pick<TestRow, 'kind' | 'readings'>): readonly ReadingField[] =>
  hasFields(kind) && readings.length > 0 ? FIELDS[kind] : [];

/**
 * Why readings are no answer. `no-number`: one is missing or is none. `too-high`: more than rails may have on any scale, on whatever meter.
 * `off-plan`: both sides of a gap stand alike, and not where the plan expects them, so that being alike is no good sign.
 * `rises`: with the resistor the rails stand higher than without. `falls`: with trains running no more flows than without, or nothing at all.
 */
export type ReadingDoubt = 'no-number' | 'too-high' | 'off-plan' | 'rises' | 'falls';

/** What rails may have at the most on any scale, on a meter that shows most of it, volts. Source: nmra-s-9-1. */
const MOST_VOLTS = TRACK_LIMITS['1'].most * SINE_FACTOR;

/** Undefined where the readings (volts or amperes) can be what a meter showed. */
export function doubtOf(
  row: Pick<TestRow, 'kind' | 'readings'>,
  values: Readonly<Record<string, number>>,
): ReadingDoubt | undefined {
  const read = fieldsOf(row).map((field) => values[field] ?? Number.NaN);
  if (!read.every((value) => Number.isFinite(value) && value >= 0)) return 'no-number';
  const [first = 0, ...others] = read;
  if (row.kind === 'meter-supply-current')
    return others.some((amps) => amps <= 0 || amps < first) ? 'falls' : undefined;
  if (read.some((volts) => volts > MOST_VOLTS)) return 'too-high';
  // Of two sides one may be dead: that is a reading, and what somebody is to be told.
  if (first <= 0 && !(row.kind === 'meter-two-stages' && others.some((volts) => volts > 0))) return 'no-number';
  if (row.kind === 'meter-two-stages' && isOffPlan(row, values)) return 'off-plan';
  return row.kind === 'load-test' && others.some((volts) => volts > first && !isLevel(volts - first))
    ? 'rises'
    : undefined;
}

/** So far beside what is expected two sides that are alike may stand, as a share of it: meters and supplies differ by less. Source: own-choice. */
export const BESIDE = 0.1;

/** Whether both sides are alike, and one of them stands where the plan expects none. */
function isOffPlan({ readings }: Pick<TestRow, 'readings'>, values: Readonly<Record<string, number>>): boolean {
  const { rails = 0, 'other-rails': others = 0 } = values;
  if (!isLevel(others - rails)) return false;
  return readings.some(({ what, from, to }) => {
    const volts = what === 'step' ? undefined : values[what];
    return volts !== undefined && (volts < from * (1 - BESIDE) || volts > to * (1 + BESIDE));
  });
}

/** Whether two readings of one meter are the same for all that it can tell. */
const isLevel = (step: number): boolean => stepFinding({ from: step, to: step }) === 'level';

/** The option that these readings (volts or amperes) come to; undefined where they are doubted, or nothing is read. */
export function optionRead(
  row: Pick<TestRow, 'kind' | 'readings'>,
  values: Readonly<Record<string, number>>,
): string | undefined {
  if (fieldsOf(row).length === 0 || doubtOf(row, values) !== undefined) return undefined;
  const of = (field: ReadingField): number => values[field] ?? 0;
  if (row.kind === 'meter-two-stages') return voltsRead(of('rails'), of('other-rails'));
  return row.kind === 'load-test'
    ? lossRead(row, of('open'), of('near'), of('far'))
    : ampsRead(row, of('idle'), of('running'));
}

const voltsRead = (near: number, far: number): string => (isLevel(far - near) ? 'alike' : 'differ-idle');

const mostOf = ({ readings }: Pick<TestRow, 'readings'>, what: string): number =>
  readings.find((one) => one.what === what)?.to ?? 0;

function lossRead(row: Pick<TestRow, 'readings'>, open: number, near: number, far: number): string {
  const firm = (volts: number, what: string): boolean => (open - volts) / open <= mostOf(row, what) + SAME;
  if (!firm(near, 'lost-near')) return 'weak-everywhere';
  return firm(far, 'lost-far') ? 'firm-everywhere' : 'weak-far';
}

/** What a load test that lost more than it should says of a short; undefined where it lost no more, or nothing was read. */
export function lossSays(
  row: Pick<TestRow, 'kind' | 'readings'>,
  { open = 0, near, far }: Readonly<Record<string, number>>,
): 'no-trip' | 'more-than-planned' | undefined {
  if (row.kind !== 'load-test' || open <= 0 || near === undefined || far === undefined) return undefined;
  const lost = (open - Math.min(near, far)) / open;
  const limit = row.readings.find(({ what }) => what === 'no-trip')?.from ?? 0;
  if (lost > limit + SAME) return 'no-trip';
  return lossRead(row, open, near, far) === 'firm-everywhere' ? undefined : 'more-than-planned';
}

function ampsRead({ readings }: Pick<TestRow, 'readings'>, idle: number, running: number): string | undefined {
  const expected = readings.find(({ what }) => what === 'amps' || what === 'amps-untold');
  if (expected === undefined) return undefined;
  if (idle > expected.from + (expected.what === 'amps' ? OWN_USE_DOUBT : SAME)) return 'high-idle';
  return running <= expected.to + SAME ? 'well-below' : 'near-limit';
}

/** Shares and amperes nearer than this are one. Source: own-choice. */
const SAME = 1e-9;
