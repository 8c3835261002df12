// The zero of the text face is slashed, which in the name of a scale ("H0", "00") reads as another letter. Here the face itself is told to print
// an O in these two names, and nowhere else: the text stays what it is, for search, copying and reading aloud. A substitution table
// (OpenType GSUB, feature ccmp, chained contexts of coverages), since the face has no other zero.
import { create } from 'fontkitten';

const word = (value) => [(value >> 8) & 0xff, value & 0xff];
const long = (value) => [...word(value >>> 16), ...word(value & 0xffff)];
const tag = (text) => [...text].map((letter) => letter.charCodeAt(0));

/** A table: numbers and tags as they are, and for each part (an array of bytes) its offset; the parts follow. */
function table(...fields) {
  const head = fields.reduce((sum, field) => sum + (typeof field === 'string' ? 4 : 2), 0);
  const bytes = [];
  const parts = [];
  let at = head;
  for (const field of fields) {
    if (typeof field === 'string') bytes.push(...tag(field));
    else if (typeof field === 'number') bytes.push(...word(field));
    else {
      bytes.push(...word(at));
      parts.push(...field);
      at += field.length;
    }
  }
  return [...bytes, ...parts];
}

const coverage = (glyphs) => table(1, glyphs.length, ...[...glyphs].sort((one, two) => one - two));

/** Where `input` stands after `before` and ahead of `after`, lookup `by` is done at each place of the input; without one, nothing is done there. */
const context = ({ before = [], input, after = [], by }) =>
  table(
    3,
    ...[before, input, after].flatMap((places) => [places.length, ...places.map(coverage)]),
    ...(by === undefined ? [0] : [input.length, ...input.flatMap((_, place) => [place, by])]),
  );

const lookup = (kind, subtables) => table(kind, 0, subtables.length, ...subtables);

/** What a face substitutes already. @param {Buffer} gsub */
function substitutionsIn(gsub) {
  const at = (place) => gsub.readUInt16BE(place);
  /** Tags with what their offsets, counted from `from`, lead to. */
  const records = (from, place, count, read) =>
    Array.from({ length: count }, (_, index) => {
      const record = place + 6 * index;
      return { tag: gsub.toString('latin1', record, record + 4), value: read(from + at(record + 4)) };
    });
  const numbers = (place) => Array.from({ length: at(place) }, (_, index) => at(place + 2 + 2 * index));
  const language = (place) => ({ required: at(place + 2), features: numbers(place + 4) });
  const script = (place) => ({
    usual: at(place) === 0 ? undefined : language(place + at(place)),
    languages: records(place, place + 4, at(place + 2), language),
  });
  const [scripts, features, lookups] = [at(4), at(6), at(8)];
  return {
    scripts: records(scripts, scripts + 2, at(scripts), script),
    features: records(features, features + 2, at(features), (place) => numbers(place + 2)),
    lookups: { places: numbers(lookups), bytes: gsub.subarray(lookups) },
  };
}

const OWN = 'ccmp';
const NONE = 0xffff;

/** The lookups that print an O, the first of them being number `first` of the face. */
function ownLookups(font, first) {
  const glyph = (letter) => font.glyphForCodePoint(letter.codePointAt(0)).id;
  const [zero, round, h] = ['0', 'O', 'H'].map(glyph);
  const digits = [...'0123456789'].map(glyph);
  const pair = [[zero], [zero]];
  const by = first + 2;
  return [
    lookup(6, [context({ before: [[h]], input: [[zero]], by })]),
    lookup(6, [
      // Two noughts of a number.
      context({ before: [[...digits, ...[...'.,:'].map(glyph)]], input: pair }),
      context({ input: pair, after: [digits] }),
      context({ input: pair, by }),
    ]),
    lookup(1, [table(1, coverage([zero]), (round - zero) & NONE)]),
  ];
}

/** The substitutions of a face and the own ones, in every script and language. */
function withOwn(font, gsub) {
  const { scripts, features, lookups } = substitutionsIn(gsub);
  if (features.some(({ tag: name }) => name <= OWN)) throw new Error('Tags of features must stay in their order');
  const first = lookups.places.length;
  const own = ownLookups(font, first);
  // The own feature stands first, so that all others move on by one.
  const language = ({ required, features: old }) =>
    table(0, required === NONE ? NONE : required + 1, old.length + 1, 0, ...old.map((feature) => feature + 1));
  const script = ({ usual = { required: NONE, features: [] }, languages }) =>
    table(language(usual), languages.length, ...languages.flatMap(({ tag: name, value }) => [name, language(value)]));
  const head = 2 + 2 * (first + own.length);
  let end = head + lookups.bytes.length;
  const places = own.map((bytes) => {
    end += bytes.length;
    return end - bytes.length;
  });
  return table(
    1,
    0,
    table(scripts.length, ...scripts.flatMap(({ tag: name, value }) => [name, script(value)])),
    table(
      features.length + 1,
      ...[OWN, table(0, 2, first, first + 1)],
      ...features.flatMap(({ tag: name, value }) => [name, table(0, value.length, ...value)]),
    ),
    [
      ...[first + own.length, ...lookups.places.map((place) => head + place), ...places].flatMap(word),
      ...lookups.bytes,
      ...own.flat(),
    ],
  );
}

/** @param {Buffer} face a TrueType face @returns {Buffer} the same with an O in the names of scales; its checksums are for whoever packs it. */
export function withPlainScaleNames(face) {
  const count = face.readUInt16BE(4);
  const tables = Array.from({ length: count }, (_, index) => {
    const record = 12 + 16 * index;
    const from = face.readUInt32BE(record + 8);
    const name = face.toString('latin1', record, record + 4);
    const bytes = face.subarray(from, from + face.readUInt32BE(record + 12));
    return { name, bytes: name === 'GSUB' ? Buffer.from(withOwn(create(face), bytes)) : bytes };
  });
  let at = 12 + 16 * count;
  const directory = tables.flatMap(({ name, bytes }) => {
    const record = [...tag(name), ...long(0), ...long(at), ...long(bytes.length)];
    at += Math.ceil(bytes.length / 4) * 4;
    return record;
  });
  const bodies = tables.map(({ bytes }) => Buffer.concat([bytes], Math.ceil(bytes.length / 4) * 4));
  return Buffer.concat([face.subarray(0, 12), Buffer.from(directory), ...bodies]);
}
