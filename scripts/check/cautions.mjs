// How much of a fix is caution: words of cautions to words of steps over all fixes, and the most boxes told in full on a page. Counted as
// a page shows them: danger to life and injury in full at each step that brings it, damage in full once and in one line after that.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { formsOf } from '../../src/components/fix/forms.ts';
import { dangersOf, rankOf } from '../../src/wizards/safety/index.ts';
import { ROOT } from '../machine.mjs';

const CONTENT = join(ROOT, 'src/content/en');
const headOf = (text) => parse(/^---\n([\s\S]*?)\n---\n/.exec(text)?.[1] ?? text);
const read = (folder) =>
  readdirSync(join(CONTENT, folder)).map((name) => [
    name.replace(/\.\w+$/, ''),
    headOf(readFileSync(join(CONTENT, folder, name), 'utf8')),
  ]);
const wordsIn = (...texts) => texts.filter(Boolean).join(' ').split(/\s+/).filter(Boolean).length;

/** Words of a page's steps and of its cautions, and how many of these stand in full. */
function pageOf([id, { steps, urgent = false }], cautions, ranks) {
  const told = steps.map(({ acts = [], cautions: named = [] }) => ({ cautions: dangersOf(acts, named) }));
  const before = urgent
    ? []
    : [...new Set(told.flatMap((step) => step.cautions))].filter((one) => cautions[one].before);
  const shown = formsOf(told, cautions).flatMap((step) => Object.entries(step));
  const full = shown.filter(([, form]) => form === 'whole');
  const lines = shown.filter((one) => !full.includes(one));
  return {
    id,
    steps: steps.reduce((sum, step) => sum + wordsIn(step.do, step.more), 0),
    cautions:
      before.reduce((sum, one) => sum + wordsIn(cautions[one].before), 0) +
      full.reduce(
        (sum, [one]) => sum + wordsIn(ranks[`rank-${rankOf(one)}`], cautions[one].harm, cautions[one].do),
        0,
      ) +
      lines.reduce((sum, [one]) => sum + wordsIn(cautions[one].line), 0),
    full: full.length,
  };
}

/** @returns what is told of all fixes together, and page by page, the fullest first */
export function cautionsTold() {
  const cautions = Object.fromEntries(
    read('cautions').map(([id, words]) => [id, { ...words, rank: rankOf(id), wide: words.before !== undefined }]),
  );
  const ranks = headOf(readFileSync(join(CONTENT, 'words/asking.yaml'), 'utf8'));
  const pages = read('fixes').map((fix) => pageOf(fix, cautions, ranks));
  const sum = (what) => pages.reduce((all, page) => all + page[what], 0);
  return {
    steps: sum('steps'),
    cautions: sum('cautions'),
    ratio: sum('cautions') / sum('steps'),
    pages: pages.sort((one, two) => two.full - one.full),
  };
}
