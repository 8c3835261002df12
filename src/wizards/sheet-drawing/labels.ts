// Names broken into lines that fit above a section, by how wide their signs are at most in the site's face.

/** Height of the letters of a name, pixels. Source: own-choice (no text of a figure below 13 px). */
export const LETTERS = 13;
/** From one line of a name to the next, pixels. */
export const LINE = 14;
/** Lines that a name has room for wherever it stands. */
export const LINES = 2;

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

/** Fewer signs of its own than these tell no name from another. Source: own-choice. */
const OWN_SIGNS = 3;

/**
 * Names as they stand in one drawing. Where two lines would leave nothing that tells a name from another, it has a third; and if that does not do
 * either, its end is kept.
 */
export function linesOfAll(names: readonly string[], most: number): ReadonlyMap<string, readonly string[]> {
  const all = [...new Set(names)];
  const isCut = (lines: readonly string[]): boolean => lines.at(-1)?.endsWith('…') === true;
  const isAlone = (name: string, lines: readonly string[]): boolean => {
    const kept = squeezed(lines.join('').slice(0, -1)).slice(0, 1 - OWN_SIGNS);
    return !all.some((other) => other !== name && squeezed(other).startsWith(kept));
  };
  return new Map(
    all.map((name) => {
      const two = linesOf(name, most);
      if (!isCut(two) || isAlone(name, two)) return [name, two];
      const three = linesOf(name, most, LINES + 1);
      return [name, !isCut(three) || isAlone(name, three) ? three : withEnd(name, three, most)];
    }),
  );
}

const squeezed = (text: string): string => text.replaceAll(/\s+/gu, '');

/** The last line holds as much of the end as fits, from a whole word on where one does. */
function withEnd(name: string, lines: readonly string[], most: number): readonly string[] {
  const words = name.trim().match(BREAKABLE) ?? [];
  const fits = (end: string): boolean => end !== '' && widthOf(`…${end}`) <= most;
  const ends = words
    .map((_, i) => words.slice(i).join(''))
    .slice(1)
    .filter((end) => widthOf(end) > most / 2);
  return [...lines.slice(0, -1), `…${ends.find(fits) ?? tailOf(name.trim(), fits)}`];
}

function tailOf(text: string, fits: (end: string) => boolean): string {
  const signs = [...text];
  const from = signs.findIndex((_, i) => fits(signs.slice(i).join('')));
  return from < 0 ? '' : signs.slice(from).join('');
}

/** A name in two lines at most, or so many; what does not fit ends in an ellipsis. */
export function linesOf(name: string, most: number, count = LINES): readonly string[] {
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
    if (lines.length === count - 1) return [...lines, cut(line + rest, most)];
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
