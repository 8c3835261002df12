// What people come with, reckoned twice: by the shares typed for each title, and by what the rows say of its signs. Where the two differ by
// more than a factor of two, a reason stands here. And the shares against practice: common practice, no source (judgement).
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../src/engine/at-once.ts';
import type { OpeningRow } from '../../src/engine/diagnosis/sign-model.ts';
import type { SignTables } from '../../src/engine/diagnosis/sign-tables.ts';
import { signTables } from '../../src/engine/diagnosis/sign-tables.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';

const TABLES: SignTables = atOnce(signTables(SIGN_MODEL, { memory: 0, eye: 0, instrument: 0 }));
const { causes, openings } = SIGN_MODEL;
const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);

/** Names of the values that a joint value of a group stands for, sign by sign. */
function namesOf(group: number, joint: number): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  let rest = joint;
  for (const { id, values } of [...(TABLES.groups[group]?.signs ?? [])].reverse()) {
    names.set(id, values[rest % values.length] ?? '');
    rest = Math.floor(rest / values.length);
  }
  return names;
}

/** P(joint value) of a group under a cause, over the layouts in which the cause can exist. */
function meanOf(cause: number, group: number): number[] {
  const { groups, circumstances } = TABLES.causes[cause] ?? { groups: [], circumstances: [] };
  const { by, width, chances } = groups[group] ?? { by: 0, width: 0, chances: new Float64Array(0) };
  const { of, size } = TABLES.dims.of(by);
  const weights = Array.from({ length: size }, (_, k) =>
    of.reduce((product, at) => product * (circumstances[at]?.[TABLES.dims.within(by, 1 << at)[k] ?? 0] ?? 0), 1),
  );
  return Array.from({ length: width }, (_, v) =>
    sumOf(weights.map((weight, k) => weight * (chances[k * width + v] ?? 0))),
  );
}

/** P(all that the title says holds | cause). Groups by themselves, signs of one group together. */
function fitOf(cause: number, { says }: OpeningRow): number {
  return TABLES.groups.reduce((product, { signs }, group) => {
    const said = signs.filter(({ id }) => says[id] !== undefined);
    if (said.length === 0) return product;
    const holds = (joint: number): boolean => {
      const names = namesOf(group, joint);
      return said.every(({ id }) => says[id]?.includes(names.get(id) ?? ''));
    };
    return product * sumOf(meanOf(cause, group).filter((_, joint) => holds(joint)));
  }, 1);
}

const BY_SHARE = openings.map(({ often, shares }) => {
  const total = sumOf(Object.values(shares));
  return causes.map(({ id }) => (often * (shares[id] ?? 0)) / total);
});
const PRIORS = causes.map((_, at) => sumOf(BY_SHARE.map((row) => row[at] ?? 0)));
const FITS = openings.map((opening) => causes.map((_, at) => fitOf(at, opening)));

/** How readily each title is tapped where it fits, so that each is tapped as often as is typed: found by fitting one after the other. */
const READINESS = Array.from({ length: 300 }).reduce<number[]>(
  (readiness) => {
    const met = tappedBy(readiness);
    return readiness.map((one, k) => {
      const often = sumOf(causes.map((_, at) => (PRIORS[at] ?? 0) * (met[k]?.[at] ?? 0)));
      return (one * (openings[k]?.often ?? 0)) / often;
    });
  },
  openings.map(() => 1),
);

/** P(title | cause) by the rows. */
function tappedBy(readiness: readonly number[]): number[][] {
  const sums = causes.map((_, at) => sumOf(readiness.map((one, k) => one * (FITS[k]?.[at] ?? 0))));
  return FITS.map((row, k) => row.map((fit, at) => ((readiness[k] ?? 0) * fit) / (sums[at] ?? 1)));
}
const BY_ROW = tappedBy(READINESS);

/** Titles that three in ten of those with a cause come with, by the one reckoning or the other. */
const COMMON = 0.3;
const PAIRS = openings.flatMap(({ id: title }, k) =>
  causes.flatMap(({ id: cause }, at) => {
    const share = (BY_SHARE[k]?.[at] ?? 0) / (PRIORS[at] ?? 1);
    const row = BY_ROW[k]?.[at] ?? 0;
    return Math.max(share, row) < COMMON
      ? []
      : [{ pair: `${title}: ${cause}`, share, row, apart: Math.max(share / row, row / share) }];
  }),
);

const REASONS: Readonly<Record<string, readonly string[]>> = {
  'Only whoever tests the gap before the new part is fed taps that title, and then no other.': [
    'still-runs-past-gap: forgotten-path',
    'still-runs-past-gap: old-feeder-left',
    'still-runs-past-gap: stored-energy',
    'still-runs-past-gap: still-straddling',
    'still-runs-past-gap: already-fed',
  ],
  'Parts that are joined and in step trip nothing; where it trips at the gap the sides are reversed too, and that counts as the cause.':
    ['trips-at-gap: one-rail', 'trips-at-gap: forgotten-path', 'trips-at-gap: old-feeder-left'],
  'What came in with a piece of work is told as that piece of work.': [
    'shuts-down-after-swap: supplies-swapped',
    'shuts-down-after-swap: rail-volts-too-high',
    'shuts-down-after-swap: wrong-supply-kind',
    'jerks-at-gap: supplies-swapped',
    'since-rewired: masked-reversal',
  ],
  'One locomotive has a title of its own.': [
    'ignores-commands: decoder-muddled',
    'ignores-commands: motor-noise',
    'ignores-commands: loco-loose-contact',
    'ignores-commands: motor-stuck',
  ],
  'People name the thing that they see act up: the loop, the turnouts, the report, the programming track, the train.': [
    'loop-trips: two-auto-reversers',
    'trips-at-gap: two-auto-reversers',
    'accessories-misbehave: shared-wire',
    'empty-shown-occupied: shared-wire',
    'accessories-misbehave: no-reference',
    'stops-at-gap: no-reference',
    'accessories-misbehave: hidden-common',
    'accessories-misbehave: centre-swapped',
    'programming-fails: program-bridge',
    'starts-by-itself: computer-acts',
    'wrong-one-trips: breaker-wired-unlike',
  ],
  'Whoever has a second unit looks for commands first, and practice puts these at the head of that title.': [
    'ignores-commands: link-missing',
    'ignores-commands: link-wrong-socket',
    'ignores-commands: link-faulty',
    'ignores-commands: two-sources',
    'ignores-commands: booster-role',
    'ignores-commands: wrong-format',
    'trips-at-power-on: wrong-format',
  ],
  'Dead everywhere is said of the whole layout, sooner than of what one train did or a throttle shows.': [
    'nothing-works: panel-switch',
    'stops-at-gap: panel-switch',
    'nothing-works: stop-active',
    'stops-at-gap: stop-active',
    'ignores-commands: stop-active',
    'nothing-works: supply-defect',
    'handhelds-dead: mains-off',
  ],
  'Where trains stop is said sooner than that they stay lit.': [
    'stops-at-gap: brake-section',
    'stops-at-a-spot: brake-section',
    'ignores-commands: brake-section',
  ],
  'A weak path or a detector is found by warmth, reports or a step at its ends, before anybody thinks of distance.': [
    'slow-far-away: leak',
    'slow-far-away: detector-drop',
  ],
  'Heat may lie behind any title, so that each has a little of it.': ['short-not-noticed: unsafe-heat'],
};
const EXPLAINED = Object.values(REASONS).flat();

describe('What people come with', () => {
  test('is by its signs within a factor of two of its shares, or a reason stands beside it', () => {
    const silent = PAIRS.filter(({ pair, apart }) => apart > 2 && !EXPLAINED.includes(pair));
    expect(silent.map(({ pair, share, row }) => `${pair} shares ${share.toFixed(2)} rows ${row.toFixed(2)}`)).toEqual(
      [],
    );
  });

  test('has no reason for what agrees', () => {
    const agreeing = PAIRS.filter(({ pair, apart }) => apart < 1.5 && EXPLAINED.includes(pair));
    expect(agreeing.map(({ pair }) => pair)).toEqual([]);
    expect(
      EXPLAINED.filter(
        (pair) => !openings.some(({ id, shares }) => Object.keys(shares).some((cause) => `${id}: ${cause}` === pair)),
      ),
    ).toEqual([]);
  });

  test('is tapped as often as is typed', () => {
    for (const [k, { id, often }] of openings.entries())
      expect(sumOf(causes.map((_, at) => (PRIORS[at] ?? 0) * (BY_ROW[k]?.[at] ?? 0))), id).toBeCloseTo(often, 1);
  });
});

/** Per cent of each title that an experienced hand expects, before any answer; causes of one line together. Common practice, no source. */
const IN_PRACTICE: Readonly<Record<string, readonly (readonly [number, ...string[]])[]>> = {
  'stops-at-gap': [
    [37, 'feed-missing', 'feed-wire-broken', 'dead-joint', 'wrong-output'],
    [21, 'booster-off', 'stop-active'],
    [17, 'link-missing', 'link-wrong-socket', 'link-faulty'],
    [14, 'long-dead-gap', 'joint-step', 'pickup', 'dirty'],
    [4, 'turnout-routing'],
  ],
  'trips-at-gap': [
    [44, 'feed-reversed', 'link-inverted'],
    [12, 'low-setting', 'unlike-supplies', 'supplies-swapped'],
    [8, 'reverse-route', 'loop-not-isolated'],
    [7, 'wheel-bridges-frog', 'live-frog', 'frog-cross-district'],
    [7, 'overload-district', 'overload-total', 'inrush', 'booster-off'],
    [5, 'wheelset-short', 'metal-bodies'],
    [4, 'booster-role'],
    [4, 'no-reference', 'hidden-common'],
    [3, 'cutout-mismatch'],
  ],
  'shuts-down-after-swap': [
    [26, 'low-setting', 'unlike-supplies', 'supplies-swapped'],
    [22, 'supply-limit', 'supply-hiccup'],
    [16, 'wrong-supply-kind'],
    [6, 'feed-reversed'],
    [5, 'feed-missing', 'feed-wire-broken'],
    [4, 'link-missing', 'link-wrong-socket', 'link-faulty'],
    [6, 'overload-district', 'overload-total'],
    [5, 'hidden-common'],
    [5, 'supply-defect'],
  ],
  'trips-with-traffic': [
    [44, 'overload-district', 'overload-total', 'stage-limit'],
    [13, 'supply-limit', 'supply-hiccup'],
    [14, 'wheel-bridges-frog', 'wheelset-short', 'wheelset-at-turnouts', 'metal-across'],
    [7, 'binding-locomotive'],
    [6, 'lamps'],
    [5, 'sagging-accessories', 'accessory-short'],
    [4, 'stage-heat', 'supply-heat'],
    [3, 'inrush'],
  ],
  'trips-at-power-on': [
    [19, 'metal-across', 'moving-contact'],
    [15, 'crossed-feeder'],
    [11, 'wheelset-short'],
    [11, 'inrush', 'restart-load'],
    [10, 'live-frog'],
    [9, 'gap-closed', 'forgotten-path', 'old-feeder-left', 'feed-reversed'],
    [7, 'leftover-wiring', 'two-sources'],
    [5, 'loop-not-isolated'],
    [4, 'stage-defect'],
    [3, 'wrong-supply-kind', 'supply-hiccup'],
  ],
  'ignores-commands': [
    [32, 'link-missing', 'link-wrong-socket', 'link-faulty'],
    [13, 'suppressor'],
    [10, 'address'],
    [8, 'two-sources'],
    [8, 'wrong-output'],
    [7, 'booster-role'],
    [6, 'dirty', 'pickup'],
    [4, 'stop-active'],
    [3, 'wrong-format'],
  ],
  'slow-far-away': [
    [28, 'few-feeds'],
    [22, 'loose-joiner', 'dead-joint'],
    [14, 'thin-wire'],
    [10, 'dirty'],
    [9, 'supply-limit', 'overload-total', 'overload-district', 'stage-limit'],
    [6, 'low-setting'],
    [5, 'binding-locomotive'],
  ],
  'jerks-at-gap': [
    [45, 'joint-step', 'dirty', 'pickup', 'long-dead-gap'],
    [14, 'low-setting', 'unlike-supplies', 'supplies-swapped'],
    [6, 'feed-reversed', 'link-inverted'],
    [6, 'no-reference'],
    [5, 'cutout-mismatch'],
    [4, 'skew'],
    [3, 'inrush'],
  ],
  'accessories-misbehave': [
    [30, 'sagging-accessories'],
    [15, 'accessory-reset'],
    [12, 'accessory-supply-weak'],
    [9, 'accessory-address'],
    [9, 'no-reference', 'hidden-common', 'shared-wire'],
    [7, 'accessory-wiring'],
    [5, 'long-bus', 'accessory-random'],
    [3, 'accessory-polarity'],
  ],
  'short-not-noticed': [
    [44, 'few-feeds', 'thin-wire', 'loose-joiner'],
    [22, 'high-trip'],
    [15, 'leak', 'metal-across', 'wet-ballast'],
    [8, 'breaker-setting', 'slow-trip'],
    [4, 'supply-hiccup', 'supply-limit'],
    [4, 'stage-defect'],
  ],
  'loop-trips': [
    [24, 'loop-too-short'],
    [24, 'loop-not-isolated'],
    [16, 'reverser-grading', 'high-trip', 'slow-trip'],
    [12, 'loop-no-device'],
    [7, 'two-auto-reversers'],
    [6, 'gap-closed'],
    [5, 'wheel-bridges-frog'],
  ],
  'still-runs-past-gap': [
    [50, 'forgotten-path', 'old-feeder-left'],
    [14, 'gap-closed'],
    [16, 'stored-energy'],
    [7, 'still-straddling'],
    [6, 'already-fed'],
    [4, 'shared-wire', 'frog-cross-district'],
  ],
  'cuts-out-after-a-while': [
    [26, 'stage-heat'],
    [18, 'overload-total', 'overload-district', 'stage-limit', 'supply-limit'],
    [14, 'moving-contact', 'metal-across', 'wheelset-short', 'loco-short-inside'],
    [12, 'supply-heat', 'supply-defect'],
    [9, 'loose-joiner'],
    [6, 'binding-locomotive'],
    [5, 'gap-closed'],
    [3, 'lamps'],
  ],
};

describe('The shares of a title', () => {
  test.each(Object.entries(IN_PRACTICE))('%s: lie within a factor of two of practice', (title, lines) => {
    const shares: OpeningRow['shares'] = openings.find(({ id }) => id === title)?.shares ?? {};
    expect(lines.flatMap(([, ...of]) => of).filter((cause) => !causes.some(({ id }) => id === cause))).toEqual([]);
    const total = sumOf(Object.values(shares));
    const off = lines.flatMap(([expected, ...of]) => {
      const share = (100 * sumOf(of.map((cause) => shares[cause] ?? 0))) / total;
      return share > expected * 2 || share < expected / 2
        ? [`${of.join(' + ')}: ${share.toFixed(1)} against ${expected}`]
        : [];
    });
    expect(off).toEqual([]);
  });
});
