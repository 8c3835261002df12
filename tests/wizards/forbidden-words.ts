// The words of each complaint's first line that forbid an act, and so the checks that make people do it.

import type { OpeningId } from '../../src/wizards/put-it-right/model/openings.ts';
import type { PowerAct as Act } from '../../src/wizards/safety/acts.ts';

export const FORBIDDEN_IN_WORDS: Readonly<Partial<Record<OpeningId, Readonly<Partial<Record<Act, string>>>>>> = {
  'stops-at-gap': {
    'stands-across-the-gap': 'Lift the train off the gap',
  },
  'trips-at-gap': {
    'stands-across-the-gap': 'Lift the train off the gap before you switch on again',
    'sends-a-train-over-the-gap': 'do not try again and again',
    'brings-it-about-again': 'do not try again and again',
  },
  'shuts-down-after-swap': {
    'switches-on': 'read the label of each supply before you plug anything in again',
  },
  'trips-at-power-on': {
    'puts-a-vehicle-on-the-track': 'lift every tool and every vehicle off the track',
  },
  'ignores-commands': {
    'runs-trains-in-the-new-part': 'Lift the locomotives off the new part, and drive none into it',
    'stands-across-the-gap': 'Lift the locomotives off the new part, and drive none into it',
  },
  'slow-far-away': {
    'adds-power': 'feel for warm wires or joiners before you add more power',
  },
  'jerks-at-gap': {
    'stands-across-the-gap': 'Do not let a train stop across the gap',
  },
  'short-not-noticed': {
    'switches-on': 'Switch everything off, pull the plugs, and let it cool',
  },
  'loop-trips': {
    'stands-across-the-gap': 'Lift the train off that place',
    'sends-a-train-over-the-gap': 'keep other trains away from it',
    'brings-it-about-again': 'keep other trains away from it',
  },
  'still-runs-past-gap': {
    'feeds-the-new-part': 'Do not connect the new part’s own unit',
  },
  'dead-since-a-short': {
    'switches-on': 'leave it off until you know that nothing got hot',
  },
  'since-rewired': {
    'stands-across-the-gap': 'Let no train stand across a gap',
  },
  'all-slow': {
    'adds-power': 'hotter than usual before you add more power',
  },
  'trips-when-set-on': {
    'brings-it-about-again': 'do not try again and again',
  },
  'short-in-mid-run': {
    'brings-it-about-again': 'do not try to drive it on',
  },
  'wrong-one-trips': {
    'switches-on': 'leave everything off until you know that nothing got hot',
  },
  'house-protection-goes': {
    'switches-on': 'leave them unplugged',
  },
  tingles: {
    'switches-on': 'leave them unplugged',
  },
};
