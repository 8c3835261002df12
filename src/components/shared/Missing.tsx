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
