// Every character a page may print. The faces are cut down to these; a test fails on a printed character outside them.
import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const asciiPrintable = Array.from({ length: 95 }, (_, i) => String.fromCodePoint(0x20 + i)).join('');

/** Spaces that English typography needs: no-break, thin. */
const spaces = '\u00a0\u2009';

/** In both text faces. */
export const TEXT = `${asciiPrintable}${spaces}‘’“”–—…·•×÷±−°²³½¼¾⁄§©€äöüÄÖÜßéè`;

/** In neither text face, so in a face of their own. Micro is the Greek letter U+03BC, ohm is the Greek letter U+03A9. */
export const SIGNS = 'Ωμ→←↑↓↔≤≥≈≠√∞Δ′″';

/** Letters that a language of the content needs beyond those. */
export const LETTERS = (() => {
  const cwd = fileURLToPath(new URL('../../src/content/', import.meta.url));
  const text = globSync('**/*.{yaml,mdx}', { cwd }).map((file) => readFileSync(`${cwd}${file}`, 'utf8'));
  return [...new Set(text.join('').match(/\p{L}/gu))].filter((letter) => !TEXT.includes(letter)).sort();
})();

export const ALL = new Set([...TEXT, ...SIGNS, ...LETTERS]);
