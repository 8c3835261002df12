// Every question that the wizards and the walk can ask, once each, for the page that has them all in full and for the index that leads there.
import type { CollectionEntry } from 'astro:content';
import { questionsOf, WIZARD_IDS, type WizardId } from '../wizards/index.ts';
import { isDoneFirst, SIGN_MODEL } from '../wizards/put-it-right/index.ts';
import { checksFor, entryNamed, questionsFor } from './entries.ts';
import { type Language, langOf, writtenIn } from './href.ts';
import { wordsOfCheck } from './walk-words.ts';

interface Option {
  readonly label: string;
  readonly hint?: string | undefined;
}

interface Field {
  /** None where it is the question itself. */
  readonly label?: string;
  readonly hint?: string | undefined;
  readonly options: readonly Option[];
}

interface InFull {
  /** Its place on the page. */
  readonly id: string;
  readonly title: string;
  readonly why: string;
  /** The language it is written in, and the same as an attribute where it is not that of the page. */
  readonly written: Language;
  readonly lang: Language | undefined;
  /** Who asks it, of the planning wizards. */
  readonly wizards: readonly WizardId[];
  readonly fields: readonly Field[];
  readonly needs: readonly string[];
  readonly how: readonly string[];
  readonly cautions: readonly string[];
  readonly minutes?: number;
}

type Tool = (typeof SIGN_MODEL.checks)[number]['tool'];

interface AskedInFull {
  /** In the order in which the wizards ask them. */
  readonly planned: readonly InFull[];
  /** By what one must have for them. */
  readonly checked: readonly { readonly tool: Tool; readonly questions: readonly InFull[] }[];
}

export async function askedInFull(language: Language): Promise<AskedInFull> {
  const [questions, checks] = await Promise.all([questionsFor(language), checksFor(language)]);
  const ids = new Set(WIZARD_IDS.flatMap((wizard) => questionsOf(wizard)));
  const tools = [...new Set(SIGN_MODEL.checks.map(({ tool }) => tool))];
  return {
    planned: [...ids].map((id) => plannedOf(entryNamed(questions, id), id, language)),
    checked: tools.map((tool) => ({
      tool,
      questions: SIGN_MODEL.checks
        .filter((check) => check.tool === tool)
        .map((check) => checkedOf(entryNamed(checks, check.id), check, language)),
    })),
  };
}

const askedBy = (id: string): WizardId[] =>
  WIZARD_IDS.filter((wizard) => questionsOf(wizard).some((one) => one === id));

function plannedOf({ id: entry, data }: CollectionEntry<'questions'>, id: string, language: Language): InFull {
  return {
    id: `question-${id}`,
    title: data.title,
    why: data.why,
    written: writtenIn(entry),
    lang: langOf(entry, language),
    wizards: askedBy(id),
    fields: Object.values(data.fields).map(({ label, hint, options = {} }) => ({
      label,
      hint,
      options: Object.values(options),
    })),
    needs: [],
    how: [],
    cautions: [],
  };
}

function checkedOf(
  entry: CollectionEntry<'checks'>,
  { id, needs, minutes }: (typeof SIGN_MODEL.checks)[number],
  language: Language,
): InFull {
  const { title, why, how, cautions, options } = wordsOfCheck(entry);
  return {
    id: `check-${id}`,
    title,
    why,
    written: writtenIn(entry.id),
    lang: langOf(entry.id, language),
    wizards: [],
    fields: [{ options: Object.values(options) }],
    needs: needs.filter(isDoneFirst),
    how,
    cautions,
    minutes,
  };
}
