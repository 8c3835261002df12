// What every part of the plan page is drawn with.
import type { Plan } from '../../wizards/plan/index.ts';
import type { Sheet } from '../../wizards/sheet/index.ts';
import type { Ahead } from '../diagram/index.ts';
import type { CautionWords, Numbers, Say } from '../words/index.ts';

export interface PlanProps {
  readonly language: string;
  /** The address of the language, ending in a slash. */
  readonly home: string;
  readonly words: Readonly<Record<string, string>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  /** What can hurt in each step, by its id. */
  readonly dangers: Readonly<Record<string, readonly string[]>>;
  /** Names of the jobs that steps send to, and of the fix that comes first, by id. */
  readonly pages: Readonly<Record<string, string>>;
}

export interface PartProps extends Omit<PlanProps, 'words'> {
  /** The part of the address from “#” that holds the sheet, where it came by a link. */
  readonly hash?: string | undefined;
  readonly plan: Plan;
  /** Its layout, laid out while it was worked out. */
  readonly ahead?: Ahead | undefined;
  readonly names: Names;
  readonly say: Say;
  readonly numbers: Numbers;
}

/** What sections, units and supplies are called. */
export interface Names {
  readonly section: (id: string) => string;
  readonly stage: (id: string) => string;
  readonly supply: (id: string) => string;
}

/** By their own names; else sections by their marks, units and supplies by their places. */
export function namesIn({ sections, stages, supplies }: Sheet, say: Say): Names {
  const known = (name: string | undefined): string | undefined => (name?.trim() === '' ? undefined : name);
  const boosters = stages.filter(({ kind }) => kind === 'booster');
  return {
    section: (id) => known(sections.find((one) => one.id === id)?.name) ?? id.replaceAll('-', ' '),
    stage: (id) => {
      const stage = stages.find((one) => one.id === id);
      const own = known(stage?.name);
      if (own !== undefined || stage === undefined) return own ?? id;
      return stage.kind === 'station' ? say('plan-station') : say('plan-booster', { n: boosters.indexOf(stage) + 1 });
    },
    supply: (id) => {
      const at = supplies.findIndex((one) => one.id === id);
      return known(supplies[at]?.name) ?? (at < 0 ? id : say('plan-supply', { n: at + 1 }));
    },
  };
}
