// The words of the troubleshooting walk: what the first question needs comes with the page, the rest is fetched on the way.
import type { CollectionEntry } from 'astro:content';
import type {
  CheckWords,
  DangerWords,
  FetchedCheck,
  FetchedFix,
  FirstWords,
  SentWords,
} from '../components/walk/index.ts';
import { FALLBACK } from '../components/words/index.ts';
import type { Said } from '../wizards/hearing/index.ts';
import { powerActsOf, SIGN_MODEL, showsSafety, TWO_PARTS } from '../wizards/put-it-right/index.ts';
import { dangersOf } from '../wizards/safety/index.ts';
import {
  allWrittenIn,
  cautionsFor,
  cautionWords,
  checksFor,
  complaintsFor,
  dangersOfChecks,
  entryNamed,
  fixesFor,
  phrasesOfChecks,
} from './entries.ts';
import { type Language, langOf, nameOf, writtenIn } from './href.ts';
import { WALK_FIRST_ROOMS, WALK_ROOMS } from './rooms.ts';
import { cautionsIn, wordsOfFix } from './wizard-words.ts';
import { saysAll, wordsOf } from './words.ts';

/** Cautions of the last look, whatever the checks name. */
const LAST_LOOK = ['still-fed', 'lamp-hot', 'rings-off', 'meter-sockets'];

export function wordsOfCheck({ id, data }: CollectionEntry<'checks'>): CheckWords {
  const { title, known, why, how, acts, options, picture } = data;
  const cautions = dangersOf([...powerActsOf(nameOf(id)), ...acts], data.cautions);
  const said = Object.fromEntries(
    Object.entries(options).map(([id, { label, hint }]) => [id, hint === undefined ? { label } : { label, hint }]),
  );
  return { title, known, why, how, cautions, options: said, ...(picture === undefined ? {} : { picture }) };
}

async function wordsOfChecks(language: Language, wanted: (id: string) => boolean): Promise<Record<string, CheckWords>> {
  const entries = (await checksFor(language)).filter(({ id }) => wanted(nameOf(id)));
  return Object.fromEntries(entries.map((entry) => [nameOf(entry.id), wordsOfCheck(entry)]));
}

const FIRST = new Set(SIGN_MODEL.checks.filter(({ first }) => first === true).map(({ id }) => id));
/** Fix classes that a danger answer leads to, of whatever check: their pages begin with the first act. */
export const DANGERS: ReadonlySet<string> = new Set(
  SIGN_MODEL.checks.flatMap(({ danger }) => Object.values(danger ?? {})),
);

/** The language a walk speaks: its page's, or English where that lacks a part of what every walk may say. */
export async function walkWrittenIn(language: Language): Promise<Language> {
  const dangers = (await fixesFor(language)).filter(({ id }) => DANGERS.has(nameOf(id)));
  const all = [await complaintsFor(language), await checksFor(language), await cautionsFor(language), dangers];
  const says = await saysAll(language, [...WALK_FIRST_ROOMS, ...WALK_ROOMS]);
  return says && allWrittenIn(language, all.flat()) ? language : FALLBACK;
}

const isTwoParted = (complaint: string): boolean => [...TWO_PARTS].some((one) => one === complaint);

/** What the page says before anything was answered, and what it says where the answer means danger. */
export async function firstSentences(language: Language, complaint: string): Promise<Record<string, string>> {
  const { title, first } = entryNamed(await complaintsFor(language), complaint).data;
  const words = await wordsOf(language, WALK_FIRST_ROOMS);
  for (const need of SIGN_MODEL.checks.flatMap(({ id, needs }) => (FIRST.has(id) ? needs : []))) {
    if (words[`need-${need}`] === undefined)
      throw new Error(`The first question needs "need-${need}" in walk-first.yaml`);
  }
  const { 'walk-parts-meant': meant = '', ...others } = words;
  const parts = isTwoParted(complaint) ? { 'walk-parts-meant': meant } : {};
  return { ...others, ...parts, 'walk-first': first, [`complaint-${complaint}`]: title };
}

/** The checks that come before everything else, and every fix that a danger answer leads to, with all their cautions. */
export async function firstWords(language: Language): Promise<FirstWords> {
  const checks = await wordsOfChecks(language, (id) => FIRST.has(id));
  const fixes = (await fixesFor(language)).filter(({ id }) => DANGERS.has(nameOf(id)));
  const dangers: Record<string, DangerWords> = {};
  for (const entry of fixes) {
    const { title, steps } = await wordsOfFix(language, entry);
    dangers[nameOf(entry.id)] = { title, steps };
  }
  for (const id of DANGERS) if (dangers[id] === undefined) throw new Error(`No words for the fix "${id}"`);
  const named = [
    ...cautionsOf(Object.values(checks)),
    ...cautionsOf(Object.values(dangers).flatMap(({ steps }) => steps)),
  ];
  const rows = SIGN_MODEL.checks.filter(({ id }) => FIRST.has(id));
  return {
    checks,
    dangers,
    cautions: await cautionWords(language, [...new Set(named)]),
    rows: Object.fromEntries(
      rows.map(({ id, options, needs, minutes, danger }) => [id, { options, needs, minutes, danger }]),
    ),
    dangersInLink: Object.fromEntries(
      SIGN_MODEL.checks.flatMap(({ id, danger }) =>
        Object.entries(danger ?? {}).map(([option, fixClass]) => [`${id}=${option}`, fixClass]),
      ),
    ),
    safe: rows.flatMap(({ id, options }) => options.filter((option) => showsSafety(id, option))),
  };
}

const cautionsOf = (parts: readonly { readonly cautions: readonly string[] }[]): string[] =>
  parts.flatMap(({ cautions }) => cautions);

/** Everything a walk can say but its questions, its fixes and what the page says already. */
export async function walkWords(language: Language): Promise<SentWords> {
  const there = await firstWords(language);
  const cautions = await cautionWords(
    language,
    LAST_LOOK.filter((id) => there.cautions[id] === undefined),
  );
  const entries = new Map((await checksFor(language)).map((entry) => [nameOf(entry.id), entry.data]));
  const checks = SIGN_MODEL.checks.flatMap(({ id, options }): [string, readonly string[]][] => {
    const words = FIRST.has(id) ? undefined : entries.get(id);
    return words === undefined ? [] : [[id, [words.known, ...options.map((one) => words.options[one]?.label ?? '')]]];
  });
  const titles = (await complaintsFor(language)).map(({ id, data }) => [`complaint-${nameOf(id)}`, data.title]);
  const words = { ...(await wordsOf(language, WALK_ROOMS)), ...Object.fromEntries(titles) };
  for (const { id, fixClass } of SIGN_MODEL.causes) {
    if (words[`fault-${id}`] === words[`class-${fixClass}`]) delete words[`fault-${id}`];
  }
  const pictures = [...entries].flatMap(([id, { picture }]) => (picture === undefined ? [] : [id]));
  return { words, checks: Object.fromEntries(checks), pictures, cautions };
}

/** One question with its cautions; how its answers are called came with the words of the walk. */
export async function askedWords(language: Language, entry: CollectionEntry<'checks'>): Promise<FetchedCheck> {
  const { known: _, options, ...check } = wordsOfCheck(entry);
  const hints = Object.fromEntries(
    Object.entries(options).flatMap(([option, { hint }]) => (hint === undefined ? [] : [[option, hint]])),
  );
  return { check: { ...check, hints }, cautions: await cautionWords(language, check.cautions) };
}

/** One fix with the cautions of its steps, in one language. */
export async function fixWords(language: Language, entry: CollectionEntry<'fixes'>): Promise<FetchedFix> {
  const { without } = entry.data;
  const fix = { ...(await wordsOfFix(language, entry)), ...(without === undefined ? {} : { without }) };
  const cautions = await cautionWords(writtenIn(entry.id), cautionsIn([fix]));
  const lang = langOf(entry.id, language);
  return { fix, cautions, ...(lang === undefined ? {} : { lang }) };
}

/** What people say for each answer, in the words of every language: what is asked first is left out, for it has been asked. */
export async function saidOf(language: Language): Promise<Said[]> {
  const [phrases, dangers] = await Promise.all([phrasesOfChecks(), dangersOfChecks()]);
  return (await checksFor(language)).flatMap(({ id, data }) => {
    const check = nameOf(id);
    const own = writtenIn(id);
    return Object.entries(data.options).map(([option, { says }]) => {
      const lines = phrases.get(`${check}/${option}`);
      const near = dangers.get(`${check}/${option}`);
      const said = { check, option, lines: { ...lines, [own]: [...says, ...(lines?.[own] ?? [])] } };
      return near === undefined ? said : { ...said, dangers: near };
    });
  });
}
