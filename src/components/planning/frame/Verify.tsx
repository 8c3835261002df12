// How to see that a fix worked, and what to do if it did not.
import type { FixWords, Say } from '../../words/index.ts';

export function Verify({ fix, say }: { fix: FixWords; say: Say }) {
  return (
    <section class="part">
      <h2>{say('verify-title')}</h2>
      <p>{fix.verify}</p>
      <h2>{say('not-helped-title')}</h2>
      <p>{fix.next}</p>
    </section>
  );
}
