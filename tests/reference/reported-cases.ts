// Troubles that people reported in public, with the cause that was found in the end, told in our own words. They judge the
// fault model; where one went astray a row was changed only for a reason of the trade, which stands beside it. An answer stands here only if the person said so, or could have
// given no other; where a report leaves it open, the question is left out, as if skipped.

import type { FaultId, FixClass } from '../../src/wizards/put-it-right/faults/faults.ts';
import type { CHECKS } from '../../src/wizards/put-it-right/faults/fitting.ts';
import type { CheckId, ComplaintId } from '../../src/wizards/put-it-right/faults/rows.ts';

type OptionOf<Id extends CheckId> = Extract<(typeof CHECKS)[number], { readonly id: Id }>['options'][number];

/** Answers by check id. */
export type Given = { readonly [Id in CheckId]?: OptionOf<Id> };

export interface ReportedCase {
  readonly id: string;
  /** What the person would have picked as the complaint. */
  readonly complaint: ComplaintId;
  /** The trouble as it looked before its cause was known. */
  readonly told: string;
  /** What was known before the cause was. */
  readonly answers: Given;
  /** What came out only while the cause was being found: the check that settled it, and its result. */
  readonly found?: Given;
  /** Every fault or fix class that is the reported cause, or one of several together. */
  readonly faults: readonly (FaultId | FixClass)[];
  /** Whether the cure was seen to work, or others agreed on the cause. */
  readonly sure: 'confirmed' | 'agreed';
  /** Kind of place and year, as far as known. */
  readonly source: string;
}

export const REPORTED_CASES: readonly ReportedCase[] = [
  {
    id: 'two-boosters-on-one-bus',
    complaint: 'trips-at-gap',
    told: 'First train over a new line: a short, in the moment when the locomotive bridges two parts with a booster each.',
    answers: { 'when-it-happens': 'at-the-gap', 'last-change': 'track-or-wires', 'stand-across': 'trips-at-once' },
    found: { 'meter-same-and-diagonal': 'same-rail-large', 'swap-track-wires': 'cured' },
    faults: ['reversed'],
    sure: 'confirmed',
    source: 'readers’ column of an online magazine, 2013',
  },
  {
    id: 'crossover-between-mirrored-mains',
    complaint: 'trips-at-gap',
    told: 'Two main lines, wired as mirror images of each other, get a crossover between them and one digital bus for both.',
    answers: { 'when-it-happens': 'at-the-gap', 'last-change': 'track-or-wires', 'which-vehicles': 'every-one' },
    found: { 'follow-the-red-rail': 'meets-the-other' },
    faults: ['reversed', 'reverse-route'],
    sure: 'agreed',
    source: 'personal page, 2025',
  },
  {
    id: 'sensing-stopped-with-own-booster',
    complaint: 'accessories-misbehave',
    told: 'Turnout decoders got a booster of their own. All commands work, but turnouts no longer throw by themselves before a train.',
    answers: {
      'last-change': 'supply-or-unit',
      'accessory-moment': 'only-by-itself',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
    },
    faults: ['no-reference'],
    sure: 'confirmed',
    source: 'forum, club or personal page, address withheld',
  },
  {
    id: 'short-as-soon-as-the-bus-is-plugged',
    complaint: 'trips-at-power-on',
    told: 'A frog was miswired and shorted. It is right now, but the booster shows a short with no track on it, as soon as the control cable is plugged.',
    answers: {
      'when-it-happens': 'from-switch-on',
      'last-change': 'track-or-wires',
      'which-vehicles': 'none-needed',
      'lift-all-vehicles': 'still-there',
      'track-plug-pulled': 'still-a-fault',
      'pull-control-cable': 'fault-clears',
      'booster-lamp': 'fault',
    },
    found: { 'feed-from-other-unit': 'follows-unit' },
    faults: ['stage-defect'],
    sure: 'confirmed',
    source: 'forum, club or personal page, address withheld',
  },
  {
    // A flame ends the walk at once in switching off. These are the answers once all is cold.
    id: 'burning-sleeper',
    complaint: 'short-not-noticed',
    told: 'In hand-built points a short came and went, then a small flame stood at one sleeper while shunting. The 5 A booster never tripped.',
    answers: {
      'danger-now': 'warm-or-was-hot',
      'when-it-happens': 'at-another-place',
      'which-places': 'one-spot',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
      'which-case-hot': 'wire-or-rail',
    },
    faults: ['leak', 'metal-across'],
    sure: 'confirmed',
    source: 'personal page, 2012',
  },
  {
    // Smoke ends the walk at once in switching off. These are the answers once all is cold.
    id: 'home-made-booster-burnt',
    complaint: 'short-not-noticed',
    told: 'Of several home-made boosters most work. One did not switch off at a short, and its output stage burnt.',
    answers: {
      'danger-now': 'warm-or-was-hot',
      'last-change': 'supply-or-unit',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
      'which-case-hot': 'unit',
    },
    faults: ['stage-defect'],
    sure: 'agreed',
    source: 'personal page, year unknown',
  },
  {
    id: 'breaker-stays-off-with-sound',
    complaint: 'trips-at-power-on',
    told: 'After any short a breaker does not come back while several sound locomotives stand in its part. A higher setting hardly helped.',
    answers: {
      'what-goes-dark': 'only-that-part',
      'how-it-comes-back': 'when-removed',
      'halve-the-trains': 'cured',
      'lift-all-vehicles': 'all-well',
    },
    faults: ['inrush'],
    sure: 'confirmed',
    source: 'club or personal page, year unknown',
  },
  {
    id: 'jumpers-round-second-hand-points',
    complaint: 'trips-at-power-on',
    told: 'Second-hand points with plastic frogs got jumper wires. Now a short with an empty track; with one jumper off again, all is well.',
    answers: {
      'when-it-happens': 'from-switch-on',
      'last-change': 'track-or-wires',
      'which-vehicles': 'none-needed',
      'lift-all-vehicles': 'still-there',
      'unclip-feeders': 'one-feeder',
    },
    faults: ['live-frog'],
    sure: 'confirmed',
    source: 'personal page, 2009',
  },
  {
    id: 'short-in-winter-with-a-loop',
    complaint: 'trips-at-power-on',
    told: 'One winter the layout does not run: a short somewhere, though nothing was changed. It has a reversing loop with cut gaps.',
    answers: {
      'when-it-happens': 'from-switch-on',
      'last-change': 'nothing',
      'what-goes-dark': 'everything-at-once',
      'follow-the-red-rail': 'meets-the-other',
    },
    found: { 'list-every-path': 'touching', 'card-through-gaps': 'touches' },
    faults: ['gap-closed', 'loop-not-isolated'],
    sure: 'confirmed',
    source: 'club page, 2013',
  },
  {
    id: 'breaker-off-after-two-hours',
    complaint: 'trips-at-power-on',
    told: 'After a month of building, power was on for two hours, then one breaker went off for good with nothing on the track. Parting the bus did not find it.',
    answers: {
      'last-change': 'track-or-wires',
      'which-vehicles': 'none-needed',
      'lift-all-vehicles': 'still-there',
      'what-goes-dark': 'only-that-part',
      'how-it-comes-back': 'when-removed',
      'unclip-feeders': 'no-change',
    },
    faults: ['metal-across'],
    sure: 'confirmed',
    source: 'personal page, 2009',
  },
  {
    id: 'hand-laid-frog-looks-clean',
    complaint: 'trips-at-one-spot',
    told: 'A new hand-laid turnout shorts when the first locomotive reaches its frog, though all gaps look clean.',
    answers: { 'when-it-happens': 'at-another-place', 'which-places': 'one-spot', 'last-change': 'track-or-wires' },
    faults: ['metal-across', 'gap-closed'],
    sure: 'confirmed',
    source: 'readers’ column of an online magazine, 2013',
  },
  {
    id: 'short-since-wheels-are-clean',
    complaint: 'trips-at-power-on',
    told: 'A locomotive stalled here and there. Since its wheels were cleaned it is a dead short wherever it stands.',
    answers: {
      'last-change': 'vehicle',
      'which-vehicles': 'one-vehicle',
      'which-places': 'anywhere',
      'lift-all-vehicles': 'one-brings-it-back',
    },
    faults: ['wheelset-short'],
    sure: 'confirmed',
    source: 'club page, 2016',
  },
  {
    // Three-rail track, which the site otherwise leaves out; the question is the same on two rails.
    id: 'only-old-decoders-fail',
    complaint: 'ignores-commands',
    told: 'Since the command station was exchanged for a newer one with the same plug, old locomotives and the turnout decoders fail. New ones run.',
    answers: {
      'last-change': 'supply-or-unit',
      'which-places': 'anywhere',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
      'one-accessory-or-all': 'all',
    },
    found: { 'swap-track-wires': 'cured' },
    faults: ['accessory-polarity'],
    sure: 'agreed',
    source: 'personal page, year unknown',
  },
  {
    id: 'brass-loop-with-one-feed',
    complaint: 'slow-far-away',
    told: 'A loop of 25 m with brass rail and one feed, a 1 A unit: trains crawl, slower with distance, and a third locomotive almost stops all.',
    answers: {
      'which-places': 'with-distance',
      'time-a-metre': 'slower-with-distance',
      'which-vehicles': 'every-one',
      'last-change': 'supply-or-unit',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
    },
    faults: ['few-feeds', 'not-enough'],
    sure: 'agreed',
    source: 'forum, club or personal page, address withheld',
  },
  {
    id: 'one-operator-years-of-additions',
    complaint: 'trips-with-traffic',
    told: 'A starter unit was enough for years. Sound, stored energy, turnout decoders and lights were added, and now it overloads with one operator.',
    answers: { 'last-change': 'vehicle', 'what-goes-dark': 'everything-at-once' },
    faults: ['not-enough', 'thin-wire'],
    sure: 'confirmed',
    source: 'personal page, 2019',
  },
  {
    id: 'booster-makes-it-slower',
    complaint: 'slow-far-away',
    told: 'A 5 A booster was added to a 1 A starter unit, and the same two locomotives run slower than before.',
    answers: {
      'last-change': 'supply-or-unit',
      'when-it-happens': 'from-switch-on',
      'which-vehicles': 'every-one',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
    },
    found: { 'unit-settings': 'volts-differ' },
    faults: ['voltage-step'],
    sure: 'agreed',
    source: 'forum, club or personal page, address withheld',
  },
  {
    // There is no old part; "works elsewhere" says the same of the locomotive.
    id: 'decoders-deaf-on-old-track',
    complaint: 'ignores-commands',
    told: 'A layout from analogue days with a new digital controller: a locomotive without decoder runs, those with decoder do nothing, and they work elsewhere.',
    answers: {
      'last-change': 'supply-or-unit',
      'which-vehicles': 'every-one',
      'which-places': 'anywhere',
      'same-locomotive-in-old-part': 'obeys',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
    },
    found: { 'look-at-feed-piece': 'capacitor-or-choke' },
    faults: ['suppressor'],
    sure: 'agreed',
    source: 'forum, club or personal page, address withheld',
  },
  {
    id: 'tracks-stay-occupied',
    complaint: 'accessories-misbehave',
    told: 'Since the change to digital, detectors stay on after the train has left, only on tracks with the longest wires, which run neatly tied together.',
    answers: {
      'last-change': 'supply-or-unit',
      'what-else-happens': 'wrong-occupancy',
      'what-goes-dark': 'nothing-goes-off',
      'how-it-comes-back': 'never-off',
    },
    faults: ['detector-false'],
    sure: 'agreed',
    source: 'personal page, 2011',
  },
];

/** Asked before buying, with nothing wrong yet: a question for planning, not a trouble. */
export const PLANNING_CASES = [
  {
    id: 'how-much-power-do-i-need',
    told: 'Buying a first digital system, knows the layout and how many locomotives will run, but amperes say nothing to them.',
    sure: 'agreed',
    source: 'forum thread, year unknown',
  },
] as const;
