// Words for every id, and an id for all words, in each language that is shipped.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CHECK_PICTURES } from '../../src/components/check-picture/CheckPicture.tsx';
import { crossingInPhase } from '../../src/engine/crossing/crossing.ts';
import { gapExpected } from '../../src/engine/crossing/expected.ts';
import { crossingReversed } from '../../src/engine/crossing/reversed.ts';
import { crossingSkew } from '../../src/engine/crossing/skew.ts';
import { CROSSING_ADVICE, CROSSING_REASONS } from '../../src/engine/crossing/verdict.ts';
import { PRECONDITIONS, SOMETHING_ELSE, TOOLS } from '../../src/engine/diagnosis/model.ts';
import { capacity } from '../../src/engine/power/capacity.ts';
import { demandWorking, districtLoad, plainSum } from '../../src/engine/power/fleet.ts';
import { judge } from '../../src/engine/power/rules.ts';
import { shortFromLoadTest } from '../../src/engine/wiring/load-test.ts';
import { loopLimit, worstFaultHeat } from '../../src/engine/wiring/trips.ts';
import type { Working } from '../../src/engine/workings.ts';
import { ENOUGH_CURRENT_OUTCOMES } from '../../src/wizards/enough-current/outcomes.ts';
import { fixesOf, WIZARD_IDS } from '../../src/wizards/index.ts';
import { isDoneFirst, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { ISOLATION, PHASE } from '../../src/wizards/put-it-right/states.ts';
import { dangersOutdoors } from '../../src/wizards/safety/dangers.ts';
import { WHICH_SUPPLY_OUTCOMES } from '../../src/wizards/which-supply-where/outcomes.ts';
import { WIRE_IT_OUTCOMES } from '../../src/wizards/wire-it/outcomes.ts';
import { ac, dc, h0, unit } from '../samples.ts';
import { ALL_QUESTIONS } from '../wizards/told.ts';
import type { Words } from './folder.ts';
import { CONTENT, cautionsOfCheck, isRecord, LANGUAGES, stepsOf, texts, wordsOf } from './folder.ts';

const SRC = join(import.meta.dirname, '../../src');

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

const keys = (value: unknown): string[] => (isRecord(value) ? Object.keys(value).sort() : []);

/** Every working that the engine gives, from supplies of each kind and a judgement. */
const WORKINGS = (() => {
  const able = [
    capacity(dc(2), unit(3)),
    capacity(ac(3), unit(3)),
    capacity(dc(3, 19), unit(5, { rails: { kind: 'converter', volts: 15 } })),
  ];
  const judged = able.map((one) => judge(districtLoad(h0(3, 1, 2)), one));
  return [
    demandWorking(h0(3, 1, 2), 'h0', 1),
    plainSum(h0(3, 1, 2)),
    ...able.map(({ working }) => working),
    ...judged.flatMap(({ everyday, stall, powerUp, heat }) =>
      [everyday, stall, powerUp, heat].map(({ working }) => working),
    ),
  ];
})();

/** Every object with a formula inside a result, however deep. */
function workingsIn(value: unknown): Working[] {
  const found: Working[] = [];
  const look = (one: unknown): void => {
    if (Array.isArray(one)) one.forEach(look);
    else if (isWorking(one)) found.push(one);
    else if (isRecord(one)) Object.values(one).forEach(look);
  };
  look(value);
  return found;
}

const isWorking = (value: unknown): value is Working =>
  isRecord(value) && typeof value['formula'] === 'string' && Array.isArray(value['inputs']);

/** Workings about wires, shorts and trains across a gap. */
const ELECTRIC = (() => {
  const side = { volts: { from: 15, to: 16 }, load: 1, ownUse: 0.1, limit: 3 };
  const higher = { ...side, volts: 17, linkFarads: 2.2e-3 };
  const tripping = { volts: 15, trip: 3, tripSeconds: 0.3, load: 1, ownUse: 0.1 };
  return workingsIn([
    loopLimit(15, 3),
    worstFaultHeat({ volts: 15, ohms: 2 }, 3),
    shortFromLoadTest({ open: 15, loaded: 14, ohms: 15 }),
    crossingInPhase({ near: higher, far: side }),
    crossingInPhase({ near: higher, far: { ...side, sinks: true } }),
    crossingReversed(tripping, tripping),
    crossingSkew({ volts: 30, ohms: 1, henries: 10e-6, seconds: 3e-6 }),
    gapExpected('h0', 15, 16),
  ]);
})();

/** Ids of sources named in comments of the engine and the wizards: `Source: nmra-s-9-1 Table 3, own-derivation.` */
const CITED_IN_COMMENTS = (() => {
  const cited = ['engine', 'wizards']
    .flatMap((room) => filesBelow(join(SRC, room)))
    .filter((file) => extname(file) === '.ts')
    .flatMap((file) => [...readFileSync(file, 'utf8').matchAll(/\bSources?: ([^.\n]*)/g)].map(([, of = '']) => of));
  return [
    ...new Set(
      cited.flatMap((of) => of.replace(/\([^)]*\)/g, '').match(/(?<![\w-])[a-z0-9]+(?:-[a-z0-9]+)+(?![\w-])/g) ?? []),
    ),
  ].sort();
})();

/** Everything that may cite a source by its id: pages, code, and tests that judge by it. */
const CITING = [...filesBelow(SRC), ...filesBelow(join(SRC, '../tests'))]
  .filter((file) => !/[\\/]sources[\\/][^\\/]+$/.test(file))
  .map((file) => readFileSync(file, 'utf8'))
  .join('\n');

/** Drawings that components/drawings can draw. */
const DRAWINGS = (() => {
  const index = readFileSync(join(SRC, 'components/drawings/all.ts'), 'utf8');
  const [, table = ''] = /DRAWINGS = \{([\s\S]*?)\}/.exec(index) ?? [];
  return [...table.matchAll(/^\s*'?([a-z-]+)'?:/gm)].map(([, id]) => id);
})();

test('there is a language, and English is one', () => {
  expect(LANGUAGES).toContain('en');
});

test('engine and drawings were really looked through', () => {
  expect(new Set(ELECTRIC.map(({ formula }) => formula)).size).toBeGreaterThan(12);
  expect(new Set(WORKINGS.map(({ formula }) => formula)).size).toBe(10);
  expect(CITED_IN_COMMENTS.length).toBeGreaterThan(6);
  expect(DRAWINGS.length).toBeGreaterThanOrEqual(5);
});

describe('the content', () => {
  const files = filesBelow(CONTENT);

  test('is YAML and MDX only', () => {
    expect(files.length).toBeGreaterThan(50);
    expect(files.filter((file) => !['.yaml', '.mdx'].includes(extname(file)))).toEqual([]);
  });

  test('has kebab-case names without a language in them', () => {
    for (const file of files) expect(basename(file, extname(file))).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  test('leaves nothing to be done', () => {
    for (const file of files)
      expect(readFileSync(file, 'utf8'), file).not.toMatch(/\b(TODO|FIXME|XXX|TBD)\b|lorem ipsum/i);
  });

  const pages = files.filter((file) => extname(file) === '.mdx');
  test.each(pages.map((file) => [file.slice(CONTENT.length + 1), file]))('%s holds words, no code', (_, file) => {
    const body = readFileSync(file, 'utf8').replace(/^---\n[\s\S]*?\n---\n/, '');
    const code = body
      .replace(/^import [A-Z]\w* from '(?:\.\.\/)+components\/[\w/]+\.(?:astro|tsx)';?$/gm, '')
      // Words with lengths in them: a tag of one shape, whose only text is words with placeholders.
      .replaceAll(/<Measured text="[^"<>=]*" \/>/g, '');
    expect(code).not.toMatch(/[{}]|=>|\bfunction\b|^\s*(?:import|export)\b|<script/m);
  });
});

describe.each(LANGUAGES)('in "%s"', (language) => {
  const of = (kind: string): readonly Words[] => wordsOf(language, kind);
  const ids = (kind: string): string[] => of(kind).map(({ id }) => id);
  const questions = new Map(of('questions').map((words) => [words.id, words.data]));
  const said = new Map(of('words').flatMap(({ data }) => Object.entries(data)));

  test('no file lies in a folder that nobody reads', () => {
    const folders = readdirSync(join(CONTENT, language));
    const read = [
      'cautions',
      'changes',
      'checks',
      'complaints',
      'fixes',
      'glossary',
      'lessons',
      'questions',
      'sources',
      'words',
    ];
    expect(folders.filter((folder) => !read.includes(folder))).toEqual([]);
  });

  test('every question has words, and no words ask what is never asked', () => {
    expect(ids('questions').sort()).toEqual(ALL_QUESTIONS.map(({ id }) => id).sort());
  });

  const ALL = ALL_QUESTIONS.flatMap((question) =>
    question.fields.map((field) => [field.id, field, question.id] as const),
  );
  const wordsFor = (question: string, field: string): Readonly<Record<string, unknown>> => {
    const fields = questions.get(question)?.['fields'];
    const words = isRecord(fields) ? fields[field] : undefined;
    return isRecord(words) ? words : {};
  };

  test.each(ALL_QUESTIONS.map((question) => [question.id, question] as const))(
    'the question %s has words for its fields and for no others',
    (id, question) => {
      expect(keys(questions.get(id)?.['fields'])).toEqual(question.fields.map((field) => field.id).sort());
    },
  );

  test.each(ALL)('the field %s has words for its options and for no others', (id, field, question) => {
    const words = wordsFor(question, id);
    expect(keys(words['options'])).toEqual(field.kind === 'choice' ? [...field.options].sort() : []);
    for (const part of ['label', 'known', 'unknown']) expect(words[part], part).toMatch(/\S/);
  });

  const citing = [...of('fixes'), ...of('lessons')];
  const cautionsIn = (words: Words): string[] => [
    ...stepsOf(words).flatMap(({ cautions }) => cautions),
    ...[...words.body.matchAll(/<Caution\s+id=["']([^"']+)["']/g)].map(([, id]) => id ?? ''),
  ];

  test('every caution that a page names is there', () => {
    for (const words of citing) for (const id of cautionsIn(words)) expect(ids('cautions'), words.file).toContain(id);
    for (const check of of('checks'))
      for (const id of cautionsOfCheck(check)) expect(ids('cautions'), check.file).toContain(id);
  });

  test('every caution is named by a page', () => {
    // An answer for a garden adds what the acts of its steps bring there.
    const outdoors = of('fixes').flatMap((fix) => stepsOf(fix).flatMap(({ acts }) => dangersOutdoors(acts)));
    const named = new Set([...citing.flatMap(cautionsIn), ...of('checks').flatMap(cautionsOfCheck), ...outdoors]);
    const alone = ids('cautions').filter((id) => !named.has(id));
    expect(alone.map((id) => `The caution "${id}" stands at no step, no check and in no text.`)).toEqual([]);
  });

  test('no step names a caution twice', () => {
    for (const words of citing) {
      for (const { cautions } of stepsOf(words)) expect(new Set(cautions).size, words.file).toBe(cautions.length);
    }
  });

  test('every source that a page names is there', () => {
    for (const words of citing)
      for (const id of texts(words.data['sources'])) expect(ids('sources'), words.file).toContain(id);
  });

  test('every source is cited by a page, by the code or by a test that judges by it', () => {
    const alone = ids('sources').filter((id) => !new RegExp(`(?<![\\w-])${id}(?![\\w-])`).test(CITING));
    expect(alone.map((id) => `The source "${id}" is cited by nobody.`)).toEqual([]);
  });

  test('every page names where its statements come from', () => {
    for (const words of citing) expect(texts(words.data['sources']).length, words.file).toBeGreaterThan(0);
  });

  test('every source that the engine cites is on the sources page', () => {
    const cited = new Set([...CITED_IN_COMMENTS, ...[...WORKINGS, ...ELECTRIC].flatMap(({ sources }) => sources)]);
    const strange = [...cited].filter((id) => !ids('sources').includes(id));
    expect(strange.map((id) => `The source "${id}" is cited in code, and has no words.`)).toEqual([]);
  });

  test('every drawing that a page names can be drawn', () => {
    for (const { data, file } of citing)
      if (data['drawing'] !== undefined) expect(DRAWINGS, file).toContain(data['drawing']);
  });

  test('no sentence of the interface is written twice', () => {
    const all = of('words').flatMap(({ data }) => Object.keys(data));
    expect(all.filter((key, i) => all.indexOf(key) !== i)).toEqual([]);
  });

  test('every formula, and every input of one, has words', () => {
    for (const { formula, inputs } of [...WORKINGS, ...ELECTRIC]) {
      expect(said.get(`formula-${formula}`), `formula-${formula}`).toMatch(/\S/);
      for (const { name } of inputs) expect(said.get(`input-${name}`), `input-${name}`).toMatch(/\S/);
    }
  });

  test.each([
    ...['empty', 'not-an-option', 'not-a-number', 'unknown-unit', 'not-whole', 'one-number'],
    ...['too-small', 'too-large', 'bare-gauge', 'needs-volts', 'power-no-amperes', 'more-than-trains'],
  ])('the problem %s has words', (because) => expect(said.get(`problem-${because}`)).toMatch(/\S/));

  test.each(['ample', 'enough', 'tight', 'short'])('the verdict %s has words', (verdict) => {
    expect(said.get(`verdict-${verdict}`)).toMatch(/\S/);
  });

  test.each(['wrong-kind', 'too-many-volts', 'plug-reversed'])('the misfit %s has words', (because) => {
    expect(said.get(`because-not-permitted-${because}`)).toMatch(/\S/);
  });

  test.each(WIZARD_IDS)('the wizard %s has words where it is offered and where one comes back from its fixes', (id) => {
    const wanted = [...['title', 'lead', 'asks', 'gives'].map((part) => `${id}-${part}`), `back-${id}`];
    expect(wanted.filter((key) => !said.has(key)).map((key) => `No words for "${key}".`)).toEqual([]);
  });

  const workedOut = (outcomes: readonly string[]) => outcomes.filter((id) => !id.startsWith('out-of-scope'));
  test.each(workedOut(ENOUGH_CURRENT_OUTCOMES))('the outcome %s has a lead', (id) =>
    expect(said.get(`lead-${id}`)).toMatch(/\S/),
  );
  test.each(workedOut(WHICH_SUPPLY_OUTCOMES))('the placement %s has a headline', (id) => {
    expect(said.get(`place-headline-${id}`)).toMatch(/\S/);
  });

  test.each(workedOut(WIRE_IT_OUTCOMES))('the wiring %s has a headline', (id) => {
    expect(said.get(`wire-headline-${id}`)).toMatch(/\S/);
  });
  test.each(CROSSING_ADVICE)('the advice %s has a fix page that the wizard can show', (id) => {
    expect(ids('fixes')).toContain(id);
    expect(fixesOf('which-supply-where')).toContain(id);
  });
  test.each([...Object.keys(CROSSING_REASONS), 'reversed'])('the reason %s has words', (reason) => {
    expect(said.get(`across-reason-${reason}`)).toMatch(/\S/);
  });

  const checks = new Map(of('checks').map((words) => [words.id, words.data]));
  test('every check of the walk has words, and no words check what is never checked', () => {
    expect([...checks.keys()].sort()).toEqual(SIGN_MODEL.checks.map(({ id }) => id).sort());
  });
  test.each(SIGN_MODEL.checks.map((check) => [check.id, check] as const))(
    'the check %s has words for its options and for no others, and a picture that can be drawn',
    (id, check) => {
      const words = checks.get(id) ?? {};
      expect(keys(words['options'])).toEqual([...check.options].sort());
      for (const part of ['title', 'known', 'why']) expect(words[part], part).toMatch(/\S/);
      const { picture } = words;
      if (picture !== undefined) expect(CHECK_PICTURES).toContain(picture);
    },
  );
  test('a check that can hurt carries a caution', () => {
    const carried = new Map(of('checks').map((check) => [check.id, cautionsOfCheck(check)]));
    for (const { id, risk } of SIGN_MODEL.checks) {
      if (risk > 0) expect(carried.get(id)?.length, id).toBeGreaterThan(0);
    }
  });
  test('every complaint has words, and no other', () => {
    const complaints = [...SIGN_MODEL.openings.map(({ id }) => id), 'none-of-these'];
    expect(ids('complaints').sort()).toEqual(complaints.sort());
  });
  test('every cause and every fix has a short name and a page', () => {
    const classes = [...new Set(SIGN_MODEL.causes.map(({ fixClass }) => fixClass))];
    const keys = [
      ...[...SIGN_MODEL.causes.map(({ id }) => id), SOMETHING_ELSE].map((id) => `fault-${id}`),
      ...classes.map((id) => `class-${id}`),
    ];
    const pages = ids('fixes');
    expect([
      ...keys.filter((key) => !said.has(key)).map((key) => `words/causes.yaml lacks "${key}".`),
      ...[...classes, SOMETHING_ELSE].filter((id) => !pages.includes(id)).map((id) => `There is no fixes/${id}.mdx.`),
    ]).toEqual([]);
  });
  test('every tool, precondition and risk has words', () => {
    for (const tool of TOOLS) expect(said.get(`tool-${tool}`), tool).toMatch(/\S/);
    for (const need of PRECONDITIONS.filter(isDoneFirst)) expect(said.get(`need-${need}`), need).toMatch(/\S/);
  });
  test('every danger ends in a page whose first step carries a caution', () => {
    const dangers = SIGN_MODEL.checks.flatMap(({ danger = {} }) => Object.values(danger));
    expect(dangers.length).toBeGreaterThan(0);
    for (const fixClass of dangers) {
      const page = of('fixes').find(({ id }) => id === fixClass);
      expect(page === undefined ? 0 : (stepsOf(page)[0]?.cautions.length ?? 0), fixClass).toBeGreaterThan(0);
    }
  });
  test.each([
    ...ISOLATION.map((found) => `walk-isolation-${found}`),
    ...PHASE.map((found) => `walk-phase-${found}`),
    ...['no-cause-left', 'questions-used-up', 'nothing-separates'].map((because) => `walk-hand-on-${because}`),
  ])('the walk can say %s', (key) => expect(said.get(key)).toMatch(/\S/));
});
