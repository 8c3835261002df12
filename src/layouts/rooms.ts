// The rooms of words: one file each in src/content/<language>/words, read whole by whoever is named here,
// in figures.ts, or names it itself.
import type { WizardId } from '../wizards/index.ts';

export type Room =
  | ('frame' | 'home' | 'entry' | 'lost' | 'search' | 'learn' | 'work-it-out' | 'put-it-right' | 'fix')
  | ('glossary' | 'cautions' | 'sources' | 'privacy' | 'licences' | 'contributors' | 'drawings' | 'checked')
  | ('notebook' | 'help-desk' | 'sheet' | 'sheet-editing' | 'sheet-parts' | 'sheet-names' | 'diagram' | 'division')
  | ('plan' | 'first-power-up')
  | (
      | 'asking'
      | 'units'
      | 'questions'
      | 'answer'
      | 'share'
      | 'verdicts'
      | 'labels'
      | 'charts'
      | 'tables'
      | 'along'
      | 'crossing'
    )
  | ('measuring' | 'short-link')
  | 'check-yourself'
  | ('workings-power' | 'workings-wiring' | 'workings-crossing')
  | WizardId
  | ('walk-first' | 'walk' | 'causes' | 'pictures' | 'how-well')
  | (
      | 'how-many-trains'
      | 'along-the-track'
      | 'train-across'
      | 'gap-scope'
      | 'drive-across'
      | 'who-opens'
      | 'through-section'
    );

/** What a planning wizard says before its answer. */
export const QUESTION_ROOMS = ['asking', 'questions', 'units'] as const satisfies readonly Room[];

/** What its answer says on top of that. */
export const ANSWER_ROOMS = {
  'enough-current': ['enough-current', 'answer', 'share', 'verdicts', 'labels', 'charts', 'tables', 'workings-power'],
  'which-supply-where': [
    ...(['which-supply-where', 'answer', 'share', 'verdicts', 'labels', 'charts', 'tables', 'crossing'] as const),
    ...(['measuring', 'workings-power', 'workings-crossing'] as const),
  ],
  'share-out': [
    'share-out',
    'sheet-parts',
    'sheet-names',
    'diagram',
    'answer',
    'share',
    'verdicts',
    'charts',
    'tables',
  ],
  'wire-it': ['wire-it', 'answer', 'share', 'charts', 'tables', 'along', 'measuring', 'workings-wiring'],
} as const satisfies Readonly<Record<WizardId, readonly Room[]>>;

/** What a walk says at its first question and in danger. */
export const WALK_FIRST_ROOMS = ['asking', 'walk-first', 'units'] as const satisfies readonly Room[];

/** What it says on top of that. */
export const WALK_ROOMS = ['walk', 'causes', 'pictures', 'share'] as const satisfies readonly Room[];

/** What the plan of a sheet says. */
export const PLAN_ROOMS = ['plan', 'diagram', 'sheet-names', 'units', 'asking'] as const satisfies readonly Room[];

/** What the walk through its tests says. */
export const POWER_UP_ROOMS = [
  'first-power-up',
  'sheet-names',
  'pictures',
  'units',
  'asking',
] as const satisfies readonly Room[];

/** What a computed question says. */
export const CHECK_ROOMS = ['check-yourself', 'units'] as const satisfies readonly Room[];

/** Of the room that whatever asks shares, it says only that a part could not be loaded. */
export const CHECK_ASKING = ['words-missing', 'words-again'] as const;

/** What the page of the layout sheet says once a sheet is worked on. */
export const SHEET_ROOMS = [
  ...(['sheet-editing', 'sheet-parts', 'sheet-names', 'diagram', 'division'] as const),
  'units',
] as const satisfies readonly Room[];
