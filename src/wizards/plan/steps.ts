// The work of a plan, step by step, in the order that the trade keeps: read, off, label, list, cut, feed, join up, prove dead, prove
// alive, and only then trains. What a step makes hands do brings its dangers (src/wizards/safety).

import type { Act } from '../safety/index.ts';
import type { Sheet } from '../sheet/index.ts';
import type { Power } from './power.ts';
import type { Track } from './track.ts';
import { isBoundary, isFedApart, runsOf } from './track.ts';
import type { DistrictWires } from './wires.ts';

interface StepKind {
  readonly acts: readonly Act[];
  /** A page that tells the job in its own steps. */
  readonly job?: 'gap-both-rails' | 'lay-a-feeder' | 'connect-a-booster' | 'prove-the-gap' | 'load-test-and-coin';
}

/** Every step that a plan may have, in the order of the trade. Source: common-practice. */
export const STEP_KINDS = {
  'read-labels': { acts: ['handles-a-supply', 'chooses-a-supply'] },
  'power-off': { acts: ['handles-a-supply', 'touches-what-is-off'] },
  'photograph-and-label': { acts: [] },
  'name-the-rails': { acts: [] },
  'list-paths': { acts: ['meets-an-old-controller'] },
  'cut-gaps': { acts: ['cuts-or-files-rail', 'pulls-joiners'], job: 'gap-both-rails' },
  'program-apart': { acts: ['cuts-or-files-rail', 'strips-wire'] },
  'lay-bus': { acts: ['strips-wire'] },
  'twist-bus': { acts: [] },
  'feed-gaps': { acts: ['solders', 'strips-wire'], job: 'lay-a-feeder' },
  'accessory-bus': { acts: ['strips-wire'] },
  breakers: { acts: ['strips-wire'] },
  'reversing-device': { acts: ['strips-wire'] },
  'turntable-device': { acts: ['strips-wire'] },
  'fit-fuses': { acts: ['handles-a-supply', 'strips-wire'] },
  'feed-without-capacitor': { acts: ['touches-what-is-off', 'strips-wire'] },
  'common-wire': { acts: ['fits-a-reference-wire'] },
  'earth-pins': { acts: ['meets-an-earth-pin'] },
  'place-supplies': { acts: ['handles-a-supply', 'has-two-supplies', 'chooses-a-supply'] },
  'main-switch': { acts: ['handles-a-supply'] },
  'set-units': { acts: ['sets-what-trips'] },
  'control-cable': { acts: ['plugs-the-control-cable', 'touches-what-is-off'], job: 'connect-a-booster' },
  'prove-dead': {
    acts: ['plugs-a-supply', 'switches-on', 'touches-what-is-off', 'uses-a-lamp-as-load'],
    job: 'prove-the-gap',
  },
  'each-alone': { acts: ['plugs-a-supply', 'switches-on'] },
  'prove-phase': { acts: ['uses-a-lamp-as-load', 'touches-what-is-live'], job: 'prove-the-gap' },
  'prove-volts': { acts: ['measures-volts'] },
  'load-test': { acts: ['puts-a-resistor-on-the-rails', 'takes-a-meter'], job: 'load-test-and-coin' },
  coin: { acts: ['puts-a-coin-on-the-rails', 'meets-a-weak-fault'], job: 'load-test-and-coin' },
  'prove-loops': { acts: ['sends-a-train-over-the-gap', 'stands-across-the-gap'] },
  'slow-crossing': { acts: ['sends-a-train-over-the-gap', 'stands-across-the-gap'] },
  'run-traffic': { acts: ['lets-it-run'] },
  'write-down': { acts: [] },
} as const satisfies Readonly<Record<string, StepKind>>;

export type StepId = keyof typeof STEP_KINDS;

const isStep = (id: string): id is StepId => Object.hasOwn(STEP_KINDS, id);
const ORDER: readonly StepId[] = Object.keys(STEP_KINDS).filter(isStep);

/** The phases of the work, each with the step that it begins with. */
const PHASES = {
  before: 'read-labels',
  track: 'cut-gaps',
  units: 'fit-fuses',
  prove: 'prove-dead',
  run: 'prove-loops',
} as const satisfies Readonly<Record<string, StepId>>;

export type Phase = keyof typeof PHASES;

/** The last phase that has begun by this step. */
function phaseOf(step: StepId): Phase {
  let phase: Phase = 'before';
  for (const [name, first] of PHASE_LIST) if (ORDER.indexOf(first) <= ORDER.indexOf(step)) phase = name;
  return phase;
}

const isPhase = (name: string): name is Phase => Object.hasOwn(PHASES, name);
const PHASE_LIST: readonly (readonly [Phase, StepId])[] = Object.keys(PHASES)
  .filter(isPhase)
  .map((name) => [name, PHASES[name]] as const);

export interface PlanStep {
  readonly id: StepId;
  readonly phase: Phase;
  readonly acts: readonly Act[];
  readonly job: StepKind['job'] | undefined;
}

export interface Built {
  readonly sheet: Sheet;
  readonly track: Track;
  readonly power: Power;
  readonly wires: readonly DistrictWires[];
  /** Whether fuses stand on the list of parts. */
  readonly fuses: boolean;
}

/** The steps that this layout asks for. Where a plan has to be put right first, those that join up power are left out. */
export function stepsOf({ sheet, track, power, wires, fuses }: Built): PlanStep[] {
  const { stages, supplies } = sheet;
  const boundaries = track.gaps.filter(isBoundary);
  const loops = runsOf(sheet, 'reversing').length > 0;
  const bridges = track.gaps.some(({ why }) => why === 'turntable');
  const fedApart = track.gaps.some(isFedApart);
  const mayJoin = mayBePowered(power);
  const wanted: Readonly<Record<StepId, boolean>> = {
    'read-labels': true,
    'power-off': true,
    'photograph-and-label': true,
    'name-the-rails': true,
    'list-paths': track.gaps.length > 0,
    'cut-gaps': track.gaps.some(({ railsToCut, why }) => railsToCut > 0 && why !== 'programming'),
    'program-apart': runsOf(sheet, 'programming').length > 0,
    'lay-bus': wires.length > 0,
    'twist-bus': wires.some(({ long }) => long),
    'feed-gaps': wires.length > 0,
    'accessory-bus': (sheet.accessories ?? 0) > 0 || sheet.accessoryBus !== undefined,
    breakers: stages.some(({ breakers = 0 }) => breakers > 0),
    'reversing-device': loops,
    'turntable-device': bridges,
    'fit-fuses': fuses,
    'feed-without-capacitor': wires.length > 0,
    'common-wire': boundaries.length > 0,
    'earth-pins': supplies.some(({ earthed }) => earthed !== false),
    'place-supplies': mayJoin,
    'main-switch': mayJoin,
    'set-units': mayJoin,
    'control-cable': mayJoin && boundaries.length > 0,
    // What lies before the gap is powered for it, from a unit that is set and has its signal.
    'prove-dead': mayJoin && track.gaps.length > 0,
    'each-alone': mayJoin,
    'prove-phase': mayJoin && fedApart,
    'prove-volts': mayJoin && boundaries.length > 0,
    'load-test': mayJoin,
    coin: mayJoin,
    'prove-loops': mayJoin && (loops || bridges),
    'slow-crossing': mayJoin && fedApart,
    'run-traffic': mayJoin,
    'write-down': true,
  };
  return ORDER.filter((id) => wanted[id]).map((id): PlanStep => {
    const { acts, job }: StepKind = STEP_KINDS[id];
    return { id, phase: phaseOf(id), acts, job };
  });
}

/** With these nothing is plugged in before they are put right; nor is it while nothing is judged. */
export const STOPS: readonly Power['remedy'][] = [
  'not-permitted',
  'rails-too-high',
  'rails-too-low',
  'lower-trip',
  'cannot-trip',
];

/** Whether anything may be plugged in by this plan. */
export const mayBePowered = ({ verdict, remedy }: Pick<Power, 'verdict' | 'remedy'>): boolean =>
  verdict !== 'unknown' && !STOPS.includes(remedy);
