// Which caution stands in full at which step: the first time on a page. Later it may be one line, where it has one.
import type { StepWords } from '../words/index.ts';

type Form = 'whole' | 'line';

/** By step, then by caution. What is told for the whole page before its first step counts as told. */
export function formsOf(
  steps: readonly Pick<StepWords, 'cautions'>[],
  told: readonly string[] = [],
): Record<string, Form>[] {
  const seen = new Set(told);
  return steps.map(({ cautions }) =>
    Object.fromEntries(
      cautions.map((id) => {
        const form: Form = seen.has(id) ? 'line' : 'whole';
        seen.add(id);
        return [id, form];
      }),
    ),
  );
}
