// Facts about a layout, not about its trouble: asked once where it matters, otherwise averaged over. Weights are how often each is met
// among people who come with a trouble. Source: common practice, no source (judgement).
import type { CircumstanceRow } from '../../../engine/index.ts';

export const CIRCUMSTANCES = [
  // One part fed by one unit, or several parts with a gap and a unit each.
  { id: 'parts', values: { one: 45, several: 55 } },
  // How a unit protects itself: off until somebody acts; on again after seconds; again within a blink, so that a train can roll on;
  // or it lets the volts fall and stays on.
  { id: 'protection', values: { latches: 30, 'tries-again': 35, blinks: 25, 'folds-back': 10 } },
  // Between unit and track: nothing, an electronic breaker per stretch, or an automatic polarity switcher.
  { id: 'between', values: { nothing: 70, breaker: 20, reverser: 10 } },
  // Modules that watch the current of a stretch to report a train.
  { id: 'sensing', values: { none: 70, some: 30 } },
  // Whether the units of neighbouring parts share a wire on their track side, or float.
  { id: 'commons', values: { floating: 60, joined: 40 } },
  // Two rails, or a centre conductor with both rails alike: there no wheel joins the two sides at a gap, and nothing has to be reversed.
  { id: 'rails', values: { two: 85, centre: 15 } },
  // What the trains are: a few plain ones; sound or stored energy in many; lit coaches with filament lamps.
  { id: 'trains', values: { plain: 50, 'sound-or-stored': 35, 'filament-lamps': 15 } },
  // How trains are driven: handhelds on a control bus, by radio, at the unit itself, or by a computer.
  { id: 'driven', values: { handhelds: 35, radio: 20, 'at-the-unit': 30, computer: 15 } },
  // Turnouts whose frog is live and changes its polarity, or only dead and insulated frogs.
  { id: 'frogs', values: { insulated: 50, live: 50 } },
  // Where turnouts and signals get their power. To save wire, some let a supply of their own share one wire with the track.
  { id: 'accessory-feed', values: { 'own-supply': 42, 'shares-a-wire': 8, 'from-the-track': 50 } },
] as const satisfies readonly CircumstanceRow[];

export type CircumstanceId = (typeof CIRCUMSTANCES)[number]['id'];
export type CircumstanceValue<Id extends CircumstanceId> = keyof Extract<
  (typeof CIRCUMSTANCES)[number],
  { id: Id }
>['values'] &
  string;
