// The faces of the site, cut down to the characters it prints, in Astro's `fonts` form.
//
// Put --font-signs in front of the text face: `font-family: var(--font-signs), var(--font-text)`. Its unicode-range keeps
// it to the signs, and a sign would otherwise be taken from the text face's system fallback.
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fontProviders } from 'astro/config';
import { create } from 'fontkitten';
import { LETTERS, SIGNS, TEXT } from './characters.mjs';
import { cutTo } from './cut.mjs';
import { withPlainZero } from './plain-zero.mjs';

/** Bytes that all faces together may weigh; each letter that a language needs beyond the usual ones may add some to each face. */
export const MOST_BYTES = 32 * 1024 + 450 * LETTERS.length;

const root = new URL('../..', import.meta.url);
const cache = new URL('node_modules/.cache/fonts/', root);

const face = (packageName, file, characters, cutting = {}) => ({
  from: new URL(import.meta.resolve(`@fontsource/${packageName}/files/${file}`)),
  to: new URL(file, cache),
  path: `./node_modules/.cache/fonts/${file}`,
  characters,
  cutting,
});

/** The packages that the faces come from. */
export const FACES = ['besley', 'atkinson-hyperlegible-next', 'noto-sans-math'].map((name) => `@fontsource/${name}`);

const display = face('besley', 'besley-latin-700-normal.woff2', TEXT, { noLayoutClosure: true });
const text = face('atkinson-hyperlegible-next', 'atkinson-hyperlegible-next-latin-400-normal.woff2', TEXT);
const strong = face('atkinson-hyperlegible-next', 'atkinson-hyperlegible-next-latin-700-normal.woff2', TEXT);
const signs = face('noto-sans-math', 'noto-sans-math-latin-400-normal.woff2', SIGNS, {
  noHinting: true,
  dropTables: ['MATH', 'GSUB', 'GPOS', 'GDEF'],
});

/** Faces whose zero has a stroke across it. */
const STROKED = [text, strong];

/** `optional`: text never jumps when a face arrives late; that visit keeps the fallback. */
const variant = (weight, { path }) => ({ weight, style: 'normal', display: 'optional', src: [path] });
const codePoint = (character) => `U+${character.codePointAt(0).toString(16).toUpperCase()}`;

/** The signs and what lies between them: short, since it stands in every page. What the face lacks of it is taken from the text face. */
const SIGN_RANGES = ['U+394-3BC', 'U+2032-2265'];

/** @type {import('astro').AstroUserConfig['fonts']} */
export const fonts = [
  // With font-display: optional a face is never exchanged on a page that is being read, so fallbacks made to its measure
  // would only cost time at the first layout.
  {
    provider: fontProviders.local(),
    name: 'Besley',
    cssVariable: '--font-display',
    fallbacks: ['serif'],
    optimizedFallbacks: false,
    options: { variants: [variant(700, display)] },
  },
  {
    provider: fontProviders.local(),
    name: 'Atkinson Hyperlegible Next',
    cssVariable: '--font-text',
    fallbacks: ['sans-serif'],
    optimizedFallbacks: false,
    options: { variants: [variant(400, text), variant(700, strong)] },
  },
  {
    provider: fontProviders.local(),
    name: 'Noto Sans Math',
    cssVariable: '--font-signs',
    fallbacks: [],
    options: { variants: [{ ...variant(400, signs), weight: '400 700', unicodeRange: SIGN_RANGES }] },
  },
];

/** The cut is lossless for the characters asked for: the subsetter itself drops a missing one without a word. */
function assertComplete({ to, characters }, bytes) {
  const font = create(bytes);
  const missing = [...characters].filter((character) => !font.hasGlyphForCodePoint(character.codePointAt(0)));
  if (missing.length > 0) throw new Error(`${to.pathname} lacks ${missing.map(codePoint).join(', ')}`);
}

/** Letters of a language that a face has; what it lacks is taken from the reader's own faces. */
function lettersOf({ from, characters }) {
  if (characters !== TEXT) return [];
  const font = create(readFileSync(from));
  return LETTERS.filter((letter) => font.hasGlyphForCodePoint(letter.codePointAt(0)));
}

/** A new file in the place of the old one: a copy of the project that shares it by a hard link keeps its own. */
function replaceFile(at, bytes) {
  const beside = new URL(`${at.href}.new`);
  writeFileSync(beside, bytes);
  renameSync(beside, at);
}

async function cut(one) {
  const wanted = one.characters + lettersOf(one).join('');
  const as = (face, targetFormat) => cutTo(face, wanted, { ...one.cutting, targetFormat });
  const face = readFileSync(one.from);
  const plain = STROKED.includes(one) ? withPlainZero(await as(face, 'sfnt')) : face;
  const bytes = await as(plain, 'woff2');
  assertComplete(one, bytes);
  if (!(existsSync(one.to) && readFileSync(one.to).equals(bytes))) replaceFile(one.to, bytes);
  return bytes.length;
}

/** Cuts the faces before Astro reads them. @returns {import('astro').AstroIntegration} */
export const faces = () => ({
  name: 'faces',
  hooks: {
    'astro:config:setup': async ({ logger }) => {
      mkdirSync(cache, { recursive: true });
      let total = 0;
      for (const one of [display, text, strong, signs]) total += await cut(one);
      if (total > MOST_BYTES) throw new Error(`The faces weigh ${total} bytes, more than ${MOST_BYTES}`);
      logger.info(`${total} bytes of ${MOST_BYTES}`);
    },
  },
});
