// What holds for every step of a page, worded as acts.
import type { FixWords, Say } from '../words/index.ts';

interface Props {
  readonly acts: FixWords['before'];
  readonly say: Say;
}

export function BeforeYouStart({ acts, say }: Props) {
  if (acts.length === 0) return null;
  return (
    <section class="before">
      <h2 class="h3">{say('before-title')}</h2>
      <ul>
        {acts.map((act) => (
          <li key={act}>{act}</li>
        ))}
      </ul>
    </section>
  );
}
