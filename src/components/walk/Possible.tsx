// What is still possible, and what was ruled out by which answer. On paper the card says what is possible.
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import { possibleNow } from '../../wizards/put-it-right/index.ts';
import { likely } from './likely.ts';
import type { PartProps } from './part-props.ts';
import type { WalkWords } from './words.ts';

interface Props extends PartProps {
  readonly context: WalkContext;
  readonly checks: WalkWords['checks'];
  /** Whether what is possible stands on the page already: then only what was ruled out is told. */
  readonly isListed: boolean;
}

export function Possible({ context, checks, isListed, say, numbers, home }: Props) {
  const { shown, more, ruledOut } = possibleNow(context);
  if (isListed && ruledOut.length === 0) return null;
  return (
    <section class="part">
      {!isListed && (
        <>
          <h2 class="h3 not-on-paper">{say('walk-possible')}</h2>
          <ul class="possible not-on-paper">
            {shown.map(({ fixClass, chance }) => (
              <li key={fixClass}>
                <a href={`${home}fixes/${fixClass}/`}>{say(`class-${fixClass}`)}</a>
                <svg width="100%" height="10" aria-hidden="true">
                  <rect width={`${100 * chance}%`} height="10" />
                </svg>
                <span class="num small">{likely(chance, say, numbers)}</span>
              </li>
            ))}
          </ul>
          {more > 0 && <p class="small not-on-paper">{say('walk-rest', { n: more })}</p>}
        </>
      )}
      {ruledOut.length > 0 && (
        <details>
          <summary>{say('walk-ruled-out')}</summary>
          <ul class="notes">
            {ruledOut.map(({ check, option, faults }) => (
              <li key={check}>
                <b>
                  {checks[check]?.known}: {checks[check]?.options[option]?.label}
                </b>{' '}
                {faults.map((fault) => say(`fault-${fault}`)).join(say('and-then'))}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
