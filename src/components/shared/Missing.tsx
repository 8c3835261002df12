// A part that could not be loaded says so and can be tried again.
import type { Say } from '../words/index.ts';

export function Missing({ say, again }: { readonly say: Say; readonly again: () => void }) {
  return (
    <p class="problem" role="alert">
      {say('words-missing')}{' '}
      <button class="button quiet" type="button" onClick={again}>
        {say('words-again')}
      </button>
    </p>
  );
}

/** In the place of a part that is on its way, or was not to be had. */
export function NotYet({
  say,
  failed,
  again,
}: {
  readonly say: Say;
  readonly failed: boolean;
  readonly again: () => void;
}) {
  if (failed) return <Missing say={say} again={again} />;
  return (
    <p class="small" role="status">
      {say('words-coming')}
    </p>
  );
}
