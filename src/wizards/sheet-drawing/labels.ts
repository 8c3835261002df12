// Names broken into lines that fit above a section, by how wide their signs are at most in the site's face.

/** Height of the letters of a name, pixels. Source: own-choice (no text of a figure below 13 px). */
export const LETTERS = 13;
/** From one line of a name to the next, pixels. */
export const LINE = 14;
const LINES = 2;

/** Where a name may go on in the next line: after a space or a hyphen. */
const BREAKABLE = /[^\s-]*(?:-+|\s+|$)/gu;

/** Widths in parts of the letters' height, a little more than the face has; what is not listed may be as wide as it is high. */
const NARROW = /[iljtfrI1.,:;'’!|()[\] -]/u;
const WIDE = /[mwMW@%—…]/u;
const CAPITAL = /\p{Lu}/u;
const SMALL = /[\p{Ll}\p{N}\p{P}]/u;

function signWidth(sign: string): number {
  if (NARROW.test(sign)) return 0.4;
  if (WIDE.test(sign)) return 0.95;
  if (CAPITAL.test(sign)) return 0.72;
  return SMALL.test(sign) ? 0.6 : 1;
}

/** How wide a text is at most, pixels. */
export function widthOf(text: string): number {
  let width = 0;
  for (const sign of text) width += signWidth(sign);
  return width * LETTERS;
}

/** A name in two lines at most; what does not fit ends in an ellipsis. */
export function linesOf(name: string, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  const words = name.trim().match(BREAKABLE) ?? [];
  for (const [i, word] of words.entries()) {
    if (widthOf((line + word).trimEnd()) <= most) {
      line += word;
      continue;
    }
    const rest = words.slice(i).join('');
    if (line === '') return [...lines, cut(rest, most)];
    if (lines.length === LINES - 1) return [...lines, cut(line + rest, most)];
    lines.push(line.trimEnd());
    line = word;
    if (widthOf(word.trimEnd()) > most) return [...lines, cut(rest, most)];
  }
  return line === '' ? lines : [...lines, line.trimEnd()];
}

function cut(text: string, most: number): string {
  let kept = '';
  for (const sign of text) {
    if (widthOf(`${kept}${sign}…`) > most) break;
    kept += sign;
  }
  return `${kept.trimEnd()}…`;
}
