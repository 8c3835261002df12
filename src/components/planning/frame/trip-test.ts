// The step that settles whether a short switches a unit off, where its supply may be too small for that.
import { dangersOf } from '../../../wizards/safety/index.ts';
import type { FixWords, StepWords } from '../../words/index.ts';

/** It names resistor and coin, so that their dangers stand there and not only on the page that it sends to. */
const PROVING = ['puts-a-resistor-on-the-rails', 'puts-a-coin-on-the-rails'] as const;

export const isTripTest = ({ job }: Pick<StepWords, 'job'>): boolean =>
  job?.href.includes('load-test-and-coin') === true;

/** The load test and the coin as they stand among the steps of `fix`, worded as `act`; undefined where they do not. */
export function tripTest(fix: FixWords | undefined, act: string): StepWords | undefined {
  const test = fix?.steps.find(isTripTest);
  if (test === undefined) return undefined;
  const cautions = [...new Set([...dangersOf(PROVING), ...test.cautions])];
  return { ...test, do: act, more: undefined, cautions };
}
