// The zero of the text face has a stroke across it. In the name of a scale ("H0", "00") it reads as another letter, and alone as a sign. The
// face has no other zero, so its own is drawn without the stroke: the two openings beside it are joined to one.
import { create } from 'fontkitten';

/** Bits of a point's flag (OpenType, "glyf"). */
const ON_CURVE = 0x01;
const SHORT = { x: 0x02, y: 0x04 };
const SAME = { x: 0x10, y: 0x20 };
const REPEAT = 0x08;
/** A glyph's first 10 bytes: how many contours, and the box around them. */
const HEAD = 10;

/** @typedef {{ x: number, y: number, on: boolean }} Point */

/** Tables of a TrueType face by name. @param {Buffer} face */
function tablesOf(face) {
  return Array.from({ length: face.readUInt16BE(4) }, (_, index) => {
    const record = 12 + 16 * index;
    const from = face.readUInt32BE(record + 8);
    return {
      name: face.toString('latin1', record, record + 4),
      bytes: face.subarray(from, from + face.readUInt32BE(record + 12)),
    };
  });
}

/** A face of these tables; its checksums are for whoever packs it. */
function faceOf(head, tables) {
  let at = 12 + 16 * tables.length;
  const directory = tables.map(({ name, bytes }) => {
    const record = Buffer.alloc(16);
    record.write(name, 'latin1');
    record.writeUInt32BE(at, 8);
    record.writeUInt32BE(bytes.length, 12);
    at += Math.ceil(bytes.length / 4) * 4;
    return record;
  });
  const bodies = tables.map(({ bytes }) => Buffer.concat([bytes], Math.ceil(bytes.length / 4) * 4));
  return Buffer.concat([head, ...directory, ...bodies]);
}

/** Where each glyph begins in "glyf", and where the last ends. */
function placesOf(loca, isLong) {
  return Array.from({ length: loca.length / (isLong ? 4 : 2) }, (_, index) =>
    isLong ? loca.readUInt32BE(4 * index) : 2 * loca.readUInt16BE(2 * index),
  );
}

/** The contours of a glyph that is no composite. @param {Buffer} glyph @returns {Point[][]} */
function contoursOf(glyph) {
  const ends = Array.from({ length: glyph.readInt16BE(0) }, (_, index) => glyph.readUInt16BE(HEAD + 2 * index));
  const count = (ends.at(-1) ?? -1) + 1;
  let at = HEAD + 2 * ends.length;
  at += 2 + glyph.readUInt16BE(at);
  const flags = [];
  while (flags.length < count) {
    const flag = glyph[at++];
    const times = flag & REPEAT ? 1 + glyph[at++] : 1;
    for (let i = 0; i < times; i++) flags.push(flag);
  }
  const along = (axis) => {
    let value = 0;
    return flags.map((flag) => {
      if (flag & SHORT[axis]) value += flag & SAME[axis] ? glyph[at++] : -glyph[at++];
      else if (!(flag & SAME[axis])) {
        value += glyph.readInt16BE(at);
        at += 2;
      }
      return value;
    });
  };
  const [xs, ys] = [along('x'), along('y')];
  const points = flags.map((flag, i) => ({ x: xs[i], y: ys[i], on: (flag & ON_CURVE) !== 0 }));
  return ends.map((end, i) => points.slice(i === 0 ? 0 : ends[i - 1] + 1, end + 1));
}

/** A glyph of these contours within the box of the one that it replaces. */
function glyphOf(box, contours) {
  const points = contours.flat();
  let last = -1;
  const ends = contours.map((contour) => {
    last += contour.length;
    return last;
  });
  const words = (numbers) => {
    const bytes = Buffer.alloc(2 * numbers.length);
    numbers.forEach((number, i) => {
      bytes.writeInt16BE(number, 2 * i);
    });
    return bytes;
  };
  const steps = (axis) => points.map((point, i) => point[axis] - (points[i - 1]?.[axis] ?? 0));
  return Buffer.concat([
    words([contours.length]),
    box,
    words([...ends, 0]),
    Buffer.from(points.map(({ on }) => (on ? ON_CURVE : 0))),
    words(steps('x')),
    words(steps('y')),
  ]);
}

const area = (contour) =>
  contour.reduce((sum, { x, y }, i) => {
    const next = contour[(i + 1) % contour.length];
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);

/** A contour from behind its longest straight edge on: that is the stroke's. @param {Point[]} contour */
function fromTheStroke(contour) {
  const lengths = contour.map((point, i) => {
    const next = contour[(i + 1) % contour.length];
    return point.on && next.on ? Math.hypot(next.x - point.x, next.y - point.y) : 0;
  });
  const longest = lengths.indexOf(Math.max(...lengths));
  if (lengths[longest] === 0) throw new Error('plain-zero: no straight edge, so no stroke');
  return contour.map((_, i) => contour[(longest + 1 + i) % contour.length]);
}

/** Without its stroke. @param {Point[][]} contours */
function withoutStroke(contours) {
  const [outer, ...openings] = contours.toSorted((one, other) => Math.abs(area(other)) - Math.abs(area(one)));
  if (openings.length !== 2) throw new Error(`plain-zero: ${openings.length} openings, not the two beside a stroke`);
  return [outer, openings.flatMap(fromTheStroke)];
}

/** The glyphs that a coverage table lists, in order. */
function covered(gsub, at) {
  const count = gsub.readUInt16BE(at + 2);
  if (gsub.readUInt16BE(at) === 1) return Array.from({ length: count }, (_, i) => gsub.readUInt16BE(at + 4 + 2 * i));
  return Array.from({ length: count }, (_, i) => {
    const [first, last] = [gsub.readUInt16BE(at + 4 + 6 * i), gsub.readUInt16BE(at + 6 + 6 * i)];
    return Array.from({ length: last - first + 1 }, (_one, j) => first + j);
  }).flat();
}

/** What single substitutions (the digits of equal width) put in the place of a glyph. */
function substitutesOf(gsub, glyph) {
  const word = (place) => gsub.readUInt16BE(place);
  const lookups = word(8);
  return Array.from({ length: word(lookups) }, (_, i) => lookups + word(lookups + 2 + 2 * i))
    .filter((lookup) => word(lookup) === 1)
    .flatMap((lookup) => Array.from({ length: word(lookup + 4) }, (_, i) => lookup + word(lookup + 6 + 2 * i)))
    .flatMap((subtable) => {
      const at = covered(gsub, subtable + word(subtable + 2)).indexOf(glyph);
      if (at < 0) return [];
      return [word(subtable) === 1 ? (glyph + gsub.readInt16BE(subtable + 4)) & 0xffff : word(subtable + 6 + 2 * at)];
    });
}

/** How many contours each zero of a face has. @param {Buffer} face */
export function zeroContours(face) {
  const { zeros, glyphs } = opened(face);
  return zeros.map((id) => glyphs[id].readInt16BE(0));
}

function opened(face) {
  const tables = tablesOf(face);
  const table = (name) => tables.find((one) => one.name === name)?.bytes ?? Buffer.alloc(0);
  const places = placesOf(table('loca'), table('head').readInt16BE(50) === 1);
  const glyphs = places.slice(1).map((end, id) => table('glyf').subarray(places[id], end));
  const zero = create(face).glyphForCodePoint('0'.codePointAt(0)).id;
  // A composite, as the zero of equal width is, is drawn by its first part.
  const drawnBy = (id) => (glyphs[id].readInt16BE(0) < 0 ? glyphs[id].readUInt16BE(HEAD + 2) : id);
  const zeros = [...new Set([zero, ...substitutesOf(table('GSUB'), zero)].map(drawnBy))];
  return { tables, glyphs, zeros };
}

/** @param {Buffer} face a TrueType face whose zeros have a stroke @returns {Buffer} the same without */
export function withPlainZero(face) {
  const { tables, glyphs, zeros } = opened(face);
  const plain = glyphs.map((glyph, id) => {
    const drawn = zeros.includes(id) ? glyphOf(glyph.subarray(2, HEAD), withoutStroke(contoursOf(glyph))) : glyph;
    return Buffer.concat([drawn], Math.ceil(drawn.length / 4) * 4);
  });
  const loca = Buffer.alloc(4 * (plain.length + 1));
  plain.reduce((at, glyph, id) => loca.writeUInt32BE(at + glyph.length, 4 * (id + 1)) && at + glyph.length, 0);
  const changed = { glyf: Buffer.concat(plain), loca, head: withLongPlaces(tables) };
  return faceOf(
    face.subarray(0, 12),
    tables.map(({ name, bytes }) => ({ name, bytes: changed[name] ?? bytes })),
  );
}

/** The "head" of a face whose "loca" counts single bytes. */
function withLongPlaces(tables) {
  const head = Buffer.from(tables.find(({ name }) => name === 'head').bytes);
  head.writeInt16BE(1, 50);
  return head;
}
