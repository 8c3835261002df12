// Under which name stands what is to be seen in a test.
import type { TestRow } from '../../wizards/plan/index.ts';

/** What is to be seen has words of its own where rails change sides, and where a breaker acts. */
export function expectedAs(kind: TestRow['kind'], turning: boolean, breaker: boolean): string {
  if (turning) return `${kind}-turning`;
  return breaker && (kind === 'coin-near' || kind === 'coin-far') ? `${kind}-breaker` : kind;
}

/** A lamp with clips in place of the jumper: a bare wire would be a dead short where a rail is whole at the far end. */
export const isByLamp = ({ kind, turning }: Pick<TestRow, 'kind' | 'turning'>): boolean =>
  turning && kind === 'jumper-test';

/** A loop's own row is the other one of its kind. */
export const isOverBridge = ({ kind, turning }: Pick<TestRow, 'kind' | 'turning'>): boolean =>
  turning && kind === 'short-locomotive-through-loop';
