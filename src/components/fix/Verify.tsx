// How one knows that a fix worked, and what to do where it did not help.
import type { FixWords, Say } from '../words/index.ts';
import { Measured } from '../words/index.ts';

interface Props {
  readonly fix: Pick<FixWords, 'verify' | 'next'>;
  readonly say: Say;
  readonly language: string;
  /** Where to go on from here. */
  readonly ways?: readonly { readonly href: string; readonly label: string }[];
}

export function Verify({ fix, say, language, ways = [] }: Props) {
  return (
    <section class="part">
      <h2>{say('verify-title')}</h2>
      <p>
        <Measured text={fix.verify} language={language} />
      </p>
      <h2>{say('not-helped-title')}</h2>
      <p>
        <Measured text={fix.next} language={language} />
      </p>
      {ways.length > 0 && (
        <p class="acts">
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
