// Every fixed number of the engine and of the wizards, read off the code: its name, its value, and what its comment says of it.
// `node scripts/build/constants.mjs` prints them. The page of sources is made of them, and a test reads each.
import { execFileSync } from 'node:child_process';
import { globSync, readFileSync } from 'node:fs';
import { registerHooks } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = new URL('../../', import.meta.url);
const FILES = ['src/engine/**/*.ts', 'src/wizards/**/*.ts'];
/**
 * The model of causes has pages of its own, each check with its source; how links are packed and where lines are drawn says nothing of
 * railways; layouts that one begins with are nobody's, and the ranges of a table are those of the shape of a sheet, which its schema tells.
 */
const ELSEWHERE =
  /wizards\/(put-it-right\/model|short-links|sheet-drawing)\/|wizards\/sheet\/(demo|shapes|columns)\.ts$/;

/** A constant at the left edge, written in capitals, with the comment right above it. */
const CONSTANT = /(?<comment>^\/\*\*(?:[^*]|\*(?!\/))*\*\/\n)?^(?:export )?const (?<name>[A-Z][A-Z\d_]*)\b[^\n]*\n/gm;

const plain = (comment) =>
  comment
    .replace(/^\/\*\*|\*\/\n$/g, '')
    .replace(/\s*\n \* ?/g, ' ')
    .trim();

/** Constants of a source text with what is said of each. One that stands right below another shares its comment. */
export function namedIn(source) {
  const found = [];
  let last = { end: -1, comment: '' };
  for (const { index, 0: whole, groups } of source.matchAll(CONSTANT)) {
    const shared = index === last.end ? last.comment : '';
    const comment = groups.comment === undefined ? shared : plain(groups.comment);
    last = { end: index + whole.length, comment };
    found.push({ name: groups.name, comment });
  }
  return found;
}

const isTable = (value) =>
  Array.isArray(value) ||
  (typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype);

/** Whether a value states a number: nothing, one and none are no statements. */
export const states = (value) =>
  typeof value === 'number'
    ? Number.isFinite(value) && Math.abs(value) !== 1 && value !== 0
    : isTable(value) && Object.values(value).some(states);

/** Values are had by loading each file once more with a line that lets them out. */
const LET_OUT = '?constants';
function letOut() {
  registerHooks({
    load(url, context, next) {
      const loaded = next(url, context);
      if (!url.endsWith(LET_OUT)) return loaded;
      const names = namedIn(String(loaded.source)).map(({ name }) => name);
      return {
        ...loaded,
        source: `${loaded.source}\nexport const allConstantsOfThisFile = { ${names.join(', ')} };\n`,
      };
    },
  });
}

async function all() {
  letOut();
  const found = [];
  const files = globSync(FILES, { cwd: fileURLToPath(ROOT) }).map((file) => file.replaceAll('\\', '/'));
  for (const file of files.filter((one) => !ELSEWHERE.test(one)).sort()) {
    const here = namedIn(readFileSync(new URL(file, ROOT), 'utf8'));
    if (here.length === 0) continue;
    const { allConstantsOfThisFile: values } = await import(`${new URL(file, ROOT).href}${LET_OUT}`);
    for (const { name, comment } of here) {
      if (states(values[name])) found.push({ file, name, comment, value: values[name] });
    }
  }
  return found;
}

/** All of them, found in a process of its own: whoever asks may run in a bundler. */
export const constants = () =>
  JSON.parse(
    execFileSync(process.execPath, [fileURLToPath(import.meta.url)], { encoding: 'utf8', maxBuffer: 2 ** 24 }),
  );

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) console.log(JSON.stringify(await all()));
