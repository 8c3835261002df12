// The contributors' page of causes, as it was built.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'node-html-parser';
import { expect, test } from 'vitest';
import { causeLines, describedCauses } from '../../src/wizards/put-it-right/index.ts';

test('the page of all causes shows for each what the command prints', () => {
  const page = parse(readFileSync(join(import.meta.dirname, '../../dist/en/contributors/causes/index.html'), 'utf8'));
  for (const cause of describedCauses()) {
    const shown = page.getElementById(cause.id)?.text;
    expect(shown, cause.id).toBe(causeLines(cause).join('\n'));
  }
});
