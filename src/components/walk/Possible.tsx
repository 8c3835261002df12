// What is still possible, and what was ruled out by which answer.
import { posterior } from '../../engine/index.ts';
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import { compiledFor } from '../../wizards/put-it-right/index.ts';
import type { WalkParts } from './parts.ts';
import type { WalkWords } from './words.ts';

const MOST_SHOWN = 5;
const LEAST_SHOWN = 0.015;

export function Possible({
  context,
  checks,
  say,
  numbers,
  home,
}: WalkParts & { readonly context: WalkContext; readonly checks: WalkWords['checks'] }) {
  const { findings, ruledOut } = posterior(compiledFor(context.complaint), context.answers, context.tried);
  const possible = findings.filter(({ chance }) => chance >= LEAST_SHOWN);
  const shown = possible.slice(0, MOST_SHOWN);
  const rest = possible.length - shown.length;
  return (
    <section class="part">
      <h2 class="h3">{say('walk-possible')}</h2>
      <ul class="possible">
        {shown.map(({ fixClass, chance }) => (
          <li key={fixClass}>
            <a href={`${home}fixes/${fixClass}/`}>{say(`class-${fixClass}`)}</a>
            <svg width="100%" height="10" aria-hidden="true">
              <rect width={`${100 * chance}%`} height="10" />
            </svg>
            <span class="num">{numbers.share(chance)}</span>
          </li>
        ))}
      </ul>
      {rest > 0 && <p class="small">{say('walk-rest', { n: rest })}</p>}
      {ruledOut.length > 0 && (
        <details>
          <summary>{say('walk-ruled-out')}</summary>
          <ul class="notes">
            {ruledOut.map(({ check, option, faults }) => (
              <li key={check}>
                <b>
                  {checks[check]?.known}: {checks[check]?.options[option]?.label}
                </b>{' '}
                {faults.map((fault) => say(`fault-${fault}`)).join('; ')}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
