// How one knows that a fix worked, and what to do where it did not help.
import type { FixWords, Say } from '../words/index.ts';

interface Props {
  readonly fix: Pick<FixWords, 'verify' | 'next'>;
  readonly say: Say;
  /** Where to go on from here. */
  readonly ways?: readonly { readonly href: string; readonly label: string }[];
}

export function Verify({ fix, say, ways = [] }: Props) {
  return (
    <section class="part">
      <h2>{say('verify-title')}</h2>
      <p>{fix.verify}</p>
      <h2>{say('not-helped-title')}</h2>
      <p>{fix.next}</p>
      {ways.length > 0 && (
        <p class="acts" data-pagefind-ignore="index">
          {ways.map(({ href, label }) => (
            <a key={href} class="button quiet" href={href}>
              {label}
            </a>
          ))}
        </p>
      )}
    </section>
  );
}
