// No question supposes what was told to be otherwise, or what nobody has spoken of.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CANNOT, NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/index.ts';
import type { CheckId } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { senselessFor } from '../../src/wizards/put-it-right/model/goes-off.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { SUPPOSED } from '../../src/wizards/put-it-right/model/supposed.ts';
import { askOnAndOn } from './on-and-on.ts';

askOnAndOn();

type Told = Readonly<Record<string, string>>;

interface Case {
  readonly says: string;
  readonly complaint: ComplaintId;
  readonly told: Told;
  readonly never: readonly CheckId[];
}

const ACCESSORIES = ['accessory-moment', 'one-accessory-or-all', 'accessories-without-trains'] as const;
const SECTION = ['what-reverses', 'does-it-reverse', 'short-locomotive-through-loop'] as const;
const SOCKET = ['exchange-handhelds', 'what-the-handhelds-do'] as const;

const CASES: readonly Case[] = [
  {
    says: 'one engine pulls less than it did',
    complaint: 'one-locomotive-only',
    told: { 'one-or-all': 'runs-badly', 'what-happens': 'slow-or-dim' },
    never: [...ACCESSORIES, ...SECTION, ...SOCKET, 'what-trains', 'count-the-draw', 'live-frogs'],
  },
  {
    says: 'the unit goes off once two trains run',
    complaint: 'trips-with-traffic',
    told: { 'what-goes-dark': 'everything-at-once' },
    never: ACCESSORIES,
  },
  {
    says: 'all goes off at once with nothing on the track',
    complaint: 'since-rewired',
    told: { 'what-happens': 'switches-off', 'which-vehicles': 'none-needed' },
    never: ['pull-control-cable', ...ACCESSORIES],
  },
  {
    says: 'a sleeper has melted',
    complaint: 'short-not-noticed',
    told: { 'danger-now': 'browned' },
    never: ['weather', ...ACCESSORIES],
  },
  {
    says: 'one engine trips it as it is set on',
    complaint: 'trips-when-set-on',
    told: { 'one-or-all': 'shorts-alone' },
    never: [...ACCESSORIES, ...SECTION, 'what-trains', 'count-the-draw'],
  },
  {
    says: 'trains are too fast and lamps die',
    complaint: 'none-of-these',
    told: { 'what-happens': 'fast-or-bright' },
    never: [...ACCESSORIES, ...SOCKET],
  },
  {
    says: 'two turnouts move on one command',
    complaint: 'accessories-misbehave',
    told: { 'one-accessory-or-all': 'two-as-one' },
    never: [...SOCKET, ...SECTION, 'which-places', 'live-frogs'],
  },
  {
    says: 'always the same one at one turnout',
    complaint: 'trips-at-one-spot',
    told: { 'which-vehicles': 'one-vehicle' },
    never: ['halve-the-trains', 'move-trains-over', 'when-it-happens', 'put-supplies-back'],
  },
  {
    says: 'lit, and nothing obeys',
    complaint: 'ignores-commands',
    told: { 'one-or-all': 'all-alike' },
    never: ['meter-along-the-way', 'bright-lamp-along', 'clip-thick-pair', 'clip-along-the-bus', 'put-supplies-back'],
  },
  {
    says: 'one engine hums and cannot be read',
    complaint: 'one-locomotive-only',
    told: { 'what-happens': 'hums' },
    never: ['uncouple'],
  },
  {
    says: 'on the bridge of the turntable',
    complaint: 'trips-at-one-spot',
    told: { 'which-places': 'on-the-turntable' },
    never: ['throw-turnouts', 'varnish-the-frog', 'look-at-the-frog', 'meter-at-the-frog', 'weather'],
  },
  {
    says: 'short ones stop on one turnout',
    complaint: 'stops-at-a-spot',
    told: { 'which-vehicles': 'short-ones', 'which-places': 'at-a-turnout' },
    never: ['when-it-happens'],
  },
  {
    says: 'both lamps stayed dark across the gap',
    complaint: 'trips-at-gap',
    told: { 'two-lamps': 'both-dark' },
    never: ['swap-track-wires', 'look-at-the-frog', 'meter-at-the-frog'],
  },
  {
    says: 'an engine without a decoder turns round at the gap',
    complaint: 'trips-at-gap',
    told: { 'analogue-one-at-the-gap': 'turns-round' },
    never: [...SECTION, 'how-many-parts'],
  },
  {
    says: 'with the larger supply all goes off at the gap',
    complaint: 'shuts-down-after-swap',
    told: { 'when-it-happens': 'at-the-gap' },
    never: ['how-many-parts', ...ACCESSORIES],
  },
  {
    says: 'one engine hums and cannot be read',
    complaint: 'one-locomotive-only',
    told: { 'one-or-all': 'deaf', 'programming-track': 'cannot-read' },
    never: ['read-its-decoder', 'track-plug-pulled', 'unit-settings', 'what-trains', ...ACCESSORIES],
  },
  {
    says: 'its decoder is in a double heading, and clearing it did not help',
    complaint: 'one-locomotive-only',
    told: { 'one-or-all': 'deaf', 'read-its-decoder': 'double-heading' },
    never: ['write-anew', 'what-trains', ...ACCESSORIES],
  },
  {
    says: 'across the gap the poles were measured, and they are right',
    complaint: 'trips-at-gap',
    told: { 'meter-same-and-diagonal': 'diagonal-large' },
    never: ['swap-track-wires', ...ACCESSORIES],
  },
  {
    says: 'a screwdriver across the rails far out switches nothing off',
    complaint: 'short-not-noticed',
    told: {},
    never: ['what-is-reported', ...ACCESSORIES],
  },
  {
    says: 'all slows down anywhere with every train, there is one part, and it is well with half of them',
    complaint: 'trips-with-traffic',
    told: { 'which-vehicles': 'every-one', 'which-places': 'anywhere', 'how-many-parts': 'one' },
    never: ['same-locomotive-in-old-part', 'uncouple', 'exchange-supplies', 'exchange-units', 'move-trains-over'],
  },
  {
    says: 'whoever has not told of a second unit owns perhaps none',
    complaint: 'since-rewired',
    told: { 'what-happens': 'switches-off' },
    never: ['pull-control-cable', 'cable-ends-side-by-side', 'exchange-supplies', 'exchange-units'],
  },
  {
    says: 'a throttle by radio has no signal at the far end',
    complaint: 'handhelds-dead',
    told: { 'how-driven': 'radio' },
    never: ['exchange-handhelds', 'which-places', 'live-frogs', ...SECTION, ...ACCESSORIES],
  },
];

/** Answers to these say what the trouble is about: here they are as told, or not known. */
const DECISIVE: ReadonlySet<string> = new Set<CheckId>([
  ...([
    'what-happens',
    'when-it-happens',
    'which-vehicles',
    'which-places',
    'one-or-all',
    'programming-track',
    'last-change',
  ] as const),
  ...(['dead-since-a-short', 'which-case-hot', 'how-driven', 'what-the-handhelds-do'] as const),
]);

/** The checks that a walk asks, whatever is answered; repairs that it proposes do not help. */
function askedIn({ complaint, told }: Case, picks: readonly number[]): string[] {
  const asked: string[] = [];
  const tried: string[] = [];
  let seen: Told = { 'danger-now': 'none', ...told };
  for (const pick of picks) {
    const walk = { ...NOTHING_TOLD, toldFirst: true, tools: ['lamps', 'multimeter', 'wire'] as const, seen, tried };
    const { check, fixClass } = replayWalk(complaint, walk, seen);
    if (check === undefined) {
      if (fixClass === undefined) break;
      tried.push(fixClass);
      continue;
    }
    asked.push(check);
    const options = SIGN_MODEL.checks.find(({ id }) => id === check)?.options ?? [];
    const any = options[pick] ?? CANNOT;
    seen = { ...seen, [check]: DECISIVE.has(check) ? CANNOT : any };
  }
  return asked;
}

describe('A question', () => {
  test.each(CASES)('whose words do not fit is not asked: $says', (one) => {
    const never: ReadonlySet<string> = new Set(one.never);
    const cannot = Array.from({ length: 24 }, () => 99);
    fc.assert(
      fc.property(fc.array(fc.nat(6), { minLength: 9, maxLength: 9 }), (picks) => {
        expect(askedIn(one, picks).filter((id) => never.has(id))).toEqual([]);
      }),
      { numRuns: 12, examples: [[cannot]] },
    );
  });

  test('makes sense again once what it supposes is told', () => {
    const asked = (complaint: ComplaintId, told: Told, check: CheckId): boolean =>
      !senselessFor(
        complaint,
        Object.entries(told).map(([id, option]) => ({ check: id, option })),
      ).has(check);
    expect(asked('none-of-these', {}, 'accessory-moment')).toBe(false);
    expect(asked('none-of-these', { 'what-happens': 'accessories-wrong' }, 'accessory-moment')).toBe(true);
    expect(asked('trips-at-gap', { 'which-places': 'in-the-loop' }, 'what-reverses')).toBe(true);
    expect(asked('loop-trips', {}, 'what-reverses')).toBe(true);
    expect(asked('loop-trips', {}, 'how-many-parts')).toBe(true);
    expect(asked('all-slow', {}, 'what-trains')).toBe(true);
    expect(asked('programming-fails', { 'programming-track': 'others-take-it' }, 'write-anew')).toBe(true);
    expect(asked('stops-at-a-spot', {}, 'live-frogs')).toBe(true);
    for (const check of ['how-it-comes-back', 'what-goes-dark'] as const) {
      expect(asked('stops-at-a-spot', { 'which-vehicles': 'short-ones' }, check)).toBe(false);
      expect(asked('stops-at-a-spot', { 'which-vehicles': 'short-ones', 'breaker-lamp': 'opened' }, check)).toBe(true);
      expect(asked('stops-at-a-spot', {}, check)).toBe(true);
    }
  });

  test('that is withheld, and what withholds it, are there', () => {
    const options = new Map(SIGN_MODEL.checks.map(({ id, options: own }): [string, readonly string[]] => [id, own]));
    for (const { told, unless = {} } of SUPPOSED)
      for (const [check, named] of [...Object.entries(told), ...Object.entries(unless)])
        expect(options.get(check), check).toEqual(expect.arrayContaining([...named]));
  });
});

/** A locomotive gets hot wherever it runs, since another supply. */
const HOT: Told = {
  'which-case-hot': 'locomotive',
  'which-vehicles': 'every-one',
  'one-or-all': 'all-alike',
  'when-it-happens': 'after-minutes',
  'which-places': 'anywhere',
};

describe('Danger', () => {
  test.each(['none-of-these', 'short-not-noticed', 'all-slow', 'dead-since-a-short'] as const)(
    '%s: is said by the first answer, and is no second guess',
    (complaint) => {
      const tools = ['multimeter', 'second-supply'] as const;
      for (const danger of ['none', 'warm-or-was-hot', 'browned']) {
        const proposed: string[] = [];
        let seen: Told = { 'danger-now': danger, 'what-happens': 'gets-hot', 'last-change': 'supply' };
        for (let step = 0; step < 12; step++) {
          const told = { ...NOTHING_TOLD, toldFirst: true, tools, seen, tried: proposed };
          const { check, fixClass } = replayWalk(complaint, told, seen);
          if (check !== undefined) seen = { ...seen, [check]: HOT[check] ?? CANNOT };
          else if (fixClass !== undefined) proposed.push(fixClass);
          else break;
        }
        expect(proposed, danger).not.toContain('switch-off-now');
      }
    },
  );
});
