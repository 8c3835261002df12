// An answer as plain text, to be pasted into a mail: what it says, every step with every caution of it, how to prove it, its numbers.
import { formsOf } from '../fix/index.ts';
import type { CautionWords, FixWords, Say } from '../words/index.ts';

export interface Answer {
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

/** An answer in the parts in which it is passed on, each with its name. */
export interface Parts {
  readonly headline: string;
  readonly lead: string;
  readonly said: readonly (readonly string[])[];
  readonly facts: readonly string[];
  readonly fix: string;
  /** What holds for all steps. */
  readonly before: { readonly title: string; readonly acts: readonly string[] };
  readonly steps: readonly ToldStep[];
  /** How to prove it, and what then. */
  readonly after: readonly { readonly title: string; readonly text: string }[];
}

interface ToldStep {
  /** With what only breaks something, or was said in full before, in brackets before it. */
  readonly text: string;
  readonly job: { readonly title: string; readonly address: string } | undefined;
  readonly dangers: readonly { readonly rank: string; readonly text: string }[];
}

export function partsOf(answer: Answer): Parts {
  const { headline, lead, said = [], facts, fix, say } = answer;
  return {
    headline,
    lead,
    said,
    facts,
    fix: `${fix.title} (${fix.effort})`,
    before: { title: say('before-title'), acts: fix.before },
    steps: stepsOf(answer),
    after: [
      { title: say('verify-title'), text: fix.verify },
      { title: say('not-helped-title'), text: fix.next },
    ],
  };
}

function stepsOf({ fix, cautions, say, here }: Answer): ToldStep[] {
  const forms = formsOf(fix.steps, cautions);
  const lineOf = (index: number, id: string): string | undefined =>
    forms[index]?.[id] === 'line' ? cautions[id]?.line : undefined;
  return fix.steps.map(({ do: what, more, job, cautions: ids }, index) => ({
    text: guarded(
      ids.flatMap((id) => lineOf(index, id) ?? []),
      [what, more].filter((text) => text !== undefined),
    ),
    job: job === undefined ? undefined : { title: job.title, address: new URL(job.href, here).href },
    dangers: ids.flatMap((id) => {
      const words = cautions[id];
      if (words === undefined || lineOf(index, id) !== undefined) return [];
      return [{ rank: say(`rank-${words.rank}`), text: `${words.harm} ${words.do}` }];
    }),
  }));
}

/** What a step says, with its cautions of one line before it, told apart from it. */
export const guarded = (lines: readonly string[], says: readonly string[]): string =>
  [...(lines.length === 0 ? [] : [`(${lines.join(' ')})`]), ...says].join(' ');

export const plainText = (answer: Answer): string => plainOf(partsOf(answer));

export function plainOf({ headline, lead, said, facts, fix, before, steps, after }: Parts): string {
  const told = steps.flatMap(({ text, job, dangers }, index) => [
    `${index + 1}. ${text}`,
    ...(job === undefined ? [] : [`   ${job.title}: ${job.address}`]),
    ...dangers.map((danger) => `   ${danger.rank} ${danger.text}`),
  ]);
  return [
    [headline, lead],
    ...said,
    [fix],
    before.acts.length === 0 ? [] : [before.title, ...before.acts.map((act) => `- ${act}`)],
    told,
    after.map(({ title, text }) => `${title}: ${text}`),
    facts,
  ]
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}
