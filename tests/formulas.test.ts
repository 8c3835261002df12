// "The engine computes, the page never does": what components, layouts and pages reckon with quantities is drawing, line by line.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { formulas } from '../scripts/check/formulas.mjs';

/** Places in a picture, ends of a slider, and how a number is written. Nothing here decides what is told. */
const DRAWING: Readonly<Record<string, readonly string[]>> = {
  'src/components/figures/gap-scope/GapScope.tsx': ['Math.abs(volts)', 'PER_VOLT * volts'],
  'src/components/figures/shared/Along.tsx': ['Math.max(0, share)'],
  'src/components/figures/shared/AlongCharts.tsx': ['Math.min(along.worst.volts, least)', 'MOST_TRIPS * trip'],
  'src/components/figures/shared/Histogram.tsx': ['(hard ?? 0) * 1.08', '100 * amps', 'HEIGHT * bar.probability'],
  'src/components/figures/train-across/TrainAcross.tsx': [
    '2.2 * amps',
    'Math.max(push.limit, ...rows.map(([, amps]) => amps))',
    '100 * amps',
    '100 * push.limit',
  ],
  'src/components/figures/who-opens/WhoOpens.tsx': ['100 * amps', '100 * trip'],
  'src/components/planning/enough-current/WhatIf.tsx': ['Math.max(10, power?.supply.amps ?? 0)'],
  'src/components/check-picture/CheckPicture.tsx': ['(to - from - step) / step', '(count - 1) * step', 'step * place'],
  'src/components/walk/Possible.tsx': ['100 * chance'],
};

test('no component, layout or page has a formula, a border or a constant of the engine', () => {
  const { looked, found } = formulas();
  expect(looked).toBeGreaterThan(80);
  const known = Object.entries(DRAWING).flatMap(([file, all]) => all.map((one) => `${file}: ${one}`));
  expect(found.filter((one) => !known.includes(one))).toEqual([]);
  expect(known.filter((one) => !found.includes(one))).toEqual([]);
});

const root = mkdtempSync(join(tmpdir(), 'formulas-'));
afterAll(() => rmSync(root, { recursive: true }));

function write(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
}

test('it would notice the formulas that stood there once, in scripts and in pages', () => {
  write('src/engine/limits.ts', 'export const DROP_WANTED = 0.05;\n');
  write('src/components/Chart.tsx', 'const level = (volts: number) => volts * (1 - 0.05);\nconst STAGE_OHMS = 0.2;\n');
  write('src/components/Say.tsx', "export const far = (p: { spells: number }) => (p.spells >= 0.05 ? 'told' : '');\n");
  write('src/components/Again.tsx', 'const DROP_WANTED = 0.05;\nexport const twice = DROP_WANTED;\n');
  write(
    'src/pages/[complaint].astro',
    "---\nconst often = (share: number) => (share >= 0.1 ? 'common' : 'rare');\n---\n<p>{one.amps / 2}</p>\n",
  );
  write(
    'src/components/Fine.tsx',
    'export const text = (amps: number, n: number) => (n > 1 ? String(amps) : n * 2);\n',
  );
  expect(formulas(root).found).toEqual([
    'src/components/Again.tsx: DROP_WANTED = 0.05',
    'src/components/Chart.tsx: volts * (1 - 0.05)',
    'src/components/Chart.tsx: STAGE_OHMS = 0.2',
    'src/components/Say.tsx: p.spells >= 0.05',
    'src/pages/[complaint].astro: share >= 0.1',
    'src/pages/[complaint].astro: one.amps / 2',
  ]);
});

describe('it knows', () => {
  test.each(['+', '-', '*', '/', '%', '**', '<', '<=', '>', '>='])('%s, on either side of a quantity', (operator) => {
    const all = [`volts ${operator} 12`, `12 ${operator} volts`];
    const made = join('each', String(operator.codePointAt(0)), String(operator.length));
    write(`${made}/src/components/One.tsx`, `const volts = 16;\nexport const all = [${all.join(', ')}];\n`);
    expect(formulas(join(root, made)).found).toEqual(all.map((one) => `src/components/One.tsx: ${one}`));
  });
});
