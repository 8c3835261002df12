// What a check makes people do with the power: one typed table. A check that asks from memory does nothing. The acts themselves:
// src/wizards/safety. See decisions 009 and 017.
import type { PowerAct as Act } from '../../safety/index.ts';
import type { CheckId } from './checks/index.ts';

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
  'old-transformer': [],
  'what-happens': [],
  'when-it-happens': [],
  'what-goes-dark': [],
  'how-it-comes-back': [],
  'which-vehicles': [],
  'which-places': [],
  'last-change': [],
  'which-way': [],
  'bridge-half-round': [],
  'which-setting': [],
  'lights-then': [],
  'analogue-one-at-the-gap': [],
  'dim-or-snap': [],
  'sparks-at-the-gap': [],
  'dead-since-a-short': [],
  weather: [],
  'which-case-hot': [],
  'how-it-ran-on': [],
  'how-many-parts': [],
  'how-it-protects': [],
  'what-is-between': [],
  'detectors-there': [],
  'common-wire': [],
  'how-many-rails': [],
  'what-trains': [],
  'how-driven': [],
  'live-frogs': [],
  'what-feeds-accessories': [],
  'booster-lamp': [],
  'command-display': [],
  'breaker-lamp': [],
  'supply-lamp': [],
  'read-labels': [],
  'put-supplies-back': [on, feeds],
  'borrow-supply': [on, feeds, more],
  'exchange-supplies': [on, feeds, again, runs, vehicle],
  'exchange-units': [on, feeds, again, runs, vehicle],
  'feed-from-other-unit': [on, feeds],
  'exchange-cable': [on, feeds],
  'track-plug-pulled': [on],
  'unit-bare': [on],
  'each-stage-alone': [on, feeds],
  'move-the-plugs': [on, feeds],
  'lamp-on-the-strip': [on, feeds],
  'cool-air': [on, feeds, runs, vehicle],
  'computer-and-earth': [on, feeds],
  'unit-settings': [on],
  'count-the-draw': [],
  'vehicle-in-far-part': [on, feeds, vehicle],
  'look-at-control-cable': [],
  'cable-ends-side-by-side': [],
  'pull-control-cable': [on, feeds],
  'look-at-feed-piece': [],
  'own-throttle': [on, feeds, vehicle],
  'follow-every-wire': [],
  'look-at-feed-wires': [],
  'clip-power-to-rails': [on, feeds, vehicle],
  'stand-across': [on, feeds, across, vehicle],
  'two-lamps': [on, feeds],
  'swap-track-wires': [on, feeds],
  'list-every-path': [],
  'card-through-gaps': [],
  'jumper-test': [on, vehicle],
  'coach-in-far-part': [on, vehicle],
  'other-locomotive-runs-on': [on, over, vehicle],
  'unplug-across-boundary': [on],
  'follow-the-red-rail': [],
  'lamps-at-the-jerk': [],
  'joint-by-hand': [],
  'lift-all-vehicles': [on],
  'throw-turnouts': [on],
  'unclip-feeders': [on],
  'lamp-in-series': [on, feeds],
  'blade-in-turnout-cuts': [],
  'varnish-the-frog': [on, vehicle],
  'clean-a-stretch': [on, runs, vehicle],
  'press-the-joiners': [on, vehicle],
  'bridge-the-joiner': [on, vehicle],
  'clip-thick-pair': [on, feeds],
  'clip-along-the-bus': [on, feeds],
  'bright-lamp-along': [on, feeds],
  'lamp-along-the-track': [],
  'piece-by-itself': [on],
  'look-at-every-joiner': [],
  'wires-by-eye': [],
  'look-at-the-frog': [],
  'halve-the-trains': [on, feeds, again, runs, vehicle],
  'move-trains-over': [on, feeds, runs, vehicle],
  'another-one-there': [on, feeds, again, vehicle],
  'longer-locomotive': [on, feeds, over, runs, vehicle],
  uncouple: [on, over, again, vehicle],
  'one-or-all': [],
  'same-locomotive-in-old-part': [on, vehicle],
  'on-plain-direct-current': [],
  'vehicle-in-the-hand': [],
  'read-its-decoder': [on, vehicle],
  'write-anew': [on, vehicle],
  'programming-track': [],
  'piece-at-programming': [on],
  'load-test': [on, feeds],
  'coin-near': [on, feeds],
  'coin-far': [on, feeds],
  'short-locomotive-through-loop': [],
  'what-reverses': [],
  'does-it-reverse': [],
  'accessories-without-trains': [on],
  'accessory-moment': [],
  'one-accessory-or-all': [],
  'accessories-own-supply': [on],
  'exchange-accessories': [on],
  'what-is-reported': [],
  'what-the-handhelds-do': [],
  'exchange-handhelds': [on],
  'without-the-computer': [on, feeds, runs, vehicle],
  'meter-control-bus': [on],
  'meter-output': [on, feeds],
  'meter-volts-there': [on, feeds],
  'meter-at-the-frog': [on, feeds],
  'meter-direct-volts': [on, feeds],
  'meter-same-and-diagonal': [on, feeds],
  'meter-two-stages': [on, feeds],
  'meter-along-the-way': [on, feeds],
  'meter-while-they-run': [on, feeds, runs],
  'meter-supply': [on, feeds, again],
  'meter-supply-current': [on, feeds, again, runs, vehicle],
  'meter-ohms-between-rails': [],
  'meter-across-the-gap': [],
};

/** To switch on though a dead short is known to be there. */
export const INTO_A_SHORT = 'switches-on-into-a-short';
/** Checks that look for a short by switching on, and whose words say how to do so with everything off and the meter on ohms. */
const WITH_THE_METER_TOO: ReadonlySet<string> = new Set<CheckId>(['throw-turnouts', 'unclip-feeders']);

export const intoAShort = (id: CheckId): readonly string[] =>
  ACTS_OF[id].includes(on) && !WITH_THE_METER_TOO.has(id) ? [INTO_A_SHORT] : [];

/**
 * What is forbidden after an answer, whatever people come with: nothing that was hot is switched on again for a test, and nothing is switched on
 * into a dead short that is there with everything unplugged, nor are volts measured on it.
 */
export const FORBIDDEN_AFTER: Readonly<Partial<Record<CheckId, Readonly<Record<string, readonly string[]>>>>> = {
  'danger-now': { 'warm-or-was-hot': [on], browned: [on], 'smoke-heat-or-damage': [on] },
  'meter-ohms-between-rails': { short: [INTO_A_SHORT] },
};

const isCheck = (id: string): id is CheckId => Object.hasOwn(ACTS_OF, id);

/** What a check makes people do, by any name; a name that is no check does nothing. */
export const powerActsOf = (check: string): readonly Act[] => (isCheck(check) ? ACTS_OF[check] : []);
