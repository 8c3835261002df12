import { expect, test } from 'vitest';
import { Listener } from '../../src/wizards/hearing/index.ts';

const listener = new Listener([
  { check: 'weather', option: 'cold', lines: { en: ['every winter the siding is dead'] } },
  { check: 'how-driven', option: 'radio', lines: { en: ['wireless throttles'] } },
]);
const unheard = (text: string): boolean => listener.isUnheard(text, listener.hear(text));

test('whoever writes a sentence of which nothing is known is told so', () => {
  expect(unheard('One boxcar makes the breaker click')).toBe(true);
});

test('whoever only begins to write is not', () => {
  expect(['', ' ', 'My', 'My boxcar'].map(unheard)).toEqual([false, false, false, false]);
});

test('nor is anybody of whom something was heard', () => {
  expect(unheard('Well, every winter the siding is dead')).toBe(false);
});
