// The address of an answer as a square to be read by another phone; loaded when it is asked for.
import { encode } from 'uqr';

/** Modules of quiet paper round the code that readers ask for. */
const QUIET = 4;

export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { data, size } = encode(text, { border: 0 });
  const path = data
    .flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : [])))
    .join('');
  const whole = size + 2 * QUIET;
  return (
    <svg class="qr" viewBox={`0 0 ${whole} ${whole}`} role="img" aria-label={label}>
      <rect width={whole} height={whole} fill="#fff" />
      <path d={path} fill="#000" stroke="none" />
    </svg>
  );
}
