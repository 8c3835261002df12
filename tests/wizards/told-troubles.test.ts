// Troubles as people bring them, each with the page that an experienced hand would look at among the first three. Common practice, no source.
import { describe, expect, test } from 'vitest';
import { signPosterior } from '../../src/engine/index.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/index.ts';
import type { FixClass } from '../../src/wizards/put-it-right/model/index.ts';
import { stateOf, walkModelNow } from '../../src/wizards/put-it-right/step.ts';

interface Trouble {
  readonly says: string;
  readonly complaint: ComplaintId;
  readonly told: Readonly<Record<string, string>>;
  readonly page: FixClass;
}

const TROUBLES: readonly Trouble[] = [
  {
    says: 'everything slow everywhere since another unit, low at its own screws',
    complaint: 'all-slow',
    told: { 'last-change': 'supply-or-unit', 'which-places': 'anywhere', 'meter-along-the-way': 'at-the-unit' },
    page: 'volts-set-low',
  },
  {
    says: 'one turnout motor forgets, and is well without its frog wire',
    complaint: 'accessories-misbehave',
    told: { 'live-frogs': 'live', 'one-accessory-or-all': 'one', 'unplug-across-boundary': 'frog-wire' },
    page: 'frog-upsets-motor',
  },
  {
    says: 'turnouts stop half way, by hand never',
    complaint: 'accessories-misbehave',
    told: { 'how-driven': 'computer', 'when-it-happens': 'when-thrown', 'without-the-computer': 'cured' },
    page: 'program-cuts-pulse',
  },
  {
    says: 'only the program finds no unit',
    complaint: 'none-of-these',
    told: { 'how-driven': 'computer', 'what-the-handhelds-do': 'computer-silent' },
    page: 'computer-not-connected',
  },
  {
    says: 'throttles start anew with one module on the line',
    complaint: 'handhelds-dead',
    told: {
      'what-the-handhelds-do': 'restarts',
      'exchange-handhelds': 'with-a-device',
      'last-change': 'supply-or-unit',
      'accessories-own-supply': 'cured',
    },
    page: 'accessory-on-bus',
  },
  {
    says: 'a decoder fitted by hand, then a short as it was set on, and a smell from inside',
    complaint: 'trips-when-set-on',
    told: { 'danger-now': 'browned', 'last-change': 'vehicle', 'one-or-all': 'shorts-alone' },
    page: 'loco-short-inside',
  },
  {
    says: 'the same, and it is dead since',
    complaint: 'one-locomotive-only',
    told: { 'danger-now': 'browned', 'last-change': 'vehicle', 'one-or-all': 'deaf' },
    page: 'decoder-damaged',
  },
  {
    says: 'lights and sound obey, and it stands, after years in its box',
    complaint: 'one-locomotive-only',
    told: { 'what-happens': 'stops-lit', 'last-change': 'time', 'one-or-all': 'deaf', 'read-its-decoder': 'right' },
    page: 'motor-stuck',
  },
  {
    says: 'the reverser clicks to and fro, and nothing moves',
    complaint: 'loop-trips',
    told: { 'does-it-reverse': 'chatters', 'lift-all-vehicles': 'all-well', 'when-it-happens': 'all-the-time' },
    page: 'parked-across-loop',
  },
  {
    says: 'buzz and sparks at one live frog since it was wired, with either setting',
    complaint: 'trips-at-one-spot',
    told: {
      'live-frogs': 'live',
      'last-change': 'track-or-wires',
      'which-vehicles': 'every-one',
      'which-setting': 'no',
      'sparks-at-the-gap': 'at-a-frog',
    },
    page: 'frog-wrong-rail',
  },
  {
    says: 'a short is shown with no track wire in the unit',
    complaint: 'trips-at-power-on',
    told: { 'what-happens': 'only-shown', 'track-plug-pulled': 'still-a-fault', 'booster-lamp': 'fault' },
    page: 'false-short',
  },
  {
    says: 'it blinks five times, then a pause',
    complaint: 'nothing-works',
    told: { 'booster-lamp': 'counts' },
    page: 'blink-code',
  },
  {
    says: 'a unit built by hand is dead now and then, whatever part it feeds',
    complaint: 'now-and-then',
    told: { 'last-change': 'supply-or-unit', 'exchange-units': 'goes-along', 'what-happens': 'stops-lit' },
    page: 'self-built-unit',
  },
  {
    says: 'signals glow that are off, since they share a wire with the track',
    complaint: 'accessories-misbehave',
    told: { 'accessory-moment': 'always', 'one-accessory-or-all': 'all', 'dead-since-a-short': 'accessory' },
    page: 'accessory-shared-return',
  },
  {
    says: 'after each short somebody has to press the button',
    complaint: 'dead-since-a-short',
    told: { 'how-it-comes-back': 'button', 'how-it-protects': 'latches', 'when-it-happens': 'after-a-short' },
    page: 'waits-for-button',
  },
  {
    says: 'red as soon as the last piece of a track across the oval is in',
    complaint: 'trips-at-power-on',
    told: { 'last-change': 'track-or-wires', 'which-vehicles': 'none-needed', 'which-places': 'in-the-loop' },
    page: 'loop-no-device',
  },
  {
    says: 'a knock at the table, and all starts anew',
    complaint: 'now-and-then',
    told: { 'how-it-comes-back': 'blink', 'what-goes-dark': 'everything-at-once', 'booster-lamp': 'goes-out-and-on' },
    page: 'socket-damaged',
  },
  {
    says: 'an engine shorts as it leaves the turntable, and not with the bridge turned half round',
    complaint: 'trips-at-one-spot',
    told: { 'bridge-half-round': 'half-round' },
    page: 'turntable-reversed',
  },
  {
    says: 'the bridge is dead in some positions, whichever way round',
    complaint: 'stops-at-a-spot',
    told: { 'bridge-half-round': 'here-and-there' },
    page: 'turntable',
  },
  {
    says: 'a siding that is dead each winter',
    complaint: 'stops-at-a-spot',
    told: { 'what-happens': 'stops-dark', weather: 'cold' },
    page: 'bad-joiner',
  },
  {
    says: 'each short takes both districts, and at each border one rail is cut',
    complaint: 'wrong-one-trips',
    told: { 'list-every-path': 'one-rail-only', 'what-goes-dark': 'everything-at-once', 'how-many-parts': 'several' },
    page: 'one-rail',
  },
  {
    says: 'signals that are off glow, and share a return with the track',
    complaint: 'none-of-these',
    told: {
      'what-feeds-accessories': 'shares-a-wire',
      'what-happens': 'accessories-wrong',
      'accessory-moment': 'always',
    },
    page: 'accessory-shared-return',
  },
  {
    says: 'an old locomotive on number 0 buzzes and gets hot where it stands',
    complaint: 'short-not-noticed',
    told: { 'unit-settings': 'zero-runs', 'what-happens': 'hums' },
    page: 'address-zero',
  },
  {
    says: 'an engine whose wheels spin on the climb, everything else is fine',
    complaint: 'one-locomotive-only',
    told: { 'what-happens': 'wheels-spin' },
    page: 'wheels-slip',
  },
  {
    says: 'trains of any length slip at the same climb',
    complaint: 'stops-at-a-spot',
    told: { 'what-happens': 'wheels-spin', 'which-places': 'one-spot' },
    page: 'wheels-slip',
  },
  {
    says: 'it hums, and the lights of all fade a little more with each train, worse each year',
    complaint: 'none-of-these',
    told: {
      'what-happens': 'hums',
      'one-or-all': 'all-alike',
      'last-change': 'time',
      'when-it-happens': 'with-traffic',
    },
    page: 'supply-defect',
  },
  {
    says: 'decoders and bulbs die one after the other since another supply',
    complaint: 'none-of-these',
    told: { 'danger-now': 'warm-or-was-hot', 'what-happens': 'fast-or-bright', 'last-change': 'supply' },
    page: 'volts-too-high',
  },
  {
    says: 'decoders die one after the other since another unit',
    complaint: 'dead-since-a-short',
    told: { 'dead-since-a-short': 'vehicle', 'last-change': 'supply-or-unit', 'one-or-all': 'all-alike' },
    page: 'volts-too-high',
  },
  {
    says: 'all goes off as a train enters the new siding, and there is one unit only',
    complaint: 'since-rewired',
    told: {
      'how-many-parts': 'one',
      'when-it-happens': 'at-another-place',
      'what-happens': 'switches-off',
      'which-vehicles': 'every-one',
    },
    page: 'reversed',
  },
  {
    says: 'it trips at the loop on warm days only, and nothing was changed',
    complaint: 'loop-trips',
    told: {
      weather: 'warm',
      'when-it-happens': 'at-the-gap',
      'last-change': 'nothing',
      'does-it-reverse': 'none-there',
    },
    page: 'gap-closed',
  },
  {
    says: 'the phone finds the station no more, and the other throttles work',
    complaint: 'handhelds-dead',
    told: { 'how-driven': 'radio', 'what-the-handhelds-do': 'one-dead' },
    page: 'handheld-lost',
  },
  {
    says: 'the motor of one turnout got hot and melted',
    complaint: 'accessories-misbehave',
    told: { 'danger-now': 'browned', 'what-happens': 'gets-hot', 'one-accessory-or-all': 'one' },
    page: 'coil-held',
  },
  {
    says: 'something got hot, and it was a turnout motor',
    complaint: 'short-not-noticed',
    told: { 'danger-now': 'browned', 'which-case-hot': 'accessory' },
    page: 'coil-held',
  },
  {
    says: 'short locomotives stop on one turnout, and no meter finds volts at its metal frog',
    complaint: 'stops-at-a-spot',
    told: { 'which-places': 'at-a-turnout', 'which-vehicles': 'short-ones', 'meter-at-the-frog': 'none' },
    page: 'frog-not-fed',
  },
  {
    says: 'the shunter alone stops on the crossover, and runs everywhere else',
    complaint: 'stops-at-a-spot',
    told: { 'which-places': 'at-a-turnout', 'one-or-all': 'at-one-place' },
    page: 'frog-not-fed',
  },
  {
    says: 'one part goes off with nothing wrong, and its breaker is set below what the trains draw',
    complaint: 'trips-at-gap',
    told: { 'what-goes-dark': 'only-that-part', 'breaker-lamp': 'opened', 'unit-settings': 'trip-low' },
    page: 'protection-set-low',
  },
  {
    says: 'a third train in one part opens the breaker, which nobody has ever set',
    complaint: 'trips-with-traffic',
    told: {
      'what-is-between': 'breaker',
      'breaker-lamp': 'opened',
      'dim-or-snap': 'snaps-off',
      'count-the-draw': 'few',
    },
    page: 'protection-set-low',
  },
  {
    says: 'it shorts as the engine rolls off the turntable, with the bridge one way round only',
    complaint: 'loop-trips',
    told: { 'which-places': 'on-the-turntable', 'which-way': 'one-way', 'when-it-happens': 'at-another-place' },
    page: 'turntable-reversed',
  },
  {
    says: 'no locomotive reads on the programming track, each does on a loose piece at the output',
    complaint: 'programming-fails',
    told: { 'which-vehicles': 'every-one', 'programming-track': 'cannot-read', 'piece-at-programming': 'reads' },
    page: 'programming-not-fed',
  },
  {
    says: 'one that was just bought hums, stands and cannot be read',
    complaint: 'one-locomotive-only',
    told: { 'what-happens': 'hums', 'last-change': 'vehicle', 'programming-track': 'cannot-read' },
    page: 'no-decoder',
  },
  {
    says: 'slow at the far end, and the volts fall along the bus while trains run',
    complaint: 'slow-far-away',
    told: { 'which-places': 'with-distance', 'meter-while-they-run': 'in-the-bus' },
    page: 'thin-wire',
  },
];

const THREE = 3;

describe('What people tell', () => {
  test.each(TROUBLES)('$says: $page is among the first three', ({ complaint, told, page }) => {
    const { findings } = signPosterior(
      walkModelNow(),
      stateOf({
        complaint,
        answers: Object.entries(told).map(([check, option]) => ({ check, option })),
        skipped: [],
        tools: undefined,
        tried: [],
        trusted: new Set(Object.keys(told)),
      }),
    );
    expect(findings.slice(0, THREE).map(({ fixClass }) => fixClass)).toContain(page);
  });
});

test('what got hot inside is no wheelset first: the unit goes off before a wheel is hot', () => {
  const answers = [
    { check: 'danger-now', option: 'browned' },
    { check: 'last-change', option: 'vehicle' },
  ];
  const found = (complaint: ComplaintId, told: typeof answers): string | undefined => {
    const state = stateOf({ complaint, answers: told, skipped: [], tools: [], tried: [], trusted: new Set() });
    return signPosterior(walkModelNow(), state).findings[0]?.fixClass;
  };
  expect(found('trips-when-set-on', answers)).toBe('loco-short-inside');
  expect(found('trips-when-set-on', answers.slice(1))).toBe('wheelset-short');
});

// Common practice, no source: whoever fits a decoder leaves a brush or a wire on the frame more often than a wheelset turned round.
test('a vehicle that trips everything since it was opened has its short inside, and not at its wheels', () => {
  const first = (option: string): string | undefined => {
    const answers = [
      { check: 'last-change', option },
      { check: 'which-vehicles', option: 'one-vehicle' },
    ];
    const complaint = 'trips-when-set-on';
    const state = stateOf({ complaint, answers, skipped: [], tools: [], tried: [], trusted: new Set() });
    return signPosterior(walkModelNow(), state).findings[0]?.fixClass;
  };
  expect(first('vehicle-opened')).toBe('loco-short-inside');
  expect(first('vehicle')).toBe('wheelset-short');
});

test('a breaker read to be set too low is first, and no page that leaves its amperes alone', () => {
  for (const complaint of ['trips-at-gap', 'trips-with-traffic', 'trips-when-set-on'] as const) {
    const answers = [{ check: 'unit-settings', option: 'trip-low' }];
    const state = stateOf({ complaint, answers, skipped: [], tools: [], tried: [], trusted: new Set() });
    expect(signPosterior(walkModelNow(), state).findings[0]?.fixClass, complaint).toBe('protection-set-low');
  }
});

test('who has one vehicle do it at one place, and nowhere else, has no wheelset first', () => {
  for (const complaint of ['trips-at-gap', 'trips-at-one-spot', 'trips-with-traffic', 'now-and-then'] as const) {
    const answers = [
      { check: 'which-vehicles', option: 'one-vehicle' },
      { check: 'one-or-all', option: 'at-one-place' },
    ];
    const state = stateOf({ complaint, answers, skipped: [], tools: [], tried: [], trusted: new Set() });
    const { findings } = signPosterior(walkModelNow(), state);
    expect(findings[0]?.fixClass, complaint).not.toBe('wheelset-short');
    expect(findings[0]?.fixClass, complaint).not.toBe('loco-short-inside');
  }
});
