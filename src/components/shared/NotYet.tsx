// What stands where a part is still to come.
import type { Say } from '../words/index.ts';
import { Missing } from './Missing.tsx';

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
