// The page of sources tells every fixed number of the engine and the wizards: none without its source, none in a unit that is not its own.
import { globSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { constants, namedIn, states } from '../../scripts/build/constants.mjs';
import { type Constant, sourcesOf, toldOf } from '../../src/components/words/constants.ts';

const ALL: readonly Constant[] = constants();
const SOURCES = new Map<string, { address?: string; sure: string; kind: string }>(
  globSync('src/content/en/sources/*.yaml').map((file) => [
    file.replaceAll('\\', '/').replace(/.*\/|\.yaml$/g, ''),
    parse(readFileSync(file, 'utf8')),
  ]),
);
const named = (file: string, name: string): string => {
  const constant = ALL.find((one) => one.file === `src/${file}.ts` && one.name === name);
  if (constant === undefined) throw new Error(`${file} has no ${name}`);
  return toldOf(constant, 'en')
    .lines.map(({ of, value }) => (of === '' ? value : `${of}: ${value}`))
    .join('; ');
};

describe('Every fixed number', () => {
  test('of power, wires, crossings, signal, figures and diagnosis is found', () => {
    expect(ALL.length).toBeGreaterThan(250);
    for (const room of ['power', 'wiring', 'circuit', 'crossing', 'signal', 'table', 'drive', 'diagnosis', 'course'])
      expect(
        ALL.filter(({ file }) => file.startsWith(`src/engine/${room}/`)),
        room,
      ).not.toEqual([]);
  });

  test('names a source that is in the list of sources', () => {
    const lacking = ALL.filter(({ comment }) => {
      const sources = sourcesOf(comment);
      return sources.length === 0 || sources.some((source) => !SOURCES.has(source));
    });
    expect(lacking.map(({ file, name, comment }) => `${file} ${name}: ${comment}`)).toEqual([]);
  });

  test('says what it is, and its value', () => {
    const told = ALL.map((one) => toldOf(one, 'en'));
    expect(told.filter(({ says, lines }) => says.length < 10 || lines.length === 0).map(({ id }) => id)).toEqual([]);
    expect(new Set(told.map(({ id }) => id)).size).toBe(told.length);
  });
});

describe('A number on the page', () => {
  test('is in the unit that its comment says', () => {
    expect(named('engine/wiring/wire', 'COPPER')).toBe('0.01724 Ω mm²/m');
    expect(named('engine/crossing/sides', 'LINK_FARADS')).toBe('2.2 mF');
    expect(named('engine/wiring/breakers', 'BREAKER_TIME')).toBe('5 – 30 ms');
    expect(named('engine/wiring/short-test', 'TEST_RESISTOR')).toBe('ohms: 15 Ω; rating: 50 W');
    expect(named('engine/crossing/expected', 'FULL_SIZE')).toBe('pick up span: 10.5 m; speed: 4.444 – 44.44 m/s');
  });

  test('has none where it is a share of what has one', () => {
    expect(named('engine/wiring/limits', 'DROP_WANTED')).toBe('0.05');
    expect(named('engine/table/moment', 'BROWN_OUT')).toBe('0.55');
    expect(named('engine/table/protection', 'HEAT')).toBe('seconds: 600 s; back: 0.6');
    expect(named('engine/power/rail-voltage', 'LOADED_FACTOR')).toBe('1.22 – 1.335');
  });

  test('of a table stands at its part', () => {
    expect(named('engine/power/draws', 'COACH_DRAWS')).toBe('filament: 0.05 – 0.2 A; led: 5 – 30 mA');
    expect(named('engine/wiring/wire', 'WIRE_TABLE')).toContain('solid: 36 Ω/km, 24.5 Ω/km');
  });
});

describe('What is read off the code', () => {
  test('shares a comment only with the line right below', () => {
    const code = '/** Share. Source: a-b. */\nconst ONE = 2;\nconst TWO = 3;\n\nconst THREE = 4;\n';
    expect(namedIn(code)).toEqual([
      { name: 'ONE', comment: 'Share. Source: a-b.' },
      { name: 'TWO', comment: 'Share. Source: a-b.' },
      { name: 'THREE', comment: '' },
    ]);
  });

  test('leaves out what states nothing: none, one, and a word', () => {
    expect([0, 1, -1, Number.NaN, 'word', { a: 0 }].map(states)).toEqual([false, false, false, false, false, false]);
    expect([0.5, { a: { b: 3 } }, [1, 2]].map(states)).toEqual([true, true, true]);
  });
});

describe('A source', () => {
  test('is not linked where it is a copy that others have put up', () => {
    const copies = /scribd|studylib|docplayer|pdfcoffee|vdoc|epdf|academia|readthedocs\.io\/en\/latest\/S-/;
    expect([...SOURCES].filter(([, { address }]) => copies.test(address ?? '')).map(([id]) => id)).toEqual([]);
  });

  test('of our own is sure in a way of its own: nobody has read it anywhere', () => {
    const read = new Set(['high', 'medium', 'low']);
    const own = [...SOURCES].filter(([, { kind }]) => ['practice', 'memory', 'derived', 'choice'].includes(kind));
    expect(own.map(([, { sure }]) => sure).filter((sure) => read.has(sure))).toEqual([]);
  });
});
