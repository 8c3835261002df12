// What sits in the decoder of one locomotive: its number, what was left over in it, damage, and what upsets it.
import { BACK_WHEN_REMOVED, QUIET } from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

/** Power and commands are there, anywhere; this one does not do what it is told. */
const ONE_DOES_NOT_OBEY = {
  ...QUIET,
  where: { everywhere: always },
  vehicles: { 'one-only': always },
  commands: { 'one-deaf': always },
  fewer: { 'one-does-it': usually, 'no-help': usually },
  'moved-trains': { 'goes-along': always },
} as const satisfies Partial<Row>;

export const DECODERS = [
  // The locomotive has another number, other speed steps or another format than it is called with.
  {
    id: 'address',
    fixClass: 'address',
    minutes: 8,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      // Lamps that nobody has called are out, but rails without power are another sight.
      // Lamps wink with the throttle where the speed steps differ.
      trouble: { 'stops-lit': usually, 'stops-dark': rarely, 'runs-by-itself': rarely, 'acts-otherwise': rarely },
      when: { always: usually, 'when-set-on': sometimes, 'after-a-short': rarely, 'at-switching-on': rarely },
      since: {
        setting: usually,
        vehicle: usually,
        'vehicle-opened': usually,
        nothing: sometimes,
        'supply-or-unit': sometimes,
        'a-short': rarely,
      },
      'one-loco': { deaf: usually, 'another-number': usually, 'runs-badly': rarely, 'acts-otherwise': rarely },
      'decoder-settings': { 'other-number': always, 'direct-allowed': rarely },
      'written-anew': { cured: always },
    },
  },

  // Double heading was left in the decoder or in the station: it moves with another's number, or not with its own.
  {
    id: 'consist-left-over',
    fixClass: 'consist-left-over',
    minutes: 10,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      trouble: { 'stops-lit': usually, 'runs-by-itself': usually, jerks: sometimes, 'slow-or-dim': rarely },
      when: { always: usually, 'now-and-then': sometimes, 'when-set-on': sometimes, 'in-mid-run': rarely },
      vehicles: { 'one-only': usually, coupled: sometimes, 'every-one': rarely },
      since: { setting: usually, nothing: usually, vehicle: sometimes, 'a-short': rarely },
      commands: { 'one-deaf': usually, other: sometimes },
      control: { fine: always, 'all-dead': rarely },
      // Lamps and sounds often still listen to its own number, the motor does not.
      'one-loco': {
        'lights-only': usually,
        'another-number': usually,
        deaf: usually,
        'like-the-others': rarely,
        'runs-badly': sometimes,
        'disturbs-others': rarely,
      },
      'decoder-settings': { 'double-heading': always },
      // A new number alone leaves the double heading where it is; a reset takes it out.
      'written-anew': { cured: usually, 'no-help': sometimes },
    },
  },

  // After broken contact or a spoiled command the decoder does not answer until its number or settings are written anew.
  {
    id: 'decoder-muddled',
    fixClass: 'decoder-muddled',
    minutes: 10,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      trouble: {
        'stops-lit': usually,
        'stops-dark': rarely,
        'runs-by-itself': rarely,
        // A speed table or another setting that nobody wanted.
        'slow-or-dim': sometimes,
        jerks: rarely,
        // Keys, lamps and delays of whoever had it before, or of a reset.
        'acts-otherwise': usually,
      },
      when: { always: usually, 'when-set-on': usually, 'after-a-short': usually, 'in-mid-run': sometimes },
      since: {
        'a-short': usually,
        vehicle: usually,
        'vehicle-opened': sometimes,
        nothing: usually,
        setting: usually,
        'track-or-wires': rarely,
      },
      // It takes them and makes something else of them.
      commands: { 'one-deaf': usually, arrive: sometimes },
      'one-loco': {
        'acts-otherwise': usually,
        deaf: usually,
        'runs-badly': sometimes,
        'obeys-on-dc-only': sometimes,
        'another-number': sometimes,
      },
      programming: { works: usually, 'cannot-read': sometimes },
      'decoder-settings': {
        right: usually,
        'other-number': sometimes,
        'double-heading': rarely,
        'direct-allowed': sometimes,
        'keys-or-delays': usually,
      },
      'written-anew': { cured: always, 'no-help': rarely },
      'dead-since': { vehicle: usually, nothing: usually },
    },
  },

  // It has no decoder, or its plug was put back without one: on digital track its motor hums, warms and does not obey.
  {
    id: 'no-decoder',
    fixClass: 'no-decoder',
    minutes: 10,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      trouble: { hums: always, 'stops-lit': usually, 'gets-hot': sometimes, 'cannot-be-read': usually },
      when: { always: usually, 'when-set-on': usually, 'while-programming': rarely },
      // One that has run here has a decoder.
      since: { vehicle: always, nothing: rarely },
      commands: { 'one-deaf': always },
      hot: { nothing: usually, vehicle: usually },
      'one-loco': { deaf: always, 'obeys-on-dc-only': usually, 'lights-only': rarely, 'shorts-alone': rarely },
      programming: { 'cannot-read': usually, works: usually },
      'written-anew': { 'not-taken': always, 'no-help': usually },
    },
  },

  // The decoder of one locomotive is weak, dead or half dead, most often since a short.
  {
    id: 'decoder-damaged',
    fixClass: 'decoder-damaged',
    minutes: 20,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      trouble: {
        'stops-lit': usually,
        'stops-dark': sometimes,
        'slow-or-dim': sometimes,
        'switches-off': sometimes,
        'cannot-be-read': sometimes,
        'gets-hot': rarely,
        jerks: sometimes,
        'runs-by-itself': sometimes,
        hums: sometimes,
        // An output for a lamp that is burnt out or always on.
        'acts-otherwise': sometimes,
      },
      when: {
        always: usually,
        'after-a-short': sometimes,
        'when-set-on': sometimes,
        'in-mid-run': sometimes,
        'while-programming': rarely,
      },
      since: {
        'a-short': usually,
        vehicle: usually,
        'vehicle-opened': usually,
        nothing: sometimes,
        time: rarely,
        'supply-or-unit': rarely,
      },
      // Now and then it is a short by itself.
      'goes-off': { nothing: usually, 'that-part': rarely, 'all-at-once': rarely },
      'comes-back': BACK_WHEN_REMOVED,
      'unit-shows': { ready: always, fault: rarely },
      commands: { 'one-deaf': usually, arrive: sometimes },
      short: { none: usually, vehicle: sometimes },
      hot: { nothing: usually, vehicle: usually },
      // One that burns draws from all the others.
      draw: { 'well-below': usually, 'near-the-limit': rarely, 'high-idle': rarely, above: rarely },
      'one-loco': {
        'acts-otherwise': sometimes,
        'lights-only': sometimes,
        deaf: usually,
        'runs-badly': sometimes,
        'shorts-alone': sometimes,
        'runs-off': sometimes,
        'stops-later': sometimes,
        'obeys-on-dc-only': rarely,
      },
      'vehicle-in-hand': { nothing: usually, 'loose-inside': rarely, wipers: rarely },
      programming: { 'cannot-read': usually, works: sometimes, 'shorts-there': rarely },
      'written-anew': { 'no-help': usually, 'not-taken': usually },
      'dead-since': { vehicle: usually, nothing: usually },
    },
  },

  // The small parts that quieten the motor were taken out: its sparks spoil the commands for its own decoder as soon as it moves.
  {
    id: 'motor-noise',
    fixClass: 'motor-noise',
    minutes: 20,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      trouble: { 'stops-lit': usually, 'runs-by-itself': usually, jerks: sometimes },
      when: { 'in-mid-run': usually, always: sometimes, 'now-and-then': rarely },
      since: { vehicle: usually, 'vehicle-opened': usually, time: sometimes, nothing: sometimes },
      commands: { 'one-deaf': usually, spoiled: sometimes },
      'one-loco': {
        'lights-only': rarely,
        'stops-later': usually,
        deaf: sometimes,
        'runs-badly': sometimes,
        'runs-off': sometimes,
      },
      'vehicle-in-hand': { 'parts-out': usually, nothing: sometimes, 'loose-inside': rarely },
      sparks: { none: usually, elsewhere: rarely },
    },
  },

  // While this locomotive is on the track its decoder silences others, or turnouts; lifted off, all is well.
  {
    id: 'decoder-disturbs',
    fixClass: 'decoder-disturbs',
    minutes: 15,
    well: sometimes,
    shows: {
      ...QUIET,
      trouble: { 'stops-lit': usually, 'accessories-wrong': usually, jerks: sometimes, 'runs-by-itself': rarely },
      when: { 'when-set-on': usually, 'now-and-then': usually, always: sometimes, 'with-traffic': sometimes },
      where: { everywhere: usually, part: sometimes },
      vehicles: { 'one-only': usually, 'every-one': usually },
      since: { vehicle: usually, 'vehicle-opened': usually, nothing: usually, 'a-short': sometimes },
      commands: { spoiled: usually, arrive: sometimes },
      fewer: { 'one-does-it': always },
      'moved-trains': { 'goes-along': usually, 'no-change': sometimes },
      accessories: {
        fine: usually,
        'with-trains': usually,
        'one-always': sometimes,
        'all-always': rarely,
        'at-random': sometimes,
      },
      'one-loco': { 'disturbs-others': always },
      control: { fine: usually, 'all-dead': rarely, 'comes-and-goes': rarely },
      'written-anew': { 'no-help': always, cured: rarely },
    },
  },

  // The decoder may run on direct current, and takes what is on the rails for that: where no commands are, at switching on, while another one is
  // programmed.
  {
    id: 'analogue-mode',
    fixClass: 'analogue-mode',
    minutes: 10,
    shows: {
      ...QUIET,
      trouble: { 'runs-by-itself': always, 'stops-lit': rarely },
      when: {
        'at-the-gap': usually,
        'at-switching-on': sometimes,
        'after-a-short': sometimes,
        'when-set-on': sometimes,
        'while-programming': sometimes,
        'now-and-then': sometimes,
        always: rarely,
      },
      where: { part: usually, everywhere: sometimes, gaps: sometimes, spot: rarely },
      vehicles: { 'one-only': usually, 'one-kind': sometimes, 'every-one': sometimes },
      since: {
        vehicle: usually,
        'vehicle-opened': sometimes,
        setting: sometimes,
        'supply-or-unit': sometimes,
        'track-or-wires': sometimes,
        nothing: sometimes,
      },
      'unit-shows': { ready: usually, 'no-signal': sometimes },
      volts: { direct: usually, full: usually, moments: rarely },
      commands: { none: usually, arrive: usually, spoiled: sometimes },
      fewer: { 'one-does-it': usually, 'no-help': usually },
      'one-loco': { 'runs-off': usually, 'like-the-others': sometimes },
      'decoder-settings': { 'direct-allowed': always },
      'written-anew': { cured: usually, 'no-help': sometimes },
    },
  },

  // Something is driven on number 0: an engine without a decoder runs or hums and gets hot, or the stretched signal upsets others.
  {
    id: 'address-zero',
    fixClass: 'address-zero',
    minutes: 5,
    shows: {
      ...QUIET,
      trouble: {
        'runs-by-itself': usually,
        'gets-hot': usually,
        hums: usually,
        'stops-lit': sometimes,
        jerks: rarely,
        'only-shown': rarely,
      },
      when: { always: usually, 'when-set-on': usually, 'after-minutes': sometimes, 'at-switching-on': rarely },
      where: { everywhere: always },
      vehicles: { 'one-only': usually, 'every-one': sometimes },
      since: { vehicle: usually, 'vehicle-opened': rarely, setting: usually, nothing: sometimes },
      volts: { full: usually, direct: sometimes },
      commands: { arrive: usually, spoiled: sometimes },
      hot: { vehicle: usually, nothing: usually },
      fewer: { 'one-does-it': usually, 'no-help': usually },
      'moved-trains': { 'goes-along': usually, 'no-change': sometimes },
      settings: { 'zero-runs': always },
      'one-loco': { 'runs-off': usually, 'runs-badly': sometimes, 'like-the-others': sometimes },
      programming: { works: usually, 'cannot-read': sometimes },
    },
  },
  // The motor or the gear of one locomotive does not turn: worn brushes, hardened grease, a cracked gear, a rod that jams. All else in it is well.
  {
    id: 'motor-stuck',
    fixClass: 'motor-stuck',
    minutes: 30,
    shows: {
      ...ONE_DOES_NOT_OBEY,
      trouble: { 'stops-lit': always, hums: sometimes, 'stops-dark': sometimes, jerks: sometimes, 'gets-hot': rarely },
      when: {
        always: usually,
        'in-mid-run': usually,
        'after-minutes': sometimes,
        creeping: sometimes,
        'now-and-then': sometimes,
      },
      since: { time: usually, vehicle: sometimes, 'vehicle-opened': sometimes, nothing: usually, 'a-short': rarely },
      commands: { arrive: usually, 'one-deaf': usually },
      hot: { nothing: usually, vehicle: sometimes },
      'one-loco': { 'lights-only': always, deaf: rarely, 'runs-badly': sometimes, 'stops-later': sometimes },
      'vehicle-in-hand': { nothing: usually, 'loose-inside': sometimes, stiff: usually },
      // A decoder answers by its motor: one that jams takes current all the same, one whose brushes do not touch takes none.
      programming: { works: usually, 'cannot-read': sometimes },
      'written-anew': { 'no-help': always, 'not-taken': sometimes },
      vehicles: { 'one-only': always, 'one-kind': sometimes },
      way: { either: always, 'one-way': sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
