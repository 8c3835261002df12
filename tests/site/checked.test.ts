// The page “How this was checked”: its counts as a language writes them.
import { readFileSync } from 'node:fs';
import { parse } from 'node-html-parser';
import { expect, test } from 'vitest';
import { CHECKED } from '../../src/layouts/checked.ts';

test('counts of tests have their mark between thousands', () => {
  const passed = CHECKED.parts.reduce((sum, part) => sum + part.passed, 0);
  expect(passed).toBeGreaterThan(1000);
  const page = parse(readFileSync('dist/en/checked/index.html', 'utf8'));
  const told = page.querySelector('main')?.text ?? '';
  expect(told).toContain(`${new Intl.NumberFormat('en-GB').format(passed)} tests passed`);
  for (const part of CHECKED.parts)
    expect(told).toContain(`${new Intl.NumberFormat('en-GB').format(part.passed)} passed`);
});
