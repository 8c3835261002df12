// What is shipped carries its notice: MIT, ISC and OFL ask for it.
import { readFileSync } from 'node:fs';
import { parse } from 'node-html-parser';
import { expect, test } from 'vitest';

const SITE = process.env.SITE_FOLDER ?? 'dist';
const page = parse(readFileSync(`${SITE}/en/licences/index.html`, 'utf8'));
const listed = page.querySelectorAll('main details').map((one) => ({
  name: one.querySelector('summary')?.text ?? '',
  text: one.querySelector('pre')?.text ?? '',
}));

test('whatever runs or prints on a page is listed with its version and licence', () => {
  const names = listed.map(({ name }) => name);
  // What draws the pages, what keeps the flow of the questions, what finds, what unpacks the copy, and the three faces.
  for (const one of [
    'preact',
    'astro',
    'xstate',
    'minisearch',
    'fzstd',
    '@fontsource/besley',
    '@fontsource/noto-sans-math',
  ])
    expect(
      names.filter((name) => name.startsWith(`${one} `)),
      one,
    ).toHaveLength(1);
  for (const name of names)
    expect(name).toMatch(/^(?:Both Rails|\S+) \d+\.\d+\.\d+ · (?:MIT|ISC|OFL-1\.1|Apache-2\.0|BSD-[23]-Clause)$/);
});

test('each licence stands there in full, with whose work it is', () => {
  for (const { name, text } of listed) {
    expect(text, name).toMatch(/copyright/i);
    expect(text, name).toMatch(/without warranty|"as is"|disclaims all warranties/i);
  }
});

test('a sentence of a licence runs on where it was broken for a narrow page', () => {
  for (const { name, text } of listed) expect(text, name).not.toMatch(/[a-z][^\n]{60,}[a-z,]\n[a-z]/);
});

test('every face that the site depends on is among them', () => {
  const { dependencies }: { dependencies: Record<string, string> } = JSON.parse(readFileSync('package.json', 'utf8'));
  const shipped = new Set(listed.map(({ name }) => name.split(' ')[0]));
  for (const one of Object.keys(dependencies).filter((name) => name.startsWith('@fontsource/')))
    expect(shipped.has(one), one).toBe(true);
});
