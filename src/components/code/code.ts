// A text as a square code: the side of the whole, in modules, and its dark ones as a path.
import { encode } from 'uqr';

/** Modules of quiet paper round the code that readers ask for. */
const QUIET = 4;

export function codeOf(text: string): { readonly whole: number; readonly path: string } {
  const { data, size } = encode(text, { border: 0 });
  const path = data
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])))
    .join('');
  return { whole: size + 2 * QUIET, path };
}
