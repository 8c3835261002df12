// A part of the page that could not be loaded says so and can be tried again.
import type { Loaded } from '../shared/index.ts';
import type { Say } from '../words/index.ts';

interface NotLoadedProps {
  readonly part: Pick<Loaded<unknown>, 'failed' | 'again'>;
  readonly say: Say;
}

export function NotLoaded({ part, say }: NotLoadedProps) {
  if (!part.failed) return null;
  return (
    <p class="problem" role="alert">
      {say('sheet-missing')}{' '}
      <button class="button quiet" type="button" onClick={part.again}>
        {say('sheet-again')}
      </button>
    </p>
  );
}
