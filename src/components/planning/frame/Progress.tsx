// How far the questions have come: in words, and as track that is laid. What is beyond the quick answer is counted by nobody.
import type { Replayed } from '../../../wizards/planning/index.ts';
import type { Say } from '../../words/index.ts';

export function Progress({ count, say }: Pick<Replayed, 'count'> & { readonly say: Say }) {
  if (count === undefined) return <p class="step-of">{say('one-more')}</p>;
  const { at, of } = count;
  return (
    <div class="progress-line">
      <p class="step-of">{say('step-of', { number: at, total: of })}</p>
      <div class="progress" aria-hidden="true">
        {Array.from({ length: of }, (_, index) => (
          <span key={index} class={look(index + 1 - at)} />
        ))}
      </div>
    </div>
  );
}

/** Laid behind, a gap where one is, sleepers only ahead. */
function look(ahead: number): string {
  if (ahead === 0) return 'now';
  return ahead < 0 ? 'done' : '';
}
