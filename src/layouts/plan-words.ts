// The words of a plan, with the cautions of its steps and the names of the pages that it leads to; and of the walk through its tests.
import type { PowerUpProps } from '../components/first-power-up/index.ts';
import type { CautionWords } from '../components/words/index.ts';
import { MORE_ACTS, OWN_ACTS, ownSteps } from '../wizards/first-power-up/index.ts';
import { CHECKED_BY, FIX_OF_REMEDY, STEP_KINDS } from '../wizards/plan/index.ts';
import { dangersOf } from '../wizards/safety/index.ts';
import { cautionWords, checksFor, entryNamed, fixesFor } from './entries.ts';
import type { Language } from './href.ts';
import { PLAN_ROOMS, POWER_UP_ROOMS } from './rooms.ts';
import { askedWords } from './walk-words.ts';
import { wordsOf } from './words.ts';

export interface PlanWords {
  readonly words: Readonly<Record<string, string>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  readonly pages: Readonly<Record<string, string>>;
  readonly dangers: Readonly<Record<string, readonly string[]>>;
}

/** Every step that a plan may have, in the order of the trade. */
export const STEP_IDS: readonly string[] = Object.keys(STEP_KINDS);

export async function planWords(language: Language): Promise<PlanWords> {
  const steps = Object.values(STEP_KINDS);
  const fixes = await fixesFor(language);
  const led = [
    ...steps.flatMap((step) => ('job' in step ? step.job : [])),
    ...Object.values(FIX_OF_REMEDY).flatMap((fix) => fix ?? []),
  ];
  return {
    words: await wordsOf(language, PLAN_ROOMS),
    cautions: await cautionWords(language, dangersOf(steps.flatMap(({ acts }) => acts))),
    dangers: Object.fromEntries(Object.entries(STEP_KINDS).map(([id, { acts }]) => [id, dangersOf(acts)])),
    pages: Object.fromEntries([...new Set(led)].map((id) => [id, entryNamed(fixes, id).data.short])),
  };
}

/** The tests of a plan in the words of the walk that finds faults; and what can hurt in those that are no checks of it. */
export async function powerUpWords(language: Language): Promise<Pick<PowerUpProps, 'words' | 'tests' | 'cautions'>> {
  const checks = await checksFor(language);
  const asked = await Promise.all(
    CHECKED_BY.map(async (id) => {
      const entry = entryNamed(checks, id);
      const { check } = await askedWords(language, entry);
      const { title, how, picture } = check;
      const cautions = [...new Set([...check.cautions, ...dangersOf(MORE_ACTS[id] ?? [])])];
      const options = Object.fromEntries(
        Object.entries(entry.data.options).map(([option, { label, hint }]) => [option, { label, hint }]),
      );
      return [id, { title, how: ownSteps(id) === undefined ? how : [], cautions, options, picture }] as const;
    }),
  );
  const own = Object.entries(OWN_ACTS).map(
    ([id, acts]) => [id, { title: '', how: [], cautions: dangersOf(acts), options: {} }] as const,
  );
  const tests: PowerUpProps['tests'] = Object.fromEntries([...asked, ...own]);
  const named = Object.values(tests).flatMap(({ cautions }) => cautions);
  return {
    words: await wordsOf(language, POWER_UP_ROOMS),
    tests,
    cautions: await cautionWords(language, [...new Set(named)]),
  };
}
