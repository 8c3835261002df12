// What nobody has told, at its worst and at its best: whether the verdict on the wiring stands either way, and what it depends on.
import type { Scale } from '../../engine/index.ts';
import { DRAWS, SCALE_RAILS, SCALE_RANGE } from '../../engine/index.ts';
import type { Answer, Answers } from '../planning/index.ts';
import { Reader } from '../planning/index.ts';
import { TRAINS_FAR_AWAY } from './laid.ts';

/** What may be taken where a field is not answered: what is hardest on the wiring, and what is easiest. */
interface Ends {
  readonly worst: Answer;
  readonly best: Answer;
}

const choice = (option: string): Answer => ({ kind: 'choice', option });
const amount = (value: number): Answer => ({ kind: 'number', span: { from: value, to: value } });

/** The best rail that is common at a scale. Source: common-practice. */
const BEST_RAIL: Readonly<Record<Scale, string>> = {
  z: 'code-55',
  n: 'code-80',
  tt: 'code-100',
  h0: 'code-100',
  '0': 'code-100',
  '1': 'large-brass',
};
/** Feeders that people lay, thin and thick, square metres. Source: common-practice. */
const FEEDER_AREAS = { worst: 0.14e-6, best: 1e-6 } as const;
/** The closest that people lay feeders, metres. Source: common-practice. */
const CLOSEST = 0.5;

/** Fields that need not be told to get a verdict, in the order in which they are asked. */
export type Untold =
  | 'wire-volts'
  | 'wire-trip'
  | 'wire-amps'
  | 'track-shape'
  | 'bus-shape'
  | 'bus-way'
  | 'feeder-count'
  | 'feeder-wire'
  | 'rail-kind'
  | 'joints';

function endsOf(scale: Scale, track: number, way: number): Readonly<Record<Untold, Ends>> {
  const { trip, modern, older } = DRAWS[scale];
  const volts = SCALE_RANGE[scale];
  return {
    'wire-volts': { worst: amount(volts.from), best: amount(volts.to) },
    'wire-trip': { worst: amount(trip.to), best: amount(trip.from) },
    'wire-amps': { worst: amount(TRAINS_FAR_AWAY * older.to), best: amount(modern.to) },
    'track-shape': { worst: choice('ends'), best: choice('oval') },
    'bus-shape': { worst: choice('end'), best: choice('ring') },
    // As far as it was along the bus from its end, or with the unit where the bus begins.
    'bus-way': { worst: amount(way), best: amount(track / 2) },
    'feeder-count': { worst: amount(1), best: amount(Math.min(200, Math.ceil(track / CLOSEST))) },
    'feeder-wire': { worst: amount(FEEDER_AREAS.worst), best: amount(FEEDER_AREAS.best) },
    'rail-kind': { worst: choice(SCALE_RAILS[scale].thinnest), best: choice(BEST_RAIL[scale]) },
    joints: { worst: choice('sectional'), best: choice('fed') },
  };
}

const PAIR_HAS_NOT: readonly Untold[] = ['bus-shape', 'bus-way', 'feeder-count', 'feeder-wire'];

const UNTOLD: readonly Untold[] = [
  'wire-volts',
  'wire-trip',
  'wire-amps',
  'track-shape',
  'bus-shape',
  'bus-way',
  'feeder-count',
  'feeder-wire',
  'rail-kind',
  'joints',
];

/** Which of these nobody has told, of those that matter to how the track is fed. */
export function untold(answers: Answers): Untold[] {
  const reader = new Reader(answers);
  const pair = reader.option('feed-by') === 'pair';
  const atEnd = answers['bus-shape']?.kind === 'choice' && reader.option('bus-shape') === 'end';
  return UNTOLD.filter((id) => {
    if (id === 'bus-way' && atEnd) return false;
    if (pair ? PAIR_HAS_NOT.includes(id) : id === 'track-shape') return false;
    return answers[id] === undefined || answers[id].kind === 'unknown';
  });
}

/** The answers with some fields that nobody has told at their worst or best. */
export function taking(answers: Answers, fields: readonly Untold[], end: keyof Ends): Answers {
  const reader = new Reader(answers);
  const track = reader.number('track-length') ?? 1;
  const ends = endsOf(reader.scale(), track, reader.number('bus-length') ?? track);
  return { ...answers, ...Object.fromEntries(fields.map((id) => [id, ends[id][end]])) };
}

export interface Sure {
  /** Whether the wiring will do, whatever nobody has told; or what of that decides. */
  readonly kind: 'surely' | 'depends' | 'surely-not';
  /** What decides, the one that does so alone first; empty where nothing does. */
  readonly on: readonly Untold[];
}

/** How sure it is that wiring described like this does (`does`), or does not. */
export function sureOf(answers: Answers, does: (answers: Answers) => boolean): Sure {
  const now = does(answers);
  const fields = untold(answers);
  const other = now ? 'worst' : 'best';
  const sure = { kind: now ? 'surely' : 'surely-not', on: [] } as const;
  if (fields.length === 0 || does(taking(answers, fields, other)) === now) return sure;
  const alone = fields.filter((id) => does(taking(answers, [id], other)) !== now);
  return { kind: 'depends', on: alone.length > 0 ? alone : fields };
}
