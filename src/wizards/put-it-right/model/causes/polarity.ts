// Which way round the rails of two parts or stretches meet.
import { ALL_OF_ITS_UNIT, AT_THE_GAP, BACK_AS_THE_UNIT_DOES, SHORT_FOR_A_MOMENT, TRIPS_ITS_UNIT } from '../families.ts';
import type { CauseRow } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

const IN_A_BLINK = { blink: usually, seconds: sometimes, button: rarely } as const;

export const POLARITY = [
  // The two track wires of one part are swapped: its rails are the other way round.
  {
    id: 'feed-reversed',
    fixClass: 'reversed',
    minutes: 15,
    needs: { parts: ['several'], rails: ['two'] },
    shows: {
      ...AT_THE_GAP,
      trouble: SHORT_FOR_A_MOMENT,
      since: {
        supply: rarely,
        'track-or-wires': usually,
        'supply-or-unit': usually,
        'new-place': sometimes,
        nothing: rarely,
      },
      sides: { reversed: always },
      swap: { cured: always, 'no-change': rarely },
      sparks: { 'at-the-gap': usually, none: sometimes },
    },
  },
  // A siding or a stretch behind cuts hangs on the same unit as all the rest, and its own pair of wires is the wrong way round. With no gap it would
  // be a short from the first moment; so it waits for the first train that bridges one.
  {
    id: 'stretch-reversed',
    fixClass: 'reversed',
    minutes: 15,
    needs: { parts: ['one'], rails: ['two'] },
    shows: {
      ...AT_THE_GAP,
      trouble: SHORT_FOR_A_MOMENT,
      when: { 'at-the-gap': always, 'at-one-place': usually, 'in-mid-run': rarely },
      where: { gaps: usually, spot: usually, part: usually, turnout: sometimes },
      'goes-off': TRIPS_ITS_UNIT,
      since: { 'track-or-wires': always, nothing: rarely, 'new-place': rarely },
      sides: { reversed: always },
      swap: { cured: always, 'no-change': rarely },
      sparks: { 'at-the-gap': usually, none: sometimes },
    },
  },
  // The control cable is mirrored, or its two signal wires are swapped: all that this unit feeds is the other way round.
  {
    id: 'link-inverted',
    fixClass: 'reversed',
    minutes: 15,
    needs: { parts: ['several'] },
    shows: {
      ...AT_THE_GAP,
      trouble: SHORT_FOR_A_MOMENT,
      since: {
        supply: rarely,
        'supply-or-unit': usually,
        'track-or-wires': usually,
        'new-place': sometimes,
        nothing: rarely,
      },
      sides: { reversed: always },
      swap: { cured: always, 'no-change': rarely },
      sparks: { 'at-the-gap': usually, none: sometimes },
      link: { mirrored: always },
      // A straight cable cures it, and so does another unit on its own cable.
      'goes-with-cable': { 'goes-along': usually, stays: sometimes },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
    },
  },
  // A stretch is wired the other way round; an automatic reverser hid that until it was moved or taken out, or more cuts were made.
  {
    id: 'masked-reversal',
    fixClass: 'masked-reversal',
    minutes: 40,
    needs: { rails: ['two'] },
    shows: {
      ...AT_THE_GAP,
      trouble: SHORT_FOR_A_MOMENT,
      when: { 'at-the-gap': always, 'at-one-place': sometimes, 'now-and-then': sometimes, 'at-switching-on': rarely },
      where: { gaps: usually, part: sometimes, loop: sometimes, spot: rarely },
      // To take a reverser out is work on the wires.
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, setting: rarely, nothing: rarely },
      short: { none: usually, vehicle: sometimes, feeder: rarely, 'both-on': rarely },
      sides: { reversed: always },
      // Swapped at the unit the trouble only moves to another gap; swapped at that stretch it is cured.
      swap: { 'no-change': usually, cured: sometimes, worse: sometimes },
      'red-rail': { 'meets-itself': usually, 'meets-the-other': sometimes },
      reverser: { 'taken-out': usually, 'none-there': sometimes, acts: sometimes, silent: rarely },
      loop: { 'no-loop': usually, fine: usually, 'trips-entering': sometimes, 'trips-leaving': sometimes },
      sparks: { 'at-the-gap': usually, none: sometimes },
    },
  },
  // A unit or output that reverses by itself feeds plain track: it flips at peaks of current, trains stop and go on, or two neighbours fight.
  {
    id: 'reverser-at-plain-gap',
    fixClass: 'auto-reverse-off',
    minutes: 10,
    needs: { rails: ['two'] },
    shows: {
      trouble: {
        by: 'parts',
        is: {
          one: { 'stops-lit': usually, jerks: usually, 'switches-off': sometimes, 'runs-by-itself': rarely },
          several: { jerks: usually, 'switches-off': usually, 'stops-lit': sometimes, 'runs-by-itself': rarely },
        },
      },
      when: {
        by: 'parts',
        is: {
          one: { 'now-and-then': usually, 'with-traffic': usually, 'at-one-place': rarely },
          several: { 'at-the-gap': usually, 'with-traffic': sometimes, 'now-and-then': sometimes },
        },
      },
      where: {
        by: 'parts',
        is: {
          one: { everywhere: usually, part: sometimes },
          several: { part: usually, gaps: usually, everywhere: rarely },
        },
      },
      vehicles: { 'every-one': usually, 'lit-or-long': sometimes, many: sometimes, 'one-only': sometimes },
      since: {
        'supply-or-unit': usually,
        setting: usually,
        vehicle: sometimes,
        nothing: sometimes,
        'track-or-wires': sometimes,
      },
      'goes-off': {
        by: 'parts',
        is: {
          one: { nothing: usually, 'all-at-once': sometimes },
          several: { nothing: usually, 'that-part': usually, 'all-at-once': sometimes, 'one-after-the-other': rarely },
        },
      },
      'comes-back': {
        by: 'goes-off',
        is: {
          nothing: { 'never-off': usually, blink: usually },
          'that-part': IN_A_BLINK,
          'all-at-once': IN_A_BLINK,
          'one-after-the-other': IN_A_BLINK,
        },
      },
      'unit-shows': { ready: usually, fault: sometimes, 'only-breaker': sometimes },
      volts: { full: usually, moments: sometimes },
      commands: { arrive: usually, spoiled: sometimes },
      short: { none: always, vehicle: rarely },
      hot: 'unaffected',
      draw: { 'well-below': usually, 'near-the-limit': sometimes },
      // It turns itself to fit, whichever way round its wires are.
      sides: { changes: always },
      swap: { 'no-change': always },
      settings: { reverses: always },
      reverser: { chatters: usually, acts: usually, 'acts-but-off': rarely },
      fewer: { 'no-help': usually, helps: sometimes, 'one-does-it': rarely },
      sparks: { none: usually, 'at-the-gap': sometimes },
      'goes-with-unit': { 'goes-along': usually, stays: sometimes },
    },
  },
  // Three-rail: centre conductor and rails are swapped at the feed. Newer decoders do not care; old ones and some accessories do.
  {
    id: 'centre-swapped',
    fixClass: 'centre-swapped',
    minutes: 10,
    needs: { rails: ['centre'] },
    shows: {
      trouble: {
        by: 'parts',
        is: {
          one: { 'stops-lit': usually, 'accessories-wrong': usually, 'stops-dark': sometimes, jerks: sometimes },
          several: {
            'stops-lit': usually,
            'accessories-wrong': usually,
            'stops-dark': sometimes,
            jerks: sometimes,
            'switches-off': sometimes,
          },
        },
      },
      when: {
        by: 'parts',
        is: { one: { always: always }, several: { always: usually, 'at-the-gap': sometimes } },
      },
      where: ALL_OF_ITS_UNIT,
      vehicles: { 'one-only': usually, 'every-one': rarely, 'none-needed': sometimes },
      since: { 'supply-or-unit': usually, 'track-or-wires': usually, 'new-place': sometimes, nothing: rarely },
      'goes-off': {
        by: 'parts',
        is: { one: { nothing: always }, several: { nothing: usually, 'that-part': sometimes, 'all-at-once': rarely } },
      },
      'comes-back': BACK_AS_THE_UNIT_DOES,
      'unit-shows': { ready: always, fault: rarely },
      volts: { full: always },
      commands: { 'one-deaf': usually, arrive: usually },
      short: { none: always, vehicle: rarely },
      hot: 'unaffected',
      draw: 'unaffected',
      swap: { cured: always },
      sides: { by: 'parts', is: { one: { agree: always }, several: { reversed: usually, agree: usually } } },
      'one-loco': { deaf: usually, 'like-the-others': sometimes, 'runs-badly': sometimes },
      accessories: { 'all-always': usually, 'one-always': sometimes, fine: sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
