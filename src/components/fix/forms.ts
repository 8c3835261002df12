// In which form a caution stands at which step: what can kill or hurt in full each time; what only breaks something in full the first
// time and in one line after that; and in one line from the first, where it is told for the whole page.
import type { CautionWords, StepWords } from '../words/index.ts';

export type Form = 'whole' | 'line';

/** By step, then by caution. */
export function formsOf(
  steps: readonly Pick<StepWords, 'cautions'>[],
  cautions: Readonly<Record<string, Pick<CautionWords, 'rank' | 'wide'>>>,
): Record<string, Form>[] {
  const told = new Set<string>();
  return steps.map((step) =>
    Object.fromEntries(
      step.cautions.map((id) => {
        const words = cautions[id];
        const form: Form = words?.rank === 'damage' && (words.wide === true || told.has(id)) ? 'line' : 'whole';
        told.add(id);
        return [id, form];
      }),
    ),
  );
}
