// What the units and their supplies show: lamps, displays, labels, plugs, and what exchanging them does.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const UNIT_CHECKS = [
  // The unit that feeds the part with the trouble, at the moment of the trouble: what does its lamp show?
  // no-lamp: dark · ready: as always · fault: a fault or a short, steady or with pauses of seconds · no-signal: no signal arrives · goes-out-and-on:
  // the lamp itself goes out and comes on again, as at switching on · stopped: stop, or waiting to be switched on · counts: so many blinks or beeps,
  // then a pause, again and again.
  check({
    id: 'booster-lamp',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.2,
    options: ['no-lamp', 'ready', 'fault', 'no-signal', 'goes-out-and-on', 'stopped', 'counts'],
    reads: 'unit-shows',
    reading: {
      ready: { ready: always, fault: rarely },
      dark: { 'no-lamp': always, 'goes-out-and-on': rarely },
      // Many a unit names a short, too, by a number of blinks.
      fault: { fault: always, counts: sometimes, ready: rarely, stopped: rarely },
      'no-signal': { 'no-signal': usually, fault: sometimes, ready: rarely, 'no-lamp': rarely },
      restarts: { 'goes-out-and-on': usually, fault: sometimes, ready: rarely },
      stopped: { stopped: usually, ready: sometimes, 'no-signal': sometimes },
      'only-breaker': { ready: always, fault: rarely },
      code: { counts: always, fault: sometimes },
    },
  }),

  // What does the command station show, or its handset?
  // normal · stop-or-programming: stop is pressed, or it is in programming, or that booster is switched off there · short: a short or an overload ·
  // dark-or-restarting: nothing on it, or it starts anew.
  check({
    id: 'command-display',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.1,
    options: ['normal', 'stop-or-programming', 'short', 'dark-or-restarting'],
    reads: 'unit-shows',
    reading: {
      by: 'parts',
      is: {
        one: {
          ready: { normal: always, short: rarely },
          dark: 'dark-or-restarting',
          fault: { short: always, 'stop-or-programming': rarely },
          'no-signal': { normal: usually, short: rarely },
          restarts: { 'dark-or-restarting': always, short: sometimes },
          stopped: 'stop-or-programming',
          'only-breaker': 'normal',
          code: { short: usually, normal: sometimes, 'stop-or-programming': rarely },
        },
        // The part with the trouble may have a unit of its own, of which the command station tells nothing.
        several: {
          ready: { normal: always, short: rarely },
          dark: { normal: usually, 'dark-or-restarting': sometimes, 'stop-or-programming': rarely },
          fault: { short: usually, normal: usually, 'stop-or-programming': rarely },
          'no-signal': { normal: always, 'stop-or-programming': rarely },
          restarts: { 'dark-or-restarting': usually, normal: usually },
          stopped: { 'stop-or-programming': always, normal: rarely },
          'only-breaker': { normal: always, short: rarely },
          code: { normal: usually, short: usually },
        },
      },
    },
  }),

  // An automatic breaker or polarity switcher has a lamp of its own: what did it show?
  // quiet: as always · opened: it has opened, or blinks as it tries again · dark: no lamp at all, and nothing behind it.
  check({
    id: 'breaker-lamp',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['quiet', 'opened', 'dark'],
    reads: 'unit-shows',
    reading: {
      ready: { quiet: always, opened: rarely },
      dark: { dark: usually, quiet: sometimes },
      // Which of the two is faster, nobody knows beforehand.
      fault: { quiet: usually, opened: usually },
      'no-signal': { quiet: usually, dark: sometimes },
      restarts: { quiet: usually, dark: sometimes, opened: rarely },
      stopped: { quiet: usually, dark: sometimes },
      'only-breaker': 'opened',
      code: { quiet: always, dark: rarely },
    },
  }),

  // Has the supply a lamp of its own? Watch it at the moment of the trouble.
  // steady: always on · pulses-or-goes-out: it goes out or blinks just then · dark: it never shines.
  check({
    id: 'supply-lamp',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.5,
    options: ['steady', 'pulses-or-goes-out', 'dark'],
    reads: 'supply-lamp',
    reading: {
      steady: 'steady',
      pulses: { 'pulses-or-goes-out': usually, steady: sometimes },
      dark: { dark: always, 'pulses-or-goes-out': rarely },
    },
  }),

  // Read aloud every supply's label and what each unit asks for: volts, amperes, a.c. or d.c., plug picture; and the unit's amperes against the
  // scale.
  // all-fit: kinds right, volts alike, enough amperes · volts-differ: the two supplies (or set rail voltages) differ · wrong-kind: a.c. for d.c.,
  // plug the other way round, volts outside what the unit permits · too-few-amps: fewer amperes than the unit can deliver or trips at ·
  // unit-too-big: the unit's trip current is above what the scale bears.
  check({
    id: 'read-labels',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    unsure: 0.1,
    // Of the wrong kind: it is not switched on again.
    establishes: {
      'all-fit': ['labels-read'],
      'volts-differ': ['labels-read'],
      'too-few-amps': ['labels-read'],
      'unit-too-big': ['labels-read'],
    },
    options: ['all-fit', 'volts-differ', 'wrong-kind', 'too-few-amps', 'unit-too-big'],
    reads: 'labels',
    reading: {
      fit: { 'all-fit': always, 'volts-differ': rarely, 'too-few-amps': rarely },
      'volts-differ': { 'volts-differ': always, 'all-fit': rarely },
      'wrong-kind': { 'wrong-kind': always, 'volts-differ': rarely, 'all-fit': rarely },
      'too-few-amps': { 'too-few-amps': always, 'all-fit': rarely },
      'unit-too-big': { 'unit-too-big': usually, 'all-fit': sometimes },
    },
  }),

  // If supplies were exchanged: everything off, put them back as they were, switch on. Better?
  check({
    id: 'put-supplies-back',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change'],
    reads: 'goes-with-supply',
    reading: {
      stays: { 'no-change': always, cured: rarely },
      'goes-along': { cured: always, 'no-change': rarely },
      gone: { cured: usually, 'no-change': sometimes },
    },
  }),

  // Everything off: borrow a supply of the same volts and the same kind (a.c. or d.c., plug) with more amperes, for a test.
  check({
    id: 'borrow-supply',
    minutes: 5,
    tool: 'second-supply',
    risk: 1,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change'],
    reads: 'goes-with-supply',
    reading: {
      stays: { 'no-change': always, cured: rarely },
      'goes-along': { cured: always, 'no-change': rarely },
      gone: { cured: usually, 'no-change': sometimes },
    },
  }),

  // Two units of one kind with supplies of one kind: everything off, exchange the two supplies. Where is the trouble now?
  // stays: where it was · goes-along: at the other unit's part · gone: it has not come back since.
  check({
    id: 'exchange-supplies',
    minutes: 6,
    tool: 'eyes',
    risk: 1,
    needs: ['power-off', 'labels-read'],
    source: 'eye',
    options: ['stays', 'goes-along', 'gone'],
    reads: 'goes-with-supply',
    reading: {
      stays: { stays: always, gone: rarely },
      'goes-along': { 'goes-along': always, stays: rarely },
      gone: { gone: always, stays: rarely },
    },
  }),

  // Everything off: exchange two units of one kind for each other, each with its own supply. Where is the trouble now?
  // stays: in the same part · goes-along: in the other part · gone: it has not come back since.
  check({
    id: 'exchange-units',
    minutes: 10,
    tool: 'eyes',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    source: 'eye',
    options: ['stays', 'goes-along', 'gone'],
    reads: 'goes-with-unit',
    reading: {
      stays: { stays: always, gone: rarely },
      'goes-along': { 'goes-along': always, stays: rarely },
      gone: { gone: always, stays: rarely },
    },
  }),

  // Everything off: feed the part with the trouble from the other unit instead, the suspect unit from nothing. Where is the trouble now?
  // stays-with-part: same trouble in that part · follows-unit: that part is well now · gone: and
  // it stays well with its own unit again. Not for a trouble that needs two parts.
  check({
    id: 'feed-from-other-unit',
    minutes: 8,
    tool: 'wire',
    risk: 1,
    needs: ['power-off', 'vehicles-off'],
    source: 'eye',
    options: ['stays-with-part', 'follows-unit', 'gone'],
    reads: 'goes-with-unit',
    reading: {
      stays: { 'stays-with-part': always, 'follows-unit': rarely },
      'goes-along': { 'follows-unit': always, 'stays-with-part': rarely },
      // With its own wires put back it stays away too.
      gone: { gone: usually, 'follows-unit': usually },
    },
  }),

  // Everything off: another control cable that is known to be good, of the same kind. Better?
  check({
    id: 'exchange-cable',
    minutes: 4,
    tool: 'wire',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change'],
    reads: 'goes-with-cable',
    reading: { stays: 'no-change', 'goes-along': { cured: always, 'no-change': rarely } },
  }),

  // Unit off, pull its track plug so that no track is connected, switch on again. What does it report?
  // clears: the fault is gone · still-a-fault: it still reports a fault or stays dead · no-fault-before: it reported none with the track
  // connected either.
  check({
    id: 'track-plug-pulled',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['clears', 'still-a-fault', 'no-fault-before'],
    reads: 'short',
    reading: {
      none: { 'no-fault-before': always, clears: rarely },
      vehicle: { clears: always, 'no-fault-before': sometimes },
      track: 'clears',
      'one-setting': { clears: always, 'no-fault-before': sometimes },
      feeder: 'clears',
      unit: 'still-a-fault',
      weak: { 'no-fault-before': always, clears: sometimes },
      'only-shown': { 'still-a-fault': always, clears: rarely },
      accessory: { clears: always, 'no-fault-before': rarely },
      'both-on': { clears: always, 'no-fault-before': rarely },
    },
  }),

  // The unit with nothing connected but its supply: no track, no control cable. Then with the control cable too. When does it complain?
  // well: neither time · with-the-cable: only once the control cable is in · alone: already with nothing but its supply.
  check({
    id: 'unit-bare',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['well', 'with-the-cable', 'alone'],
    reads: 'short',
    reading: {
      none: 'well',
      vehicle: 'well',
      track: 'well',
      'one-setting': 'well',
      feeder: 'well',
      unit: { alone: always, 'with-the-cable': rarely },
      weak: 'well',
      'only-shown': { 'with-the-cable': usually, alone: sometimes },
      accessory: 'well',
      'both-on': 'well',
    },
  }),

  // All vehicles off, everything off. Switch on the command station alone, then the booster with it (its own part only fed), then both parts:
  // what shows?
  // all-fine: nothing wrong without vehicles · one-alone-faults: one of them reports a fault already by itself · only-together: each is fine
  // alone, a fault comes only when both feed their parts.
  check({
    id: 'each-stage-alone',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off', 'vehicles-off'],
    source: 'eye',
    options: ['all-fine', 'one-alone-faults', 'only-together'],
    reads: 'short',
    reading: {
      none: 'all-fine',
      vehicle: 'all-fine',
      track: 'one-alone-faults',
      'one-setting': { 'one-alone-faults': usually, 'all-fine': usually },
      feeder: 'one-alone-faults',
      unit: 'one-alone-faults',
      weak: 'all-fine',
      'only-shown': { 'one-alone-faults': usually, 'all-fine': sometimes },
      accessory: { 'one-alone-faults': usually, 'all-fine': sometimes },
      'both-on': { 'only-together': always, 'all-fine': rarely },
    },
  }),

  // With power on, gently move one low-voltage plug and cable after the other at the units (none pulled, no mains plug touched): does something
  // flicker, stop or come back?
  // nothing · track-plug: at a track or unit socket · control-cable · supply-plug: at a low-voltage plug of a supply · mains-lead: none of these, but the supply's own lamp or a room lamp on the
  // same socket strip flickers now and then.
  check({
    id: 'move-the-plugs',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['nothing', 'track-plug', 'control-cable', 'supply-plug', 'mains-lead'],
    reads: 'loose-plug',
    reading: {
      none: 'nothing',
      'track-plug': { 'track-plug': usually, nothing: sometimes },
      'control-cable': { 'control-cable': usually, nothing: sometimes },
      'mains-lead': { 'mains-lead': usually, nothing: usually },
      'supply-plug': { 'supply-plug': usually, nothing: sometimes },
    },
  }),

  // A table lamp with a filament or a dimmable one on the socket strip of the supplies: what does it do when the trouble comes? Nothing on the
  // strip is touched.
  check({
    id: 'lamp-on-the-strip',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['steady', 'dims-or-flickers', 'stays-dark'],
    reads: 'mains',
    reading: {
      steady: 'steady',
      dips: { 'dims-or-flickers': usually, steady: sometimes },
      off: 'stays-dark',
    },
  }),

  // Let it cool, then run again with free air (or a fan) around the unit and its supply. How long does it last now?
  check({
    id: 'cool-air',
    minutes: 20,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['much-longer', 'no-change'],
    reads: 'cooling',
    reading: {
      'no-help': { 'no-change': always, 'much-longer': rarely },
      helps: { 'much-longer': always, 'no-change': rarely },
    },
  }),

  // Unplug for a test what joins the units by another way: the computer cable, a second supply with an earth pin that feeds something else.
  // Everything off while unplugging; never cut an earth pin.
  check({
    id: 'computer-and-earth',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change', 'none-there'],
    reads: 'other-path',
    reading: {
      'none-matters': { 'no-change': usually, 'none-there': usually },
      'unplugging-cures': { cured: always, 'no-change': rarely },
    },
  }),

  // Read the settings of the units on their displays, switches or in their manuals.
  // alike: same kind of unit, nothing out of the ordinary · kinds-differ: different kinds of unit, or a repeater in between · feedback-differs: the
  // feedback pause is on in one and off in the other · sends-own: the second unit is a command station that is not set to repeat only ·
  // volts-differ: the rail volts of one are set lower · volts-high: they are set above what the scale takes · other-format: further formats are
  // on · reverses: it is set to reverse by itself · trip-wrong: its trip current or time is set too high or too slow · zero-runs: something is
  // driven on address 0 · programs-main: programming goes to the whole layout · stays-off: it waits for a
  // button after a short · trip-low: its trip current is below what the trains draw, or its time shorter than they take to fill up.
  check({
    id: 'unit-settings',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    unsure: 0.2,
    options: [
      'alike',
      'kinds-differ',
      'feedback-differs',
      'sends-own',
      'volts-differ',
      'volts-high',
      'other-format',
      'reverses',
      'trip-wrong',
      'zero-runs',
      'programs-main',
      'stays-off',
      'trip-low',
    ],
    reads: 'settings',
    reading: {
      right: 'alike',
      'kinds-differ': { 'kinds-differ': always, alike: rarely },
      'feedback-differs': { 'feedback-differs': usually, 'kinds-differ': sometimes, alike: rarely },
      'sends-own': { 'sends-own': usually, 'kinds-differ': sometimes },
      'volts-low': { 'volts-differ': usually, alike: sometimes },
      'volts-high': { 'volts-high': usually, alike: sometimes, 'volts-differ': rarely },
      'other-format': { 'other-format': usually, alike: sometimes },
      reverses: { reverses: usually, alike: sometimes },
      'trip-wrong': { 'trip-wrong': usually, alike: sometimes },
      'zero-runs': { 'zero-runs': usually, alike: sometimes },
      'programs-main': { 'programs-main': usually, alike: sometimes },
      'stays-off': { 'stays-off': usually, alike: sometimes },
      // Only beside what the trains draw does a number look low.
      'trip-low': { 'trip-low': usually, alike: sometimes },
    },
  }),

  // What all trains draw, added up on paper or read on a unit that shows amperes, against what unit and supply give.
  // few: far below · near: close to it · more: more than they give · shows-much-idle: the unit shows amperes though nothing stands on the track.
  check({
    id: 'count-the-draw',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['few', 'near', 'more', 'shows-much-idle'],
    reads: 'draw',
    reading: {
      'well-below': { few: always, near: rarely },
      'near-the-limit': { near: usually, few: sometimes, more: sometimes },
      above: { more: usually, near: usually, few: rarely },
      // Most units show no amperes.
      'high-idle': { 'shows-much-idle': usually, few: usually },
    },
  }),
] as const;
