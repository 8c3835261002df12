// What a sheet tells is where a wizard goes on from.
import { type Answers, toAddress } from '../../wizards/planning/index.ts';
import type { Say } from '../words/index.ts';

/** A planning wizard: its address, its name, and the fields that it asks. */
export interface WizardLink {
  readonly href: string;
  readonly title: string;
  readonly fields: readonly string[];
}

interface OnwardProps {
  readonly answers: Answers;
  readonly wizards: readonly WizardLink[];
  readonly say: Say;
}

export function Onward({ answers, wizards, say }: OnwardProps) {
  const told = (fields: readonly string[]): Answers =>
    Object.fromEntries(Object.entries(answers).filter(([field]) => fields.includes(field)));
  return (
    <section class="part">
      <h2>{say('sheet-onward')}</h2>
      <p>{say('sheet-onward-lead')}</p>
      <ul class="says">
        {wizards.map(({ href, title, fields }) => (
          <li key={href}>
            <a href={href + toAddress(told(fields))}>{title}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
