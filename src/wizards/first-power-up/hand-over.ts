// From a test that showed something else to the walk that finds the fault, with what was seen at the same place.
import type { TestRow } from '../plan/index.ts';
import { isUnseen, type Seen } from './flow.ts';
import { isOwnTest } from './own-acts.ts';
import { isSame } from './same-place.ts';

export interface HandOver {
  readonly complaint: string;
  /** The address of the walk from "?", as `walkAddress` writes it. What is safe is asked anew there: no link says it. */
  readonly search: string;
}

/** @param seen everything up to the row that differs, which is the last; undefined where that row shows what is expected */
export function handOver(rows: readonly TestRow[], seen: readonly Seen[]): HandOver | undefined {
  const last = seen.at(-1);
  const row = rows.find(({ id }) => id === last?.row);
  const complaint = last === undefined ? undefined : row?.leads[last.option];
  if (row === undefined || complaint === undefined) return undefined;
  const here = seen.flatMap(({ row: id, option }): [string, string][] => {
    const one = rows.find((other) => other.id === id);
    const counts = one !== undefined && !isUnseen(option) && !isOwnTest(one.kind) && isSame(one.where, row.where);
    return counts ? [[one.kind, option]] : [];
  });
  return { complaint, search: `?${new URLSearchParams([...here, ['told', 'yes']])}` };
}
