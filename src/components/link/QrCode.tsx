// The address of an answer as a square to be read by another phone; loaded when it is asked for.
import { codeOf } from '../code/index.ts';

export function QrCode({ text, label }: { readonly text: string; readonly label: string }) {
  const { whole, path } = codeOf(text);
  return (
    <svg class="qr" viewBox={`0 0 ${whole} ${whole}`} role="img" aria-label={label}>
      <rect width={whole} height={whole} fill="#fff" />
      <path d={path} fill="#000" stroke="none" />
    </svg>
  );
}
