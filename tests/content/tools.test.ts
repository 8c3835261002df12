// What a question tells to take stands in the list of what people have at hand, and is asked of nobody who has not ticked it.
import { expect, test } from 'vitest';
import type { Tool } from '../../src/engine/index.ts';
import { TOOLS } from '../../src/engine/index.ts';
import { rowOfCheck } from '../../src/wizards/put-it-right/index.ts';
import { stepOf } from '../../src/wizards/put-it-right/step.ts';
import { wordsOf } from './folder.ts';

/** Words of a question, and what must be at hand for it; a sentence that says "if you have" asks for nothing. */
const NAMED: readonly (readonly [RegExp, Tool])[] = [
  [/\bresistor of 15 ohms\b|\bThe resistor: 15 ohms\b/, 'resistor'],
  [/\blamps? of 24 V and 21 W\b|\bthe strong lamp\b/i, 'strong-lamp'],
  [/\blamps? of 3 to 5 W\b|\b24 V lamp of 3 to 5 W\b|\blamps of 24 V and 3 to 5 W\b/, 'lamps'],
  [/\bclip (?:the|a) wire\b|\bclip the first wire\b|\bclip both thick wires\b/i, 'wire'],
  [/\bvolts [ad]\.c\.(?=,|:| to the rails)|\bmeter on (?:volts|ohms)\b/i, 'multimeter'],
  [/\bpress it on both rails\b/i, 'coin'],
];
const OR_ELSE =
  /\band you have\b|\bif you have\b|\bor watch\b|\bOr with the meter\b|\bwith a meter\b|\bwithout power, with the meter\b/i;

const CHECKS = wordsOf('en', 'checks').map(({ id, data }) => ({
  id,
  says: [data['title'], ...[data['how']].flat()].map(String).filter((line) => !OR_ELSE.test(line)),
}));

const needed = (says: readonly string[]): Tool[] =>
  NAMED.flatMap(([words, tool]) => (says.some((line) => words.test(line)) ? [tool] : []));

test('the words of questions are read: many name something to take', () => {
  expect(CHECKS.flatMap(({ says }) => needed(says)).length).toBeGreaterThan(15);
});

test.each(CHECKS)('$id asks for nothing that its row does not name', ({ id, says }) => {
  const row = rowOfCheck(id);
  const named = [row?.tool, ...(row?.also ?? [])];
  expect(needed(says).filter((tool) => !named.includes(tool))).toEqual([]);
});

test('whoever ticked a multimeter alone is asked for no lamp and no resistor', () => {
  const answers = [{ check: 'danger-now', option: 'none' }];
  const known = {
    complaint: 'slow-far-away',
    answers,
    skipped: [],
    tried: [],
    trusted: new Set(['danger-now']),
  } as const;
  const asked = (tools: readonly Tool[]): string[] => {
    const all: string[] = [];
    for (let step = stepOf({ ...known, tools }); step.kind === 'ask' && all.length < 12; ) {
      all.push(step.check);
      step = stepOf({ ...known, tools, skipped: all });
    }
    return all;
  };
  const also = (check: string): readonly Tool[] => rowOfCheck(check)?.also ?? [];
  expect(asked(['multimeter']).flatMap(also)).toEqual([]);
  expect(asked(TOOLS).flatMap(also)).not.toEqual([]);
});

test('every one of them has a name to tick', () => {
  const words = Object.assign({}, ...wordsOf('en', 'words').map(({ data }) => data));
  expect(TOOLS.filter((tool) => words[`tool-${tool}`] === undefined)).toEqual([]);
});
