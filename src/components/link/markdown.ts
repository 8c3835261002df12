// An answer or a walk as Markdown, for a forum that draws headings and lists: what the plain text says, and nothing else.
import type { Parts } from './plain-text.ts';

/** What is passed on: an answer, or the lines of a walk's card. */
export type Told = Parts | readonly string[];

/** Nothing that a person wrote or a number holds becomes a mark. */
const plain = (text: string): string => text.replace(/[\\`*_[\]<>|#~]/g, '\\$&').replace(/^(\d+)([.)])/gm, '$1\\$2');

const isCard = (told: Told): told is readonly string[] => Array.isArray(told);

export function markdown(told: Told, link: { readonly name: string; readonly address: string }): string {
  const text = isCard(told) ? card(told) : answer(told);
  return `${text}\n\n[${plain(link.name)}](${link.address})\n`;
}

const card = ([title = '', ...lines]: readonly string[]): string => [`## ${plain(title)}`, listed(lines)].join('\n\n');

const listed = (lines: readonly string[]): string => lines.map((line) => `- ${plain(line)}`).join('\n');

function answer({ headline, lead, said, facts, fix, before, steps, after }: Parts): string {
  const told = steps.map(({ text, job, dangers }, at) =>
    [
      `${at + 1}. ${plain(text)}`,
      ...(job === undefined ? [] : [`   - [${plain(job.title)}](${job.address})`]),
      ...dangers.map((danger) => `   - **${plain(danger.rank)}** ${plain(danger.text)}`),
    ].join('\n'),
  );
  return [
    `## ${plain(headline)}`,
    plain(lead),
    ...said.map(listed),
    `### ${plain(fix)}`,
    ...(before.acts.length === 0 ? [] : [`**${plain(before.title)}**`, listed(before.acts)]),
    told.join('\n'),
    ...after.flatMap(({ title, text }) => [`### ${plain(title)}`, plain(text)]),
    listed(facts),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}
