// Two layouts to look at, both invented: a club's with a reversing loop, a hidden yard and supplies that differ, and a beginner's oval.
import { grown, laidOut, type Meeting, meet, parted, type Stretch, stretch } from './laid.ts';
import { SHAPES } from './shapes.ts';
import { SHEET_FORM, type Sheet, type SheetStage } from './sheet.ts';

const UP_LINE: readonly Stretch[] = [
  stretch('up-left-front', 1.6, 1, 8),
  stretch('up-left-back', 1.6, 1, 0),
  stretch('up-back-left', 2.6, 4, 0),
  stretch('up-back-right', 2.6, 7, 0),
  stretch('up-right-back', 1.6, 12, 0),
  stretch('up-right-front', 1.6, 12, 8),
];

const DOWN_LINE: readonly Stretch[] = [
  stretch('down-left-front', 1.4, 2, 7),
  stretch('down-left-back', 1.4, 2, 1),
  stretch('down-right-back', 1.4, 11, 1),
  stretch('down-right-front', 1.4, 11, 7),
];

const HIDDEN_YARD: readonly Stretch[] = [
  stretch('yard-left-1', 0.3, 3, 1, 'turnout', 'hidden'),
  stretch('yard-left-2', 0.3, 4, 2, 'turnout', 'hidden'),
  stretch('yard-left-3', 0.3, 5, 3, 'turnout', 'hidden'),
  stretch('hidden-1', 2.8, 6, 1, 'hidden'),
  stretch('hidden-2', 2.6, 6, 2, 'hidden'),
  stretch('hidden-3', 2.4, 6, 3, 'hidden'),
  stretch('hidden-4', 2.4, 6, 4, 'hidden'),
  stretch('yard-right-3', 0.3, 7, 3, 'turnout', 'hidden'),
  stretch('yard-right-2', 0.3, 8, 2, 'turnout', 'hidden'),
  stretch('yard-right-1', 0.3, 9, 1, 'turnout', 'hidden'),
];

const STATION: readonly Stretch[] = [
  stretch('left-crossover', 0.6, 3, 7.5, 'turnout'),
  stretch('down-left-turnout', 0.3, 4, 7, 'turnout'),
  stretch('up-left-turnout', 0.3, 4, 8, 'turnout'),
  stretch('shed-turnout', 0.3, 5, 6, 'turnout'),
  { ...stretch('platform-1', 2.4, 6, 6, 'station'), fixedAmps: 0.1 },
  stretch('platform-2', 2.8, 6, 7, 'station'),
  stretch('platform-3', 2.8, 6, 8, 'station'),
  stretch('platform-4', 2.4, 6, 9, 'station'),
  stretch('down-right-turnout', 0.3, 8, 7, 'turnout'),
  stretch('up-right-turnout', 0.3, 8, 8, 'turnout'),
  stretch('right-crossover', 0.6, 9, 7.5, 'turnout'),
  stretch('branch-turnout', 0.3, 10, 8, 'turnout'),
  stretch('shed-lead', 0.8, 4, 5, 'yard'),
  stretch('turntable', 0.35, 3, 5, 'turntable'),
];

const BRANCH: readonly Stretch[] = [
  stretch('branch-bridge', 1.2, 11, 10, 'lift-out'),
  stretch('branch-line', 2.4, 12, 10),
  stretch('halt-left-turnout', 0.3, 13, 10, 'turnout'),
  stretch('halt-main', 1.4, 14, 10, 'stop'),
  stretch('halt-loop', 1.4, 14, 11, 'stop'),
  stretch('halt-right-turnout', 0.3, 15, 10, 'turnout'),
  stretch('loop-turnout', 0.3, 16, 10, 'turnout'),
  stretch('branch-loop', 3.2, 17, 10, 'reversing'),
];

const MEETINGS: readonly Meeting[] = [
  meet('left-crossover', 'up-left-front', 1),
  meet('up-left-front', 'up-left-back', 2),
  meet('up-left-back', 'up-back-left', 2),
  meet('up-back-left', 'up-back-right', 2),
  meet('up-back-right', 'up-right-back', 2),
  meet('up-right-back', 'up-right-front', 2),
  meet('up-right-front', 'branch-turnout', 0),
  meet('branch-turnout', 'right-crossover', 1),
  meet('left-crossover', 'down-left-front', 1),
  meet('down-left-front', 'down-left-back', 2),
  meet('down-left-back', 'yard-left-1', 3),
  meet('yard-left-1', 'hidden-1', 3),
  grown('yard-left-1', 'yard-left-2'),
  meet('yard-left-2', 'hidden-2', 3),
  grown('yard-left-2', 'yard-left-3'),
  meet('yard-left-3', 'hidden-3', 3),
  meet('yard-left-3', 'hidden-4', 3),
  meet('hidden-1', 'yard-right-1', 3),
  meet('hidden-2', 'yard-right-2', 3),
  meet('hidden-3', 'yard-right-3', 3),
  meet('hidden-4', 'yard-right-3', 3),
  grown('yard-right-3', 'yard-right-2'),
  grown('yard-right-2', 'yard-right-1'),
  meet('yard-right-1', 'down-right-back', 3),
  meet('down-right-back', 'down-right-front', 2),
  meet('down-right-front', 'right-crossover', 1),
  grown('left-crossover', 'down-left-turnout'),
  grown('left-crossover', 'up-left-turnout'),
  meet('down-left-turnout', 'shed-turnout', 2),
  meet('down-left-turnout', 'platform-2', 1),
  meet('shed-turnout', 'platform-1', 1),
  meet('shed-turnout', 'shed-lead', 0),
  parted('shed-lead', 'turntable'),
  meet('up-left-turnout', 'platform-3', 1),
  meet('up-left-turnout', 'platform-4', 1),
  meet('platform-1', 'down-right-turnout', 1),
  meet('platform-2', 'down-right-turnout', 1),
  meet('platform-3', 'up-right-turnout', 1),
  meet('platform-4', 'up-right-turnout', 1),
  grown('down-right-turnout', 'right-crossover'),
  grown('up-right-turnout', 'right-crossover'),
  meet('branch-turnout', 'branch-bridge', 0),
  meet('branch-bridge', 'branch-line', 0),
  meet('branch-line', 'halt-left-turnout', 0),
  meet('halt-left-turnout', 'halt-main', 1),
  meet('halt-left-turnout', 'halt-loop', 1),
  meet('halt-main', 'halt-right-turnout', 1),
  meet('halt-loop', 'halt-right-turnout', 1),
  meet('halt-right-turnout', 'loop-turnout', 1),
  parted('loop-turnout', 'branch-loop'),
  parted('loop-turnout', 'branch-loop'),
];

/** Labels and settings of units that are alike but for their limit: 14 V on every rail. */
const unit = (id: string, kind: SheetStage['kind'], amps: number, supply: string): SheetStage => ({
  id,
  kind,
  limitAmps: amps,
  tripAmps: amps,
  tripSeconds: 0.3,
  comesBack: 'by-itself',
  rails: 'set',
  railVolts: 14,
  ownUseAmps: kind === 'station' ? 0.2 : 0.05,
  inputKind: 'dc',
  inputVolts: 19,
  leastInputVolts: 14,
  plug: 'centre-plus',
  common: 'isolated',
  supply,
});

const idsOf = (...groups: readonly (readonly Stretch[])[]): string[] => groups.flat().map(({ id }) => id);

const STATION_LIMIT = 4;
const YARD_LIMIT = 5;
const BRANCH_LIMIT = 3;

/** The club layout: two lines round the room, a hidden yard, a station, and a branch with a loop at its end. */
export const DEMO_CLUB: Sheet = {
  form: 'both-rails-layout-sheet',
  version: SHEET_FORM,
  name: '',
  ...laidOut('h0', [...UP_LINE, ...DOWN_LINE, ...HIDDEN_YARD, ...STATION, ...BRANCH], MEETINGS),
  trains: [
    { kind: 'modern', count: 8 },
    { kind: 'modern', count: 4, sound: true },
    { kind: 'older', count: 2 },
  ],
  moving: 6,
  eveningHours: 3,
  coaches: 12,
  lamps: 'led',
  accessories: 0,
  stored: 4,
  accessoryBus: 'own',
  stages: [
    { ...unit('station', 'station', STATION_LIMIT, 'supply-1'), feeds: ['platform-2', 'platform-3'], breakers: 2 },
    { ...unit('booster-1', 'booster', YARD_LIMIT, 'supply-2'), feeds: ['hidden-1'] },
    unit('booster-2', 'booster', BRANCH_LIMIT, 'supply-3'),
    { ...unit('booster-3', 'booster', BRANCH_LIMIT, 'supply-4'), feeds: ['halt-main'], autoReversing: false },
  ],
  supplies: [
    { id: 'supply-1', kind: 'dc', volts: 16, amps: 5, plug: 'centre-plus', earthed: false },
    { id: 'supply-2', kind: 'dc', volts: 18, amps: 6, plug: 'centre-plus', earthed: false },
    { id: 'supply-3', kind: 'dc', volts: 16, amps: 4, plug: 'centre-plus', earthed: false },
    { id: 'supply-4', kind: 'dc', volts: 15, amps: 3.5, plug: 'centre-plus', earthed: true },
  ],
  wiring: {
    rail: 'code-83',
    busMetres: 9,
    busSquareMillimetres: 2.5,
    feederMetres: 0.3,
    feederSquareMillimetres: 0.5,
    metresBetweenFeeders: 2,
  },
  districts: [
    { stage: 'station', sections: idsOf(STATION) },
    { stage: 'booster-1', sections: idsOf(DOWN_LINE, HIDDEN_YARD) },
    { stage: 'booster-2', sections: idsOf(UP_LINE) },
    { stage: 'booster-3', sections: idsOf(BRANCH) },
  ],
};

/** A beginner's oval with six trains, for which a unit and a supply of 3 A and another of 2 A are there. */
export const DEMO_OVAL: Sheet = {
  ...SHAPES['oval-passing'](6),
  stages: [unit('station', 'station', 3, 'supply-1'), unit('booster-1', 'booster', 2, 'supply-2')],
  supplies: [
    { id: 'supply-1', kind: 'dc', volts: 16, amps: 3.5, plug: 'centre-plus' },
    { id: 'supply-2', kind: 'dc', volts: 16, amps: 2.5, plug: 'centre-plus' },
  ],
};
