// What a check makes people do, and what a complaint's first line forbids: side by side, so that one look compares them.
// A check that asks from memory does nothing. The acts themselves: src/wizards/safety. See decisions 009 and 017.
import type { Precondition } from '../../../engine/index.ts';
import type { PowerAct as Act } from '../../safety/index.ts';
import type { CheckId, ComplaintId } from './rows.ts';

const on = 'switches-on';
const over = 'sends-a-train-over-the-gap';
const across = 'stands-across-the-gap';
const again = 'brings-it-about-again';
const runs = 'runs-trains-in-the-new-part';
const vehicle = 'puts-a-vehicle-on-the-track';
const feeds = 'feeds-the-new-part';
const more = 'adds-power';

/** What each check makes people do. */
export const ACTS_OF: Readonly<Record<CheckId, readonly Act[]>> = {
  'danger-now': [],
  'when-it-happens': [],
  'what-goes-dark': [],
  'how-it-comes-back': [],
  'which-vehicles': [],
  'which-places': [],
  'last-change': [],
  'booster-lamp': [],
  'command-display': [],
  'supply-lamp': [],
  'read-labels': [],
  'which-case-hot': [],
  'put-supplies-back': [on, feeds],
  'borrow-supply': [on, feeds, more],
  'feed-from-other-unit': [on, feeds],
  'track-plug-pulled': [on],
  'each-stage-alone': [on, feeds],
  'move-the-plugs': [on, feeds],
  'lamp-on-the-strip': [on, feeds],
  'cool-air': [on, feeds, runs, vehicle],
  'computer-and-earth': [on, feeds],
  'unit-settings': [on],
  'vehicle-in-far-part': [on, feeds, vehicle],
  'same-locomotive-in-old-part': [on, vehicle],
  'look-at-control-cable': [],
  'pull-control-cable': [on, feeds],
  'look-at-feed-piece': [],
  'own-throttle': [on, feeds, vehicle],
  'follow-every-wire': [],
  'look-at-feed-wires': [],
  'longer-locomotive': [on, feeds, over, runs, vehicle],
  'stand-across': [on, feeds, across, vehicle],
  'sparks-at-the-gap': [],
  'two-lamps': [on, feeds],
  'swap-track-wires': [on, feeds],
  'joint-by-hand': [],
  'list-every-path': [],
  'card-through-gaps': [],
  'jumper-test': [on, vehicle],
  'coach-in-far-part': [on, vehicle],
  'other-locomotive-runs-on': [on, over, vehicle],
  'unplug-across-boundary': [on],
  'follow-the-red-rail': [],
  'lamps-at-the-jerk': [],
  'dim-or-snap': [],
  'halve-the-trains': [on, feeds, again, runs, vehicle],
  'move-trains-over': [on, feeds, runs, vehicle],
  'lift-all-vehicles': [on],
  'throw-turnouts': [on],
  'unclip-feeders': [on],
  'lamp-in-series': [on, feeds],
  'clean-a-stretch': [on, runs, vehicle],
  'press-the-joiners': [on, vehicle],
  'bridge-the-joiner': [on, vehicle],
  'clip-power-to-rails': [on, feeds, vehicle],
  'clip-thick-pair': [on, feeds, vehicle],
  'clip-along-the-bus': [on, feeds, vehicle],
  'time-a-metre': [on, feeds, runs, vehicle],
  'varnish-the-frog': [on, vehicle],
  uncouple: [on, over, again, vehicle],
  'turn-the-vehicle': [],
  'load-test': [on, feeds],
  'coin-near': [on, feeds],
  'coin-far': [on, feeds],
  'short-locomotive-through-loop': [],
  'what-reverses': [],
  'does-it-reverse': [],
  'accessories-without-trains': [on],
  'accessory-moment': [],
  'accessories-own-supply': [on],
  'one-accessory-or-all': [],
  'what-else-happens': [],
  'meter-output': [on, feeds],
  'meter-direct-volts': [on, feeds],
  'meter-same-and-diagonal': [on, feeds],
  'meter-two-stages': [on, feeds, vehicle],
  'meter-along-the-way': [on, feeds, vehicle],
  'meter-supply': [on, feeds, again],
  'meter-supply-current': [on, feeds, again, runs, vehicle],
  'meter-ohms-between-rails': [],
  'meter-across-the-gap': [],
};

const isCheck = (id: string): id is CheckId => Object.hasOwn(ACTS_OF, id);

/** The same by any name; a name that is no check does nothing. */
export const powerActsOf = (check: string): readonly Act[] => (isCheck(check) ? ACTS_OF[check] : []);

export interface Forbidden {
  readonly act: Act;
  /** Forbidden only until an answer has shown this. */
  readonly until?: Precondition;
}

/** What the first line of each complaint forbids. An empty list: the line asks for something, and forbids nothing that a check could do. */
export const FORBIDS: Readonly<Record<ComplaintId, readonly Forbidden[]>> = {
  'stops-at-gap': [{ act: across }],
  'trips-at-gap': [{ act: across }, { act: over }, { act: again }],
  'shuts-down-after-swap': [{ act: on, until: 'labels-read' }],
  'trips-with-traffic': [],
  'trips-at-power-on': [{ act: vehicle }],
  'ignores-commands': [{ act: runs }, { act: across }],
  'slow-far-away': [{ act: more, until: 'nothing-got-hot' }],
  'jerks-at-gap': [{ act: across }],
  'accessories-misbehave': [],
  'short-not-noticed': [{ act: on, until: 'nothing-got-hot' }],
  'loop-trips': [{ act: across }, { act: over }, { act: again }],
  'still-runs-past-gap': [{ act: feeds }],
  'trips-at-one-spot': [],
  'cuts-out-after-a-while': [],
};

/** What is forbidden after an answer, in every complaint: nothing that was hot is switched on again for a test. */
export const FORBIDDEN_AFTER: Readonly<Partial<Record<CheckId, Readonly<Record<string, readonly Act[]>>>>> = {
  'danger-now': { 'warm-or-was-hot': [on], 'smoke-heat-or-damage': [on] },
};
