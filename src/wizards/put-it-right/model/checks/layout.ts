// What the layout is: facts that have nothing to do with the trouble, and that decide what it looks like. One question each.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** Looking at one's own layout costs a minute and nothing else. */
const A_LOOK = { minutes: 1, tool: 'eyes', risk: 0, needs: [], source: 'memory' } as const;

export const LAYOUT_CHECKS = [
  // One part fed by one unit, or several parts with a gap and a unit each?
  check({
    id: 'how-many-parts',
    ...A_LOOK,
    options: ['one', 'several'],
    reads: 'parts',
    reading: { one: 'one', several: 'several' },
  }),

  // What does the unit do after a short, as it is taken away: does it wait for a button, try again by itself, come back in a blink, or never
  // go off and only get weak?
  check({
    id: 'how-it-protects',
    ...A_LOOK,
    unsure: 0.3,
    options: ['latches', 'tries-again', 'blinks', 'folds-back'],
    reads: 'protection',
    reading: {
      latches: { latches: always, 'tries-again': rarely },
      'tries-again': { 'tries-again': always, latches: rarely, blinks: rarely },
      blinks: { blinks: usually, 'tries-again': sometimes },
      'folds-back': { 'folds-back': usually, 'tries-again': sometimes, blinks: rarely },
    },
  }),

  // Is there anything between a unit and the track: an electronic breaker, or an automatic polarity switcher?
  check({
    id: 'what-is-between',
    ...A_LOOK,
    unsure: 0.1,
    options: ['nothing', 'breaker', 'reverser'],
    reads: 'between',
    reading: {
      nothing: 'nothing',
      breaker: { breaker: always, nothing: rarely },
      reverser: { reverser: always, breaker: rarely, nothing: rarely },
    },
  }),

  // Modules that report where trains stand, in the wires to the track?
  check({
    id: 'detectors-there',
    ...A_LOOK,
    options: ['none', 'some'],
    reads: 'sensing',
    reading: { none: 'none', some: 'some' },
  }),

  // Do the units share a wire on their track side?
  check({
    id: 'common-wire',
    ...A_LOOK,
    unsure: 0.3,
    options: ['floating', 'joined'],
    reads: 'commons',
    reading: { floating: { floating: always, joined: rarely }, joined: { joined: usually, floating: sometimes } },
  }),

  // Two rails with one pole each, or a conductor in the middle and both rails alike?
  check({
    id: 'how-many-rails',
    ...A_LOOK,
    options: ['two', 'centre'],
    reads: 'rails',
    reading: { two: 'two', centre: 'centre' },
  }),

  // What are the trains: plain ones, sound or stored energy in many, lit coaches with filament lamps?
  check({
    id: 'what-trains',
    ...A_LOOK,
    options: ['plain', 'sound-or-stored', 'filament-lamps'],
    reads: 'trains',
    reading: {
      plain: { plain: always, 'sound-or-stored': rarely },
      'sound-or-stored': { 'sound-or-stored': always, plain: rarely },
      'filament-lamps': { 'filament-lamps': always, 'sound-or-stored': rarely, plain: rarely },
    },
  }),

  // How are trains driven?
  check({
    id: 'how-driven',
    ...A_LOOK,
    options: ['handhelds', 'radio', 'at-the-unit', 'computer'],
    reads: 'driven',
    reading: { handhelds: 'handhelds', radio: 'radio', 'at-the-unit': 'at-the-unit', computer: 'computer' },
  }),

  // Turnouts whose frog carries power and changes it as they are thrown?
  check({
    id: 'live-frogs',
    ...A_LOOK,
    unsure: 0.2,
    options: ['insulated', 'live'],
    reads: 'frogs',
    reading: { insulated: { insulated: always, live: rarely }, live: { live: always, insulated: rarely } },
  }),

  // Where do turnouts and signals get their power?
  check({
    id: 'what-feeds-accessories',
    ...A_LOOK,
    unsure: 0.1,
    options: ['own-supply', 'shares-a-wire', 'from-the-track'],
    reads: 'accessory-feed',
    reading: {
      'own-supply': 'own-supply',
      // Who has not wired it, or long ago, hardly thinks of the shared wire.
      'shares-a-wire': { 'shares-a-wire': usually, 'own-supply': sometimes },
      'from-the-track': { 'from-the-track': always, 'own-supply': rarely },
    },
  }),
] as const;
