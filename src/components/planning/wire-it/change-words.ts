// What is changed about the wiring, in words: all of it, in the order in which it is done.
import type { Rewired, WiringChange } from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

export function changeWords(change: WiringChange, pair: boolean, say: Say, numbers: Numbers): string {
  switch (change.kind) {
    case 'as-it-is':
      return say('wire-change-as-it-is');
    case 'rewired':
      return rewiredWords(change, pair, say, numbers).reduce((one, other) => say('wire-change-and', { one, other }));
    case 'lower-trip':
      return say('wire-change-lower-trip', { trip: numbers.amps(change.trip) });
    case 'breakers':
      return say('wire-change-breakers', { trip: numbers.amps(change.trip) });
    case 'second-stage':
      return say('wire-change-second-stage', { at: numbers.metres(change.cutAt) });
  }
}

function rewiredWords(
  { middle, ring, bus, feeders, feederWire }: Rewired,
  pair: boolean,
  say: Say,
  numbers: Numbers,
): string[] {
  // Where there is one pair only, feeders want a bus.
  const busIsNew = pair && feeders !== undefined;
  return [
    ...(middle === undefined
      ? []
      : [say(pair && !busIsNew ? 'wire-change-pair-middle' : 'wire-change-middle', { at: numbers.metres(middle) })]),
    ...(ring === undefined ? [] : [say('wire-change-ring')]),
    ...(bus === undefined
      ? []
      : [
          say(pair && !busIsNew ? 'wire-change-pair-thicker' : 'wire-change-thicker-bus', {
            wire: numbers.wire(bus.area),
          }),
        ]),
    ...(feeders === undefined
      ? []
      : [
          say(busIsNew && bus === undefined ? 'wire-change-pair-feeders' : 'wire-change-more-feeders', {
            metres: numbers.metres(feeders.spacing, 'at-most'),
            n: feeders.count,
          }),
        ]),
    ...(feederWire === undefined ? [] : [say('wire-change-feeder-wire', { wire: numbers.wire(feederWire.area) })]),
  ];
}
