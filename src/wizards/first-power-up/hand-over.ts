// From a test that showed something else to the walk that finds the fault, with what was seen there and what holds there too.
import type { Plan, TestRow, Where } from '../plan/index.ts';
import { districtOf } from '../plan/index.ts';
import { isUnseen, type Seen } from './flow.ts';
import { isOwnTest } from './own-acts.ts';
import { BESIDE } from './readings.ts';
import { isSame } from './same-place.ts';

export interface HandOver {
  readonly complaint: string;
  /** The address of the walk from "?", as `walkAddress` writes it. What is safe is asked anew there: no link says it. */
  readonly search: string;
}

type Sign = readonly [check: string, option: string];

/** A test that is no check of the walk, but shows what one of them asks for. */
const SHOWS: Readonly<Record<string, Readonly<Record<string, Sign>>>> = {
  'first-look': { stops: ['other-locomotive-runs-on', 'stops'] },
};

/** Nothing has run yet, and nothing has gone off: something only tests otherwise than it should. */
const BEFORE_TRAINS: readonly string[] = ['jumper-test', 'two-lamps', 'meter-two-stages'];

/** @param seen everything up to the row that differs, which is the last; undefined where that row shows what is expected */
export function handOver(plan: Pick<Plan, 'tests' | 'track' | 'sheet'>, seen: readonly Seen[]): HandOver | undefined {
  const { tests } = plan;
  const last = seen.at(-1);
  const row = tests.find(({ id }) => id === last?.row);
  const complaint = last === undefined ? undefined : row?.leads[last.option];
  if (row === undefined || last === undefined || complaint === undefined) return undefined;
  const kinds = [...new Set(tests.map(({ kind }) => kind))];
  const read = readOf(row, last);
  // A dead side is no step between two that are alive.
  const told = read.some(([, option]) => option === 'none') ? kinds.filter((kind) => kind !== row.kind) : kinds;
  const signs: Sign[] = [
    ...told.flatMap((kind) => seenOf(kind, row, last, plan, seen)),
    ...read,
    ...(BEFORE_TRAINS.includes(row.kind) ? [['what-happens', 'just-testing'] as const] : []),
    ...layoutOf(row.where, plan),
  ];
  return {
    complaint,
    search: `?${new URLSearchParams([...signs.map(([check, option]) => [check, option]), ['told', 'yes']])}`,
  };
}

/**
 * What the meter showed of both sides of a gap, besides that they differ: both are alive, and which of them stands otherwise than planned is the
 * one with the trouble; or that one is dead. Nothing where the plan expects neither, and nothing of a higher side, for no answer of the walk says just that.
 */
function readOf({ kind, readings }: TestRow, { values = {} }: Seen): Sign[] {
  if (kind !== 'meter-two-stages') return [];
  const { rails = 0, 'other-rails': others = 0 } = values;
  const most = Math.max(0, ...readings.flatMap(({ what, to }) => (what === 'step' ? [] : [to])));
  const [low, high] = [Math.min(rails, others), Math.max(rails, others)];
  if (isDead(low, high)) return [['meter-volts-there', 'none']];
  return low < high && high <= most * (1 + BESIDE) ? [['meter-volts-there', 'lower']] : [];
}

/** A side with so small a part of what the other one has is dead. Source: own-choice. */
const NEXT_TO_NONE = 0.1;
const isDead = (low: number, high: number): boolean => low < high && low <= high * NEXT_TO_NONE;

/** What the tests of one kind say of the place: the one made there, else that it was as expected wherever it bears on it. */
function seenOf(
  kind: TestRow['kind'],
  at: TestRow,
  last: Seen,
  { tests, track }: Pick<Plan, 'tests' | 'track'>,
  seen: readonly Seen[],
): Sign[] {
  if (kind === at.kind) return signOf(kind, last.option);
  const bearing = tests.filter((row) => row.kind === kind && bearsOn(row.where, at.where, track));
  const here = bearing.find(({ where }) => isSame(where, at.where));
  const counted = here === undefined ? bearing : [here];
  const [option, ...others] = new Set(counted.map(({ id }) => seen.find(({ row }) => row === id)?.option));
  return option === undefined || others.length > 0 || isUnseen(option) ? [] : signOf(kind, option);
}

function signOf(kind: TestRow['kind'], option: string): Sign[] {
  const shown = SHOWS[kind]?.[option];
  if (shown !== undefined) return [shown];
  return isOwnTest(kind) ? [] : [[kind, option]];
}

/** Whether what is seen at one place says something of the other: a district and its own gaps do, and two gaps between the same two districts. */
function bearsOn(where: Where, at: Where, track: Plan['track']): boolean {
  if (isSame(where, at) || at.kind === 'all') return true;
  const [one, other] = [lettersOf(where, track), lettersOf(at, track)];
  const isWithin = (inner: readonly string[], outer: readonly string[]): boolean =>
    inner.length > 0 && inner.every((letter) => outer.includes(letter));
  return isWithin(one, other) || isWithin(other, one);
}

/** The districts of a place. */
function lettersOf(where: Where, track: Plan['track']): string[] {
  const { districts, gaps } = track;
  switch (where.kind) {
    case 'gap':
      return gaps.find(({ number }) => number === where.gap)?.districts.flatMap((letter) => letter ?? []) ?? [];
    case 'district':
      return [districtOf(where.district, track)?.letter ?? where.district];
    case 'section':
      return districts.flatMap(({ letter, sections }) =>
        sections.some(({ id }) => id === where.section) ? letter : [],
      );
    case 'all':
      return districts.map(({ letter }) => letter);
  }
}

/** What the sheet tells of the layout, where the walk would ask for it. */
function layoutOf(where: Where, { sheet, track }: Pick<Plan, 'sheet' | 'track'>): Sign[] {
  const letters = lettersOf(where, track);
  const here = track.districts.filter(({ letter }) => letters.includes(letter));
  const stages = here.map(({ stage }) => stage);
  const [common, ...others] = new Set(stages.map((stage) => stage.common));
  return [
    ['how-many-parts', track.districts.length > 1 ? 'several' : 'one'],
    // Breakers that part nothing yet are nowhere.
    ...(here.some(({ parts }) => parts.length > 0) ? [['what-is-between', 'breaker'] as const] : []),
    ...(stages.length > 1 && common !== undefined && others.length === 0
      ? [['common-wire', common === 'joined' ? 'joined' : 'floating'] as const]
      : []),
    ...(sheet.accessoryBus === undefined
      ? []
      : [['what-feeds-accessories', sheet.accessoryBus === 'own' ? 'own-supply' : 'from-the-track'] as const]),
  ];
}
