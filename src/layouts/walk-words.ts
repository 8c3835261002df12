// The words of the troubleshooting walk: what the first question needs comes with the page, the rest is fetched on the way.
import type { CollectionEntry } from 'astro:content';
import type { CheckWords, FetchedFix, WalkWords } from '../components/walk/words.ts';
import type { CautionWords } from '../components/words.ts';
import { FAULT_MODEL } from '../wizards/faults/index.ts';
import { cautionsFor, checksFor, complaintsFor } from './entries.ts';
import { nameOf } from './href.ts';
import { wordsOfFix } from './wizard-words.ts';
import { wordsOf } from './words.ts';

/** Sentences of the walk itself, by the beginnings of their keys. */
const FRAME =
  /^(walk-(?!causes|checks|often)|problem-crash$|words-|back$|restart$|continue$|why-we-ask$|answered-so-far$|caution$|copy|copied$|print$|share-text$|need-|picture-)/;
/** Names of causes, fixes and tools: needed after the first answer. */
const NAMES = /^(fault-|class-|tool-)/;

/** Cautions of the last look, whatever the checks name. */
const LAST_LOOK = ['still-fed', 'lamp-hot'];

function wordsOfCheck({ data }: CollectionEntry<'checks'>): CheckWords {
  const { title, known, why, how, cautions, options, picture } = data;
  const said = Object.fromEntries(
    Object.entries(options).map(([id, { label, hint }]) => [id, hint === undefined ? { label } : { label, hint }]),
  );
  return { title, known, why, how, cautions, options: said, ...(picture === undefined ? {} : { picture }) };
}

async function cautionWords(url: URL, ids: readonly string[]): Promise<Record<string, CautionWords>> {
  const all = new Map((await cautionsFor(url)).map(({ id, data }) => [nameOf(id), data]));
  return Object.fromEntries(
    ids.map((id) => {
      const words = all.get(id);
      if (words === undefined) throw new Error(`No words for the caution "${id}"`);
      return [id, words];
    }),
  );
}

async function wordsOfChecks(url: URL, wanted: (id: string) => boolean): Promise<Record<string, CheckWords>> {
  const entries = (await checksFor(url)).filter(({ id }) => wanted(nameOf(id)));
  return Object.fromEntries(entries.map((entry) => [nameOf(entry.id), wordsOfCheck(entry)]));
}

const FIRST = new Set(FAULT_MODEL.checks.filter(({ first }) => first === true).map(({ id }) => id));

/** What the page says before anything was answered. */
export async function frameWords(url: URL): Promise<Record<string, string>> {
  const complaints = await complaintsFor(url);
  return {
    ...(await wordsOf(url, FRAME)),
    ...Object.fromEntries(complaints.map(({ id, data }) => [`complaint-${nameOf(id)}`, data.title])),
  };
}

/** The checks that come before everything else. */
export async function firstWords(url: URL): Promise<WalkWords> {
  const checks = await wordsOfChecks(url, (id) => FIRST.has(id));
  const cautions = await cautionWords(url, [...new Set(Object.values(checks).flatMap((check) => check.cautions))]);
  return { words: {}, checks, cautions };
}

/** Everything a walk can say but its fixes. */
export async function walkWords(url: URL): Promise<WalkWords> {
  const checks = await wordsOfChecks(url, () => true);
  const named = new Set([...LAST_LOOK, ...Object.values(checks).flatMap((check) => check.cautions)]);
  return { words: await wordsOf(url, NAMES), checks, cautions: await cautionWords(url, [...named]) };
}

/** One fix with the cautions of its steps. */
export async function fixWords(url: URL, { data }: CollectionEntry<'fixes'>): Promise<FetchedFix> {
  const fix = wordsOfFix(data);
  return { fix, cautions: await cautionWords(url, [...new Set(fix.steps.flatMap((step) => step.cautions))]) };
}
