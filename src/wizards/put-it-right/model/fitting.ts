// What goes with what people come with: acts that a complaint's first line forbids, checks that make no sense there, and what comes first.
import type { Precondition, Source } from '../../../engine/index.ts';
import type { PowerAct as Act } from '../../safety/index.ts';
import { ACTS_OF } from './acts.ts';
import type { CheckId } from './checks/index.ts';
import type { OpeningId } from './openings.ts';
import { OPENINGS } from './openings.ts';

export interface Forbidden {
  readonly act: Act;
  /** Forbidden only until an answer has shown this. */
  readonly until?: Precondition;
}

const NOTHING: readonly Forbidden[] = [];

/** What the first line of each complaint forbids. An empty list: the line asks for something, and forbids nothing that a check could do. */
export const FORBIDS: Readonly<Record<OpeningId, readonly Forbidden[]>> = {
  'stops-at-gap': [{ act: 'stands-across-the-gap' }],
  'trips-at-gap': [
    { act: 'stands-across-the-gap' },
    { act: 'sends-a-train-over-the-gap' },
    { act: 'brings-it-about-again' },
  ],
  'shuts-down-after-swap': [{ act: 'switches-on', until: 'labels-read' }],
  'trips-with-traffic': NOTHING,
  'trips-at-power-on': [{ act: 'puts-a-vehicle-on-the-track' }],
  'ignores-commands': [{ act: 'runs-trains-in-the-new-part' }, { act: 'stands-across-the-gap' }],
  'slow-far-away': [{ act: 'adds-power', until: 'nothing-got-hot' }],
  'jerks-at-gap': [{ act: 'stands-across-the-gap' }],
  'accessories-misbehave': NOTHING,
  'short-not-noticed': [{ act: 'switches-on', until: 'nothing-got-hot' }],
  'loop-trips': [
    { act: 'stands-across-the-gap' },
    { act: 'sends-a-train-over-the-gap' },
    { act: 'brings-it-about-again' },
  ],
  'still-runs-past-gap': [{ act: 'feeds-the-new-part' }],
  'trips-at-one-spot': NOTHING,
  'cuts-out-after-a-while': NOTHING,
  'nothing-works': NOTHING,
  'one-locomotive-only': NOTHING,
  'stops-at-a-spot': NOTHING,
  'starts-by-itself': NOTHING,
  'dead-since-a-short': [{ act: 'switches-on', until: 'nothing-got-hot' }],
  'empty-shown-occupied': NOTHING,
  'now-and-then': NOTHING,
  'handhelds-dead': NOTHING,
  'since-rewired': [{ act: 'stands-across-the-gap' }],
  'all-slow': [{ act: 'adds-power', until: 'nothing-got-hot' }],
  'trips-when-set-on': [{ act: 'brings-it-about-again' }],
  'programming-fails': NOTHING,
  'short-in-mid-run': [{ act: 'brings-it-about-again' }],
  'wrong-one-trips': [{ act: 'switches-on', until: 'nothing-got-hot' }],
  'house-protection-goes': [{ act: 'switches-on' }],
  tingles: [{ act: 'switches-on' }],
};

/** With the far part not yet connected nothing can be asked of its unit, its volts or its trains. */
const BEFORE_FEEDING: ReadonlySet<string> = new Set<CheckId>([
  'danger-now',
  'which-vehicles',
  'last-change',
  'follow-every-wire',
  'joint-by-hand',
  'list-every-path',
  'card-through-gaps',
  'jumper-test',
  'coach-in-far-part',
  'other-locomotive-runs-on',
  'unplug-across-boundary',
  'follow-the-red-rail',
  'throw-turnouts',
  'unclip-feeders',
  'uncouple',
  'meter-across-the-gap',
]);

/** Asked straight after danger: after an exchange, whether the new one may be plugged in at all; of a loop, triangle or turntable, which. */
const LEADS: Readonly<Partial<Record<OpeningId, CheckId>>> = {
  'shuts-down-after-swap': 'read-labels',
  'loop-trips': 'which-places',
};

/** Titles that say what happens. */
const SAYS_WHAT: ReadonlySet<OpeningId> = new Set(OPENINGS.filter(({ says }) => 'trouble' in says).map(({ id }) => id));

/** Titles that say when it happens in the very words of an answer. */
const SAYS_WHEN: ReadonlySet<string> = new Set<OpeningId>(['stops-at-a-spot', 'trips-at-one-spot']);

/** Whether a title says the one sign that a check asks of people's memory, and says it in one value. */
function isSaid(opening: OpeningId, { reads, source }: Asked): boolean {
  const says: Readonly<Record<string, readonly string[]>> = OPENINGS.find(({ id }) => id === opening)?.says ?? {};
  return source === 'memory' && typeof reads === 'string' && says[reads]?.length === 1;
}

interface Asked {
  readonly id: CheckId;
  readonly needs: readonly Precondition[];
  readonly reads: string | readonly string[];
  readonly source: Source;
}

interface Fitting {
  readonly withheld: readonly string[];
  readonly needs: Readonly<Record<string, readonly Precondition[]>>;
  readonly lead?: string;
}

/** What an opening withholds, and what it asks to be shown first. */
export function fittingOf(opening: OpeningId, checks: readonly Asked[]): Fitting {
  const withheld: string[] = [];
  const needs: Record<string, readonly Precondition[]> = {};
  for (const check of checks) {
    const { id } = check;
    const met = FORBIDS[opening].filter(({ act }) => ACTS_OF[id].includes(act));
    // What the title has said already is not asked again in other words.
    const said =
      isSaid(opening, check) ||
      (id === 'what-happens' && SAYS_WHAT.has(opening)) ||
      (id === 'when-it-happens' && SAYS_WHEN.has(opening));
    const unfit = said || (opening === 'still-runs-past-gap' && !BEFORE_FEEDING.has(id));
    if (unfit || met.some(({ until }) => until === undefined)) withheld.push(id);
    const until = met.flatMap((one) => (one.until === undefined ? [] : [one.until]));
    if (until.length > 0) needs[id] = until;
  }
  const lead = LEADS[opening];
  return { withheld, needs, ...(lead === undefined ? {} : { lead }) };
}
