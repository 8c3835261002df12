// An answer as plain text, to be pasted into a mail: what it says, every step with every caution of it, how to prove it, its numbers.
import { formsOf } from '../fix/index.ts';
import type { CautionWords, FixWords, Say } from '../words/index.ts';

interface Answer {
  readonly headline: string;
  readonly lead: string;
  /** What stands between verdict and steps, paragraph by paragraph. */
  readonly said?: readonly (readonly string[])[];
  readonly fix: Pick<FixWords, 'title' | 'effort' | 'before' | 'steps' | 'verify' | 'next'>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** Numbers and what was assumed, one line each. */
  readonly facts: readonly string[];
  readonly say: Say;
  /** The address of the answer: those of jobs are read from it. */
  readonly here: string;
}

export function plainText({ headline, lead, said = [], fix, cautions, facts, say, here }: Answer): string {
  const forms = formsOf(fix.steps, cautions);
  const lineOf = (index: number, id: string): string | undefined =>
    forms[index]?.[id] === 'line' ? cautions[id]?.line : undefined;
  const steps = fix.steps.flatMap(({ do: what, more, job, cautions: ids }, index) => [
    `${index + 1}. ${[...ids.map((id) => lineOf(index, id)), what, more].filter((text) => text !== undefined).join(' ')}`,
    ...(job === undefined ? [] : [`   ${job.title}: ${new URL(job.href, here).href}`]),
    ...ids.flatMap((id) => {
      const words = cautions[id];
      if (words === undefined || lineOf(index, id) !== undefined) return [];
      return [`   ${say(`rank-${words.rank}`)} ${words.harm} ${words.do}`];
    }),
  ]);
  const parts = [
    [headline, lead],
    ...said,
    [`${fix.title} (${fix.effort})`],
    fix.before.length === 0 ? [] : [say('before-title'), ...fix.before.map((act) => `- ${act}`)],
    steps,
    [`${say('verify-title')}: ${fix.verify}`, `${say('not-helped-title')}: ${fix.next}`],
    facts,
  ];
  return parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}
