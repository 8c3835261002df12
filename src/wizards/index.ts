// The one list of wizards.
import type { AnyStateMachine } from 'xstate';
import { chartOf } from './chart.ts';
import { ENOUGH_CURRENT_OUTCOMES, enoughCurrent } from './enough-current/index.ts';
import type { QuestionId } from './planning/index.ts';
import { questionsIn } from './planning/index.ts';
import { putItRight } from './put-it-right/index.ts';
import { LABELS_FIRST, LOOP_DEVICE, SHARE_OUT_OUTCOMES, shareOut } from './share-out/index.ts';
import { BESIDE_THE_OUTCOME, WHICH_SUPPLY_OUTCOMES, whichSupplyWhere } from './which-supply-where/index.ts';
import { WIRE_IT_OUTCOMES, wireIt } from './wire-it/index.ts';

export { labelOfWay, mermaidOf } from './chart.ts';

interface PlanningWizard {
  readonly machine: AnyStateMachine;
  /** The fix pages that it can point at. */
  readonly fixes: readonly string[];
}

/** The planning wizards by id, in the order in which they are offered. */
const PLANNING = {
  'enough-current': { machine: enoughCurrent, fixes: ENOUGH_CURRENT_OUTCOMES },
  'which-supply-where': { machine: whichSupplyWhere, fixes: [...WHICH_SUPPLY_OUTCOMES, ...BESIDE_THE_OUTCOME] },
  'share-out': { machine: shareOut, fixes: [...SHARE_OUT_OUTCOMES, LABELS_FIRST, LOOP_DEVICE] },
  'wire-it': { machine: wireIt, fixes: WIRE_IT_OUTCOMES },
} as const satisfies Readonly<Record<string, PlanningWizard>>;

export type WizardId = keyof typeof PLANNING;
const isWizard = (id: string): id is WizardId => Object.hasOwn(PLANNING, id);
export const WIZARD_IDS: readonly WizardId[] = Object.keys(PLANNING).filter(isWizard);

/** The fix pages that a planning wizard can point at. */
export const fixesOf = (wizard: WizardId): readonly string[] => PLANNING[wizard].fixes;

/** The planning wizards that can point at a fix page, none for a fix of the troubleshooting wizard. */
export const wizardsFor = (fix: string): WizardId[] => WIZARD_IDS.filter((wizard) => fixesOf(wizard).includes(fix));

/** The questions of a planning wizard, in the order in which they can be met. */
export const questionsOf = (wizard: WizardId): readonly QuestionId[] => questionsIn(PLANNING[wizard].machine);

/** The flow of every wizard. */
export const CHARTS = [...WIZARD_IDS.map((id) => PLANNING[id].machine), putItRight].map(chartOf);
