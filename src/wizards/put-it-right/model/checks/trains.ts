// Trains and single vehicles: how many, which, alone and elsewhere, in the hand.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const TRAIN_CHECKS = [
  // Lift half of the trains off and run; then the other half; then one alone.
  // cured: well with fewer trains, whichever they are · one-alone-does-it: a single train, alone, brings it · lit-coaches: well as soon as the lit
  // coaches are off · no-change: just the same.
  check({
    id: 'halve-the-trains',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['cured', 'one-alone-does-it', 'lit-coaches', 'no-change'],
    reads: 'fewer',
    reading: {
      'no-help': { 'no-change': always, cured: rarely },
      helps: { cured: always, 'lit-coaches': rarely, 'no-change': rarely },
      'one-does-it': { 'one-alone-does-it': always, cured: rarely },
      'lit-do-it': { 'lit-coaches': always, cured: sometimes },
    },
  }),

  // Move some trains from this part to the other part and run the same number.
  // cured: well now · moves-along: now the other part (or everything) shows it · no-change.
  check({
    id: 'move-trains-over',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['cured', 'moves-along', 'no-change'],
    reads: 'moved-trains',
    reading: {
      'no-change': { 'no-change': always, cured: rarely },
      cured: { cured: always, 'no-change': rarely },
      'goes-along': { 'moves-along': always, 'no-change': sometimes },
    },
  }),

  // Put another locomotive at the very place. The same?
  // the-same: it shows it too · it-runs: it does not.
  check({
    id: 'another-one-there',
    minutes: 2,
    tool: 'second-locomotive',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['the-same', 'it-runs'],
    reads: 'vehicles',
    reading: {
      'every-one': 'the-same',
      'one-only': 'it-runs',
      'short-ones': { 'it-runs': usually, 'the-same': usually },
      'lit-or-long': { 'it-runs': usually, 'the-same': sometimes },
      many: { 'it-runs': always, 'the-same': rarely },
      'none-needed': { 'the-same': always, 'it-runs': rarely },
      coupled: { 'it-runs': always, 'the-same': rarely },
      'one-kind': { 'it-runs': usually, 'the-same': usually },
      'decoders-only': { 'the-same': usually, 'it-runs': rarely },
    },
  }),

  // Put a second, longer locomotive (or one with many wheels that pick up) slowly across the gap.
  // crosses: it runs through without a stop or a jerk · stops-too: the same happens to it.
  check({
    id: 'longer-locomotive',
    minutes: 3,
    tool: 'second-locomotive',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['crosses', 'stops-too'],
    reads: 'vehicles',
    reading: {
      'every-one': { 'stops-too': always, crosses: rarely },
      'one-only': { crosses: always, 'stops-too': rarely },
      'short-ones': { crosses: always, 'stops-too': rarely },
      'lit-or-long': { 'stops-too': usually, crosses: sometimes },
      many: { crosses: always, 'stops-too': rarely },
      'none-needed': 'stops-too',
      coupled: { crosses: always, 'stops-too': rarely },
      'one-kind': { crosses: usually, 'stops-too': usually },
      'decoders-only': { 'stops-too': always, crosses: rarely },
    },
  }),

  // Uncouple the train: run or push its vehicles over the place one by one, with room between them.
  // was-alone: one certain vehicle brings it, alone · well-apart: apart they all pass · no-change: each of them brings it, alone too.
  check({
    id: 'uncouple',
    minutes: 4,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['was-alone', 'well-apart', 'no-change'],
    reads: 'vehicles',
    reading: {
      'every-one': { 'no-change': always, 'was-alone': rarely },
      'one-only': { 'was-alone': always, 'well-apart': rarely },
      'short-ones': { 'was-alone': usually, 'no-change': sometimes },
      'lit-or-long': { 'well-apart': always, 'was-alone': sometimes },
      many: 'well-apart',
      'none-needed': { 'no-change': always, 'well-apart': rarely },
      coupled: { 'well-apart': always, 'was-alone': rarely },
      'one-kind': { 'was-alone': usually, 'no-change': usually },
      'decoders-only': 'no-change',
    },
  }),

  // One locomotive or all of them, wherever they stand?
  // all-alike · deaf: one does not obey, lit or not · runs-badly: one stutters, labours or is slow everywhere · another-number: one answers to
  // another number, or to two · shorts-alone: it trips as soon as that one stands on live track · runs-off: one drives without a command ·
  // disturbs-others: while one stands on the track, others or turnouts do not work · stops-later: one obeys, and after a while it stops or is deaf ·
  // lights-only: the lights or the sound of one obey, and it does not move · acts-otherwise: one drives, and its keys, lights or delays are not as
  // they were · at-one-place: one has it, at one place only, and runs well everywhere else.
  check({
    id: 'one-or-all',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: [
      'all-alike',
      'deaf',
      'runs-badly',
      'another-number',
      'shorts-alone',
      'runs-off',
      'disturbs-others',
      'stops-later',
      'lights-only',
      'acts-otherwise',
      'at-one-place',
    ],
    reads: 'one-loco',
    reading: {
      'like-the-others': { 'all-alike': always, 'runs-badly': rarely },
      deaf: { deaf: always, 'all-alike': rarely },
      'runs-badly': { 'runs-badly': always, 'all-alike': rarely, 'stops-later': rarely },
      'another-number': { 'another-number': usually, deaf: sometimes, 'runs-off': rarely },
      'shorts-alone': { 'shorts-alone': always, 'all-alike': rarely },
      'obeys-on-dc-only': { deaf: always },
      'runs-off': { 'runs-off': always, 'another-number': rarely },
      'disturbs-others': { 'disturbs-others': usually, 'all-alike': sometimes },
      'stops-later': { 'stops-later': usually, 'runs-badly': sometimes },
      'lights-only': { 'lights-only': always, deaf: sometimes },
      'acts-otherwise': { 'acts-otherwise': always, 'runs-badly': sometimes },
      'at-one-place': { 'at-one-place': always, 'all-alike': sometimes, 'runs-badly': rarely },
    },
  }),

  // Put that locomotive on another track that works: the old part, the track beside the command station, a friend's layout. Does it obey there?
  // obeys · does-not: it does not obey there either · poorly: it stutters, stalls or labours there too · shorts-there: something goes off there too.
  check({
    id: 'same-locomotive-in-old-part',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['obeys', 'does-not', 'poorly', 'shorts-there'],
    reads: 'one-loco',
    reading: {
      'like-the-others': { obeys: always, poorly: rarely },
      deaf: { 'does-not': always, poorly: rarely },
      'runs-badly': { poorly: always, obeys: rarely },
      'another-number': { 'does-not': always, obeys: rarely },
      'shorts-alone': { 'shorts-there': always, poorly: rarely },
      'obeys-on-dc-only': 'does-not',
      'runs-off': { 'does-not': usually, obeys: sometimes },
      'disturbs-others': { obeys: always, poorly: rarely },
      'stops-later': { obeys: usually, poorly: usually },
      'lights-only': 'does-not',
      'acts-otherwise': { poorly: usually, obeys: usually },
      'at-one-place': { obeys: always, poorly: rarely },
    },
  }),

  // That locomotive alone on a piece of track that is joined to nothing else, on plain direct current from an analogue throttle, if there is one.
  // runs: it runs · does-not: nothing moves · poorly: it jerks or labours · shorts-there: the throttle's own protection goes.
  check({
    id: 'on-plain-direct-current',
    minutes: 6,
    tool: 'second-supply',
    risk: 1,
    needs: [],
    source: 'eye',
    unsure: 0.1,
    options: ['runs', 'does-not', 'poorly', 'shorts-there'],
    reads: 'one-loco',
    reading: {
      // Some decoders are told not to run on direct current.
      'like-the-others': { runs: always, 'does-not': sometimes },
      deaf: { 'does-not': always, runs: sometimes },
      'runs-badly': { poorly: always, runs: rarely },
      'another-number': { runs: always, 'does-not': sometimes },
      'shorts-alone': { 'shorts-there': always, poorly: rarely },
      'obeys-on-dc-only': 'runs',
      'runs-off': { runs: always, 'does-not': rarely },
      'disturbs-others': { runs: always, 'does-not': sometimes },
      'stops-later': { runs: usually, poorly: usually },
      'lights-only': { 'does-not': usually, poorly: sometimes, runs: rarely },
      'acts-otherwise': { runs: always, 'does-not': sometimes },
      'at-one-place': { runs: always, 'does-not': sometimes },
    },
  }),

  // The vehicle in the hand, off the track: wheels, wipers, couplings, wires. Nothing to be soldered or bent for this.
  // nothing · wheel-wrong: a wheelset turned round, shifted on its axle, or out of gauge · wipers: dirty, bent or not touching · loose-inside: a
  // wire, plug, tab or gear is loose or cracked · body-touches: metal body or coupling reaches a wheel or a rail's side · parts-out: the small parts
  // at the motor are missing · stiff: wheels or rods hardly turn, or catch · no-grip: a traction
  // tyre is worn, hard or gone, or its wheels are oily.
  check({
    id: 'vehicle-in-the-hand',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    unsure: 0.3,
    options: ['nothing', 'wheel-wrong', 'wipers', 'loose-inside', 'body-touches', 'parts-out', 'stiff', 'no-grip'],
    reads: 'vehicle-in-hand',
    reading: {
      nothing: { nothing: always, wipers: rarely },
      'wheel-wrong': { 'wheel-wrong': usually, nothing: sometimes },
      wipers: { wipers: always, nothing: rarely },
      'loose-inside': { 'loose-inside': usually, nothing: sometimes },
      'body-touches': { 'body-touches': usually, nothing: sometimes },
      'parts-out': { 'parts-out': usually, nothing: sometimes },
      // Many a gear lets no wheel turn by hand, sound or not.
      stiff: { stiff: usually, nothing: sometimes },
      'no-grip': { 'no-grip': usually, nothing: sometimes },
    },
  }),

  // Read its decoder, or look it up in the command station: number, double heading, direct current allowed.
  check({
    id: 'read-its-decoder',
    minutes: 5,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    unsure: 0.3,
    options: ['right', 'other-number', 'double-heading', 'direct-allowed', 'keys-or-delays'],
    reads: 'decoder-settings',
    reading: {
      right: 'right',
      'other-number': { 'other-number': always, right: rarely },
      'double-heading': { 'double-heading': always, right: rarely },
      'direct-allowed': { 'direct-allowed': always, right: rarely },
      // Few know by heart what each key and delay was.
      'keys-or-delays': { 'keys-or-delays': always, right: sometimes },
    },
  }),

  // Write its number and its settings anew, alone on the programming track.
  // no-change · cured · not-taken: it does not take them.
  check({
    id: 'write-anew',
    minutes: 6,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['no-change', 'cured', 'not-taken'],
    reads: 'written-anew',
    reading: {
      'no-help': { 'no-change': always, 'not-taken': rarely },
      cured: { cured: always, 'no-change': rarely },
      'not-taken': { 'not-taken': always, 'no-change': rarely },
    },
  }),

  // What does the programming track do?
  // works · cannot-read: it reads nothing from that one, or from any · others-take-it: locomotives on the layout take it too · shorts-there.
  check({
    id: 'programming-track',
    minutes: 2,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    unsure: 0.3,
    options: ['works', 'cannot-read', 'others-take-it', 'shorts-there'],
    reads: 'programming',
    reading: {
      works: { works: always, 'cannot-read': rarely },
      'cannot-read': 'cannot-read',
      'others-take-it': { 'others-take-it': always, works: rarely },
      'shorts-there': { 'shorts-there': always, 'cannot-read': rarely },
    },
  }),

  // Everything off: a loose piece of track straight at the programming output, one locomotive on it. Does it read now?
  check({
    id: 'piece-at-programming',
    minutes: 5,
    tool: 'wire',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['reads', 'no-change'],
    reads: 'programming-piece',
    reading: { reads: { reads: always, 'no-change': rarely }, 'no-help': { 'no-change': always, reads: rarely } },
  }),
] as const;
