// What src lets out and nobody in src calls: found by knip, said in sentences. What a later letter needs stays: its declaration
// carries `@keptFor <letter> <what for>`, and the list of what is kept, and for whom, is part of the answer.
// `node scripts/check/unused.mjs` prints both.
import { spawnSync } from 'node:child_process';
import { globSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { ROOT } from '../machine.mjs';

const KNIP = join(ROOT, 'node_modules/knip/bin/knip.js');
const TAG = 'keptFor';

/** What knip says of the project below `root`, whose knip.json says where its pages begin. */
function knip(root) {
  const args = [KNIP, '--production', '--include', 'files,exports,types', '--reporter', 'json', '--no-exit-code'];
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8' });
  if (status !== 0 || !stdout.startsWith('{')) throw new Error(`knip did not look: ${stderr || stdout}`);
  return JSON.parse(stdout).issues;
}

/** What a whole file is kept for, where its comments say so. */
const keptWhole = (root, file) => readFileSync(join(root, file), 'utf8').match(/@keptFor (.*?)(?: \*\/)?$/m)?.[1];

/** The exports of a file that carry the tag, with what they are kept for. */
function keptIn(root, file) {
  const source = ts.createSourceFile(file, readFileSync(join(root, file), 'utf8'), ts.ScriptTarget.Latest, true);
  return source.statements.flatMap((statement) => {
    const tag = ts.getJSDocTags(statement).find(({ tagName }) => tagName.text === TAG);
    if (tag === undefined) return [];
    const named = ts.isVariableStatement(statement) ? statement.declarationList.declarations : [statement];
    const reason = (ts.getTextOfJSDocComment(tag.comment) ?? '').replace(/\s+/g, ' ').trim();
    return named.map(({ name }) => ({ file, name: name?.text ?? '', reason }));
  });
}

const holdsTag = (root, file) => readFileSync(join(root, file), 'utf8').includes(`@${TAG}`);
const isDoor = (file) => basename(file) === 'index.ts';
const isReason = (reason) => /^[A-Z] \S/.test(reason);

const nobodyCalls = ({ file, name }) => `${file} lets out \`${name}\`, which nobody in src calls.`;
const nobodyReads = (file) => `${file} is a file that nobody in src reads.`;
const noReason = ({ file, name }) =>
  `${file} keeps \`${name}\` and does not say for which letter and what: @${TAG} E meter readings.`;
const isCalled = ({ file, name }) => `${file} keeps \`${name}\` for later, yet it is called: take @${TAG} away.`;

/**
 * Every file and export of `root`/src that nobody in src uses, as a sentence, and what is kept for a later letter.
 * @param {string} [root]
 * @returns {{ looked: number, sentences: string[], kept: string[] }}
 */
export function unused(root = ROOT) {
  const files = globSync('src/**/*.{ts,tsx}', { cwd: root }).map((file) => file.replaceAll('\\', '/'));
  const kept = files.filter((file) => holdsTag(root, file)).flatMap((file) => keptIn(root, file));
  const issues = knip(root);
  const unread = issues.filter(({ files: whole = [] }) => whole.length > 0).map(({ file }) => file);
  const uncalled = issues.flatMap(({ file, exports = [], types = [] }) =>
    [...exports, ...types].map(({ name }) => ({ file, name })),
  );
  const isKept = ({ file, name }) => kept.some((one) => one.name === name && (one.file === file || isDoor(file)));
  const isStale = ({ file, name }) => !(unread.includes(file) || uncalled.some((one) => one.name === name));
  const sentences = [
    ...unread.filter((file) => keptWhole(root, file) === undefined).map(nobodyReads),
    ...uncalled.filter((one) => !isKept(one)).map(nobodyCalls),
    ...kept.filter(({ reason }) => !isReason(reason)).map(noReason),
    ...kept.filter(isStale).map(isCalled),
  ];
  return {
    looked: files.length,
    sentences: sentences.sort(),
    kept: [
      ...kept.map(({ file, name, reason }) => `${reason}: ${name} (${file})`),
      ...unread.flatMap((file) => (keptWhole(root, file) === undefined ? [] : [`${keptWhole(root, file)}: ${file}`])),
    ].sort(),
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { looked, sentences, kept } = unused();
  console.log(`${looked} files of src looked at`);
  for (const sentence of sentences) console.log(sentence);
  console.log(`${kept.length} kept for a later letter`);
  for (const one of kept) console.log(`  ${one}`);
  process.exitCode = sentences.length > 0 ? 1 : 0;
}
