// The questions of the planning wizards: ids, kinds, ranges and what is assumed when a person does not know.
// Words for these ids live in src/content/<language>/questions. A field's id is its name in the address. In which order they are asked:
// flow.ts of each wizard.
import type { ChoiceField, Field } from './field.ts';
import { number } from './field.ts';

export interface Question {
  readonly id: string;
  readonly fields: readonly Field[];
  /** What stands on a label, and which: asked in little room, with a picture and one tap for all that cannot be read. */
  readonly label?: 'supply' | 'unit';
}

const choice = (
  id: string,
  options: readonly string[],
  more: Pick<ChoiceField, 'assume' | 'when'> = {},
): ChoiceField => ({
  kind: 'choice',
  id,
  options,
  ...more,
});

/** Of one kind; beyond it the figures of a club layout no longer say anything. Source: own-choice. */
const MOST_TRAINS = 100;

/** What is printed on a supply. Current up to NEM 609's 10 A; more is typed by mistake or is no supply for models. */
const supplyLabel = (id: string, prefix: string): Question => ({
  id,
  label: 'supply',
  fields: [
    choice(`${prefix}-kind`, ['dc', 'ac']),
    number(`${prefix}-volts`, 'voltage', 3, 60),
    number(`${prefix}-amps`, 'current', 0.1, 40, { volts: `${prefix}-volts` }),
    choice(`${prefix}-plug`, ['centre-plus', 'centre-minus', 'terminals']),
  ],
});

/** No unit is taken to trip at less, nor advised to; amperes. Source: own-choice. */
export const LEAST_LIMIT = 0.3;

/** What is printed on a power stage, and how its rail voltage comes about. */
const stageFields = (prefix: string): readonly Field[] => [
  number(`${prefix}-limit`, 'current', LEAST_LIMIT, 30),
  choice(`${prefix}-input`, ['dc', 'ac', 'either']),
  number(`${prefix}-input-volts`, 'voltage', 3, 60, { range: true }),
  choice(`${prefix}-plug`, ['centre-plus', 'centre-minus', 'terminals']),
];

const railFields = (prefix: string): readonly Field[] => [
  choice(`${prefix}-rails`, ['follows', 'set', 'converter']),
  number(`${prefix}-rail-volts`, 'voltage', 5, 30, { when: { field: `${prefix}-rails`, is: ['set', 'converter'] } }),
];

/** The districts beyond that of the command station, by letter. */
export const FURTHER_DISTRICTS = ['b', 'c', 'd', 'e', 'f'] as const;
/** Traffic is told in tenths: of ten trains under way, so many are usually here. Source: own-choice. */
const TENTHS = 10;

/** What a divided layout has: version 1 of the sheet. The first district is that of the command station, whose labels are asked before. */
const ownDistricts: readonly Field[] = [
  number('districts', 'count', 1, FURTHER_DISTRICTS.length + 1, { assume: 1 }),
  number('traffic-a', 'count', 0, TENTHS, { when: { field: 'districts', above: 1 } }),
  ...FURTHER_DISTRICTS.flatMap((letter, at): Field[] => {
    const when = { field: 'districts', above: at + 1 };
    return [
      number(`limit-${letter}`, 'current', LEAST_LIMIT, 30, { when }),
      number(`amps-${letter}`, 'current', 0.1, 40, { when, volts: 'supply-volts' }),
      number(`traffic-${letter}`, 'count', 0, TENTHS, { when }),
    ];
  }),
];

/** What a planned layout is to have: all planned districts alike, and what nobody knows yet like the unit that there is. */
const plannedDistricts: readonly Field[] = [
  number('plan-districts', 'count', 2, FURTHER_DISTRICTS.length + 1, { assume: 2 }),
  number('plan-limit', 'current', LEAST_LIMIT, 30),
  number('plan-amps', 'current', 0.1, 40, { volts: 'supply-volts' }),
  number('plan-busiest', 'count', 1, TENTHS),
];

/** The least and the most that each field takes. Source: own-choice. */
export const QUESTIONS = {
  system: {
    id: 'system',
    fields: [choice('system', ['two-rail', 'three-rail', 'battery', 'analogue'], { assume: 'two-rail' })],
  },
  aim: { id: 'aim', fields: [choice('aim', ['enough', 'shorts'], { assume: 'enough' })] },
  scale: { id: 'scale', fields: [choice('scale', ['z', 'n', 'tt', 'h0', '0', '1'], { assume: 'h0' })] },
  draw: { id: 'draw', fields: [choice('draw', ['count', 'measured'], { assume: 'count' })] },
  fleet: {
    id: 'fleet',
    fields: [
      number('modern', 'count', 0, MOST_TRAINS, { assume: 3 }),
      number('older', 'count', 0, MOST_TRAINS, { assume: 0 }),
    ],
  },
  sound: {
    id: 'sound',
    fields: [
      number('sound', 'count', 0, MOST_TRAINS, { assume: 0 }),
      number('stored', 'count', 0, MOST_TRAINS, { assume: 0 }),
    ],
  },
  measured: {
    id: 'measured',
    fields: [
      number('trains', 'count', 1, MOST_TRAINS, { assume: 3 }),
      number('running', 'current', 0.005, 10, { range: true }),
      number('standing', 'current', 0, 5, { assume: 0.04 }),
    ],
  },
  moving: { id: 'moving', fields: [number('moving', 'count', 0, MOST_TRAINS)] },
  evening: { id: 'evening', fields: [number('evening', 'hours', 0.05, 24, { assume: 1 / 6 })] },
  boosters: { id: 'boosters', fields: [number('boosters', 'count', 0, 20, { assume: 0 })] },
  coaches: {
    id: 'coaches',
    fields: [
      number('coaches', 'count', 0, 500, { assume: 0 }),
      choice('lamps', ['filament', 'led'], { assume: 'filament', when: { field: 'coaches', above: 0 } }),
    ],
  },
  accessories: { id: 'accessories', fields: [number('accessories', 'count', 0, 500, { assume: 0 })] },
  'supply-label': supplyLabel('supply-label', 'supply'),
  'unit-label': { id: 'unit-label', label: 'unit', fields: stageFields('unit') },
  rails: { id: 'rails', fields: railFields('unit') },
  'own-use': {
    id: 'own-use',
    fields: [
      choice('own-use', ['bare', 'handhelds', 'many', 'measured'], { assume: 'bare' }),
      number('idle', 'current', 0, 5, { assume: 0.2, when: { field: 'own-use', is: ['measured'] } }),
    ],
  },
  'station-label': {
    id: 'station-label',
    label: 'unit',
    fields: [...stageFields('station'), ...railFields('station')],
  },
  'booster-label': {
    id: 'booster-label',
    label: 'unit',
    fields: [...stageFields('booster'), ...railFields('booster')],
  },
  'supply-one': supplyLabel('supply-one', 'one'),
  'supply-two': supplyLabel('supply-two', 'two'),
  'wire-need': {
    id: 'wire-need',
    fields: [
      number('wire-volts', 'voltage', 5, 30),
      number('wire-trip', 'current', 0.3, 30, { volts: 'wire-volts' }),
      number('wire-amps', 'current', 0.05, 30, { volts: 'wire-volts' }),
    ],
  },
  bus: {
    id: 'bus',
    fields: [number('bus-length', 'length', 0.1, 200), number('bus-wire', 'area', 0.05e-6, 10e-6)],
  },
  track: {
    id: 'track',
    fields: [
      number('track-length', 'length', 0.1, 200),
      choice('feed-by', ['bus', 'pair'], { assume: 'bus' }),
      choice('track-shape', ['ends', 'oval'], { assume: 'ends', when: { field: 'feed-by', is: ['pair'] } }),
    ],
  },
  'bus-shape': {
    id: 'bus-shape',
    fields: [
      choice('bus-shape', ['end', 'middle', 'ring'], { assume: 'end' }),
      number('bus-way', 'length', 0.1, 200, { when: { field: 'bus-shape', is: ['middle', 'ring'] } }),
    ],
  },
  feeders: {
    id: 'feeders',
    fields: [
      number('feeder-count', 'count', 1, 200),
      number('feeder-length', 'length', 0.02, 5, { assume: 0.3 }),
      number('feeder-wire', 'area', 0.05e-6, 4e-6),
    ],
  },
  'rail-kind': {
    id: 'rail-kind',
    fields: [
      choice('rail-kind', [
        'code-100',
        'code-83',
        'code-80',
        'code-70',
        'code-55',
        'brass',
        'steel',
        'large-brass',
        'large-nickel-silver',
        'large-steel',
        'measured',
      ]),
      number('rail-ohms', 'resistance-per-metre', 0.001, 1, {
        assume: 0.108,
        when: { field: 'rail-kind', is: ['measured'] },
      }),
      choice('joints', ['fed', 'soldered', 'plain', 'sectional']),
    ],
  },
  divided: { id: 'divided', fields: [choice('divided', ['whole', 'divided', 'planned'], { assume: 'whole' })] },
  'our-districts': { id: 'our-districts', fields: ownDistricts },
  plan: { id: 'plan', fields: plannedDistricts },
  shape: {
    id: 'shape',
    fields: [
      choice('shape', ['oval', 'oval-passing', 'double-oval', 'out-and-back', 'point-to-point', 'modules'], {
        assume: 'oval',
      }),
    ],
  },
  'both-amps': {
    id: 'both-amps',
    fields: [number('station-amps', 'current', 0.1, 40), number('booster-amps', 'current', 0.1, 40)],
  },
  busier: { id: 'busier', fields: [choice('busier', ['station', 'booster', 'same'], { assume: 'same' })] },
} as const satisfies Readonly<Record<string, Question>>;

export type QuestionId = keyof typeof QUESTIONS;
