// Lengths and wires in the content are placeholders, so that they follow the person's units: none stands there as plain text.

import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CONTENT, LANGUAGES } from './folder.ts';

/** Numbers with a unit of length or area, and gauges. */
const MEASURE =
  /\d\s?(?:m|cm|mm|km|mm²|ft)(?![\w²])|\d\sin(?=[.,;:)”]|$)|\bAWG\s\d|\d\s?AWG|mm²|(?<![\w-])(?:milli|centi|kilo)?metres?\b|\b(?:feet|foot|inch|inches)\b(?!-)/g;

/** What follows the units already. */
const FOLLOWS = /\{(?:m|cm|mm|mm2):[^{}]*\}|\{either:[^{}]*\}/g;

/** Plain measures that stay, each with its reason. */
const STAYS: readonly (readonly [where: RegExp, what: RegExp])[] = [
  // What a source says stands as it was read there, and so does the name of a standard.
  [/^sources\//, /./],
  // How to type or read a number: both systems stand side by side on purpose.
  [/^questions\//, /6 m(?:, 600 cm)? or 20 ft|30 cm, 0\.3 m or 1 ft|0\.5 mm² or 20 AWG|1\.5 mm² or 16 AWG/],
  [/^fixes\/wiring-not-known/, /mm² or AWG/],
  [/^fixes\/thicker-bus/, /square millimetres \(mm²\)|(?:16|14|12) AWG (?:is )?about [\d.]+ mm²/],
  [/^glossary\/cross-section/, /square millimetres \(mm²\)/],
  // The rail code counts thousandths of an inch everywhere.
  [/^(?:glossary|questions)\/rail-(?:code|kind)/, /thousandths of an inch/],
  // The names of the two systems.
  [/^words\/(?:frame|questions|privacy)/, /^(?:units|taken-as|stored-units)-/],
  // Sayings: no length is meant.
  [/^words\/(?:home|entry)/, /Enough power on every metre of track/],
  [/^(?:lessons|fixes)\//, /[Nn]ot (?:the )?metres|A metre of rail is worth several of wire/],
];

/** Words people search by, ids and addresses are not read as lengths. */
const NOT_SHOWN =
  /^\s*#|^\s+- [^:{]*$|^(?:sources|order|standard|picture|figure|drawing):|^<Caution|^\s*(?:input|output)-[a-z-]*metres/;

function plainMeasures(file: string, text: string): string[] {
  const reasons = STAYS.filter(([where]) => where.test(file)).map(([, what]) => what);
  return text.split('\n').flatMap((line) => {
    if (NOT_SHOWN.test(line) && !/^\s+- (?:"|[A-Z])/.test(line)) return [];
    if (reasons.some((what) => what.source === '.' || (what.source.startsWith('^') && what.test(line)))) return [];
    const rest = reasons.reduce(
      (left, what) => left.replaceAll(new RegExp(what, 'g'), ''),
      line.replaceAll(FOLLOWS, ''),
    );
    return [...rest.replaceAll(/\{[\w-]+(?::[^{}]*)?\}/g, '').matchAll(MEASURE)].map(
      ([found]) => `${file}: “${found}” in ${line.trim()}`,
    );
  });
}

describe.each(LANGUAGES)('%s: no length and no wire stands as plain text', (language) => {
  const files = globSync('**/*.{yaml,mdx}', { cwd: join(CONTENT, language) }).map((file) => file.replaceAll('\\', '/'));
  const rooms = [...new Set(files.map((file) => file.split('/')[0] ?? ''))];
  test.each(rooms)('%s', (room) => {
    const found = files
      .filter((file) => file.startsWith(`${room}/`))
      .flatMap((file) => plainMeasures(file, readFileSync(join(CONTENT, language, file), 'utf8')));
    expect(found).toEqual([]);
  });
});

describe('the look-out', () => {
  test.each([
    'lead: Lay 10 m of it.',
    '  - Clean about 30 cm of it.',
    'needs: Wire of 0.5 mm² in two colours',
    'needs: Wire of 20 AWG',
    'why: Every metre counts.',
    '  - do: Move it by half a millimetre.',
    'A gap of an inch.',
  ])('notices %j', (line) => expect(plainMeasures('fixes/made-up.mdx', line)).not.toEqual([]));

  test.each(['lead: At 10 V and 2 A.', 'needs: Wire of {mm2:0.5 or-thicker}', 'in H0 (1:87) at 15 V'])(
    'lets %j pass',
    (line) => expect(plainMeasures('fixes/made-up.mdx', line)).toEqual([]),
  );
});
