// Situations that people come with, and what somebody with experience answers. Where nothing else is said: common practice, no source.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { byMoneyThenTime } from '../../src/engine/cost.ts';
import type { WiringCandidate } from '../../src/engine/index.ts';
import { answersTo, QUESTIONS, replay } from '../../src/wizards/planning/index.ts';
import { wireIt } from '../../src/wizards/wire-it/flow.ts';
import type { Stopped, WireFound, Wiring } from '../../src/wizards/wire-it/result.ts';
import { isTripSure, partsOf, shortDrawn, wire } from '../../src/wizards/wire-it/result.ts';
import { WIRED_HOME } from './homes.ts';
import { told } from './told.ts';

type Texts = Readonly<Record<string, string>>;

const found = (more: Texts = {}): WireFound => wire(told({ ...WIRED_HOME, ...more }));

function wiring(more: Texts = {}): Wiring {
  const one = found(more);
  if (one.kind !== 'wiring') throw new Error(`no wiring: ${one.outcome}`);
  return one;
}

function stopped(more: Texts = {}): Stopped {
  const one = found(more);
  if (one.kind !== 'stopped') throw new Error(`not stopped: ${one.outcome}`);
  return one;
}

/** All fixes that what is chosen comes to. */
const parts = ({ chosen, pair }: Wiring): string[] =>
  chosen?.change.kind === 'rewired' ? partsOf(chosen.change, pair) : [chosen?.change.kind ?? 'nothing'];

const UNKNOWN = Object.fromEntries(
  Object.keys(WIRED_HOME)
    .filter((id) => id !== 'system')
    .map((id) => [id, 'unknown']),
);

describe('what is not known is never called good', () => {
  test('everything unknown: not known yet, and what to buy at least for 5 m', () => {
    const one = found(UNKNOWN);
    expect(one).toMatchObject({ kind: 'not-known', outcome: 'wiring-not-known' });
    expect(one.kind === 'not-known' && one.enough.map(({ track }) => track)).toEqual([5, 10]);
  });

  test('a lead of one metre says nothing of the track behind it: 8 m of set track on one pair are not good', () => {
    const oval = {
      'bus-length': '1 m',
      'bus-wire': '0.75 mm2',
      'track-length': '8 m',
      'feed-by': 'pair',
      'track-shape': 'ends',
      joints: 'sectional',
    };
    expect(wiring(oval).now?.verdict).toBe('fails');
  });

  test('joiners that are told to be soldered lose less than plain ones, and only where nobody told is a kind assumed', () => {
    const soldered = wiring({ joints: 'soldered', 'track-length': '12 m' });
    const plain = wiring({ joints: 'plain', 'track-length': '12 m' });
    expect(soldered.now?.drop ?? Number.NaN).toBeLessThan(plain.now?.drop ?? Number.NaN);
    for (const one of [soldered, plain]) expect(one.assumptions.map(({ field }) => field)).not.toContain('joints');
    const unknown = wiring({ joints: 'unknown', 'track-length': '12 m' });
    expect(unknown.assumptions.map(({ field }) => field)).toContain('joints');
  });

  test('a small starter oval on its own lead does for one modern train', () => {
    const starter = {
      'bus-length': '1 m',
      'bus-wire': '0.75 mm2',
      'track-length': '3 m',
      'feed-by': 'pair',
      'track-shape': 'oval',
      joints: 'sectional',
      'wire-amps': '0.5 A',
    };
    expect(wiring(starter).outcome).toBe('wiring-good');
  });

  test('good as told is sure only where no rail, joiner or feeder that one may have would change it', () => {
    expect(wiring().sure.kind).toBe('surely');
    const open = wiring({ 'feeder-wire': 'unknown' });
    expect(open.sure).toEqual({ kind: 'depends', on: ['feeder-wire'] });
  });

  test('wiring that no rail could save is surely not good', () => {
    const far = { 'bus-length': '40 m', 'track-length': '40 m', 'bus-wire': '0.5 mm2', 'wire-amps': '2 A' };
    expect(wiring({ ...far, 'rail-kind': 'unknown', joints: 'unknown' }).sure.kind).toBe('surely-not');
  });
});

describe('"surely"', () => {
  const OPEN = {
    'feeder-count': ['1', '2', '4', '9', '20'],
    'feeder-wire': ['0.14 mm2', '0.25 mm2', '0.5 mm2', '1 mm2'],
    'rail-kind': ['code-100', 'code-83', 'code-70'],
    joints: ['fed', 'soldered', 'plain', 'sectional'],
    'bus-shape': ['end', 'ring'],
  } as const;
  const later = fc.record({
    'feeder-count': fc.constantFrom(...OPEN['feeder-count']),
    'feeder-wire': fc.constantFrom(...OPEN['feeder-wire']),
    'rail-kind': fc.constantFrom(...OPEN['rail-kind']),
    joints: fc.constantFrom(...OPEN.joints),
    'bus-shape': fc.constantFrom(...OPEN['bus-shape']),
  });
  const layout = fc.record({
    length: fc.constantFrom('2 m', '4 m', '8 m', '16 m', '40 m'),
    'bus-wire': fc.constantFrom('0.5 mm2', '1.5 mm2', '4 mm2'),
    'wire-amps': fc.constantFrom('0.3 A', '1 A', '2.5 A'),
    'wire-trip': fc.constantFrom('1.3 A', '3 A', '5 A'),
  });

  test('is turned by nothing that is told later', () => {
    const unknown = Object.fromEntries(Object.keys(OPEN).map((id) => [id, 'unknown']));
    fc.assert(
      fc.property(layout, later, ({ length, ...rest }, more) => {
        const told_ = { ...rest, 'bus-length': length, 'track-length': length, 'supply-amps': '8 A' };
        const quick = found({ ...told_, ...unknown });
        if (quick.kind !== 'wiring' || quick.sure.kind === 'depends') return;
        // With nothing left for a train there is no present state to judge.
        const { now } = wiring({ ...told_, ...more });
        const does = now !== undefined && now.verdict !== 'fails';
        expect(does).toBe(quick.sure.kind === 'surely');
      }),
      { numRuns: 100 },
    );
  });
});

describe('the supply', () => {
  test('2 A behind a unit that trips at 3 A: no short switches it off, and no wire mends that', () => {
    const one = stopped({ 'supply-amps': '2 A' });
    expect(one.outcome).toBe('supply-cannot-trip');
    expect(one.supply?.ratingAbove).toBeCloseTo(3, 9);
  });

  test('equal ratings: perhaps; the verdict on the wires stands', () => {
    const one = wiring({ 'supply-amps': '3 A' });
    expect([one.outcome, one.supply?.kind]).toEqual(['wiring-good', 'perhaps']);
  });

  test('5 A behind 3 A: surely; a short draws what the supply gives and not what the wires would let through', () => {
    const { short, supply } = wiring();
    expect(supply?.kind).toBe('surely');
    for (const { amps } of short.points) expect(amps).toBeLessThanOrEqual(5 * 1.3 + 1e-9);
  });

  test('a label that nobody has read leaves open whether the unit switches off', () => {
    expect(wiring({ 'supply-amps': 'unknown' }).supply).toBeUndefined();
  });

  test('18 V 2 A on a unit that makes 12 V out of it may give more than 2 A: perhaps', () => {
    expect(wiring({ 'supply-volts': '24 V', 'supply-amps': '2 A', 'wire-volts': '12 V' }).supply?.kind).toBe('perhaps');
  });

  test('16 V a.c. of 3 A behind a 3 A unit: the rectifier leaves too little', () => {
    expect(stopped({ 'supply-kind': 'ac', 'supply-amps': '3 A' }).outcome).toBe('supply-cannot-trip');
  });
});

describe('rails set to more volts than their supply has', () => {
  const high = { 'wire-volts': '18 V', 'supply-volts': '15 V' };

  test('stand lower than they are set: both are told, and the wires are worked out with what is there', () => {
    const one = wiring(high);
    expect(one.outOfReach).toEqual({ set: 18, highest: 15 });
    expect(one.plan).toEqual(wiring({ ...high, 'wire-volts': '15 V' }).plan);
    expect(one.short).toEqual(wiring({ ...high, 'wire-volts': '15 V' }).short);
  });

  test('are told where the wires are not known yet too, and what would surely do is worked out with what is there', () => {
    const one = found({ ...high, 'bus-wire': 'unknown' });
    expect(one).toMatchObject({ kind: 'not-known', outOfReach: { set: 18, highest: 15 }, volts: 15 });
  });

  test('are no matter where the supply has just as many or more, where a transformer lifts them, or where nobody has read its label', () => {
    const reached = [
      { 'wire-volts': '15 V' },
      { 'wire-volts': '14 V' },
      { 'supply-kind': 'ac', 'supply-amps': '8 A' },
      { 'supply-volts': 'unknown' },
    ];
    for (const more of reached) expect(wiring({ ...high, ...more }).outOfReach, JSON.stringify(more)).toBeUndefined();
  });

  test('that nobody has told are taken as usual, and no higher than the supply lifts them', () => {
    const one = wiring({ 'wire-volts': 'unknown', 'supply-volts': '12 V' });
    expect([one.plan.source.volts, one.outOfReach]).toEqual([12, undefined]);
    expect(one.assumptions).toContainEqual(
      expect.objectContaining({ field: 'wire-volts', answer: { kind: 'number', span: { from: 12, to: 12 } } }),
    );
  });
});

describe('no purchase on an unread label', () => {
  test('what the unit’s input asks for is not asked here, so it is read before another supply is bought', () => {
    expect(stopped({ 'supply-amps': '2 A' }).buys).toBe(true);
    expect(stopped({ 'wire-volts': '8 V' }).buys).toBe(true);
    expect(stopped({ 'wire-volts': '24 V' }).buys).toBe(false);
  });
});

describe('what the scale bears comes first', () => {
  test('N on 5 A: the trip current comes down to 3 A at the most, whatever the wires and the supply are', () => {
    const one = wiring({ scale: 'n', 'wire-volts': '14 V', 'wire-trip': '5 A', 'supply-amps': '5 A' });
    expect(one.outcome).toBe('lower-trip-level');
    expect(one.chosen?.trip).toBeLessThanOrEqual(3);
  });

  test('24 V on the rails: nothing about wires before that is put right', () => {
    expect(stopped({ 'wire-volts': '24 V' }).outcome).toBe('rail-voltage-too-high');
  });
});

describe('feeders', () => {
  // 10 A for each square millimetre (withheld manuals): 0.14 mm2 bear 1.4 A.
  test('of 0.14 mm² behind 5 A are not good, however many there are', () => {
    const one = wiring({ 'wire-trip': '5 A', 'supply-amps': '6 A', 'feeder-wire': '0.14 mm2', 'feeder-count': '12' });
    expect(one.now?.fails).toContain('feeder-heat');
    expect(parts(one)).toEqual(['thicker-feeders']);
  });

  test('that get too hot are changed alone where all else is well, though no meter shows the difference', () => {
    const track = { 'bus-length': '4 m', 'track-length': '4 m', 'bus-wire': '1 mm2', 'feeder-count': '4' };
    const one = wiring({ ...track, 'wire-amps': '0.3 A', 'supply-amps': '12 A', 'feeder-wire': '0.25 mm2' });
    expect(one.now?.fails).toEqual(['feeder-heat']);
    expect(parts(one)).toEqual(['thicker-feeders']);
    expect(one.chosen?.drop).toBeGreaterThan(0.9 * (one.now?.drop ?? Number.NaN));
  });

  test('of 0.5 mm² behind 3 A are', () => expect(wiring().outcome).toBe('wiring-good'));
});

describe('the cheapest that keeps the limits comes first', () => {
  // planning.md 15: 25 more feeders lose 9.5 %, one lead moved to the middle 8.5 %.
  const LONG = { 'bus-length': '22 m', 'track-length': '22 m', 'bus-wire': '1 mm2', 'wire-amps': '2 A' };

  test('one lead to the middle before two dozen feeders', () => {
    const one = wiring({ ...LONG, 'feeder-count': '8' });
    expect(parts(one)[0]).toBe('feed-bus-from-middle');
    expect(one.chosen?.cost.hours.to).toBeLessThan(5);
  });

  test('the headline tells all that the change is: the middle with feeders, not one of both', () => {
    const one = wiring({ 'bus-length': '30 m', 'track-length': '30 m', 'feeder-count': '1', 'wire-amps': '2 A' });
    expect(parts(one)).toEqual(['feed-bus-from-middle', 'more-feeders']);
    expect(one.chosen?.drop).toBeLessThanOrEqual(0.1);
  });

  test('where thicker wire alone does not reach, the middle and thicker wire do: no booster is bought', () => {
    const one = wiring({ 'bus-length': '50 m', 'track-length': '50 m', 'feeder-count': '25', 'wire-amps': '2 A' });
    expect(one.outcome).toBe('feed-bus-from-middle');
    expect(one.chosen?.change.kind).toBe('rewired');
  });

  test('a ring is told where the bus meets itself, and is the answer only where nothing else of wire will do', () => {
    const one = wiring({ 'bus-length': '30 m', 'track-length': '30 m', 'feeder-count': '15', 'wire-amps': '2 A' });
    expect(one.outcome).not.toBe('bus-as-a-ring');
    expect(one.candidates.some(({ change }) => change.kind === 'rewired' && change.ring === true)).toBe(true);
  });

  test('nothing is told that costs more and does no more', () => {
    const { others, chosen } = wiring({ ...LONG, 'feeder-count': '8' });
    const change = (one: typeof chosen): string[] => (one?.change.kind === 'rewired' ? partsOf(one.change, false) : []);
    for (const one of others) {
      const isMore = change(chosen).every((part) => change(one).includes(part));
      if (isMore && one.verdict === chosen?.verdict) expect(byMoneyThenTime(one.cost, chosen.cost)).toBeLessThan(0);
    }
  });

  test('20 m of N with 3 A: a ring with half of the feeders is the answer before 28 of them', () => {
    const one = wiring({
      scale: 'n',
      'wire-volts': '13 V',
      'wire-amps': '3 A',
      'supply-amps': '12 A',
      'bus-length': '20 m',
      'track-length': '20 m',
      'feeder-count': '3',
      'rail-kind': 'code-55',
    });
    const feeders = ({ change }: (typeof one.candidates)[number]): number =>
      change.kind === 'rewired' ? (change.feeders?.count ?? 0) : 0;
    const ring = one.chosen;
    expect(one.outcome).toBe('bus-as-a-ring');
    expect(ring === undefined ? 0 : feeders(ring)).toBeLessThanOrEqual(14);
    // Whoever cannot close the bus finds another way first among the others.
    const straight = one.others.find(({ change }) => change.kind === 'rewired' && change.ring !== true);
    expect(straight?.cost.money.to).toBeGreaterThan(1.5 * (ring?.cost.money.to ?? Number.POSITIVE_INFINITY));
  });

  test('what else would do is told by money and then by time: a ring with a few feeders before dozens of feeders', () => {
    const feeders = (one: (typeof far.others)[number]): number =>
      one.change.kind === 'rewired' ? (one.change.feeders?.added ?? 0) : 0;
    const far = wiring({ ...LONG, 'feeder-count': '2', 'wire-amps': '1.5 A' });
    const ring = far.others.findIndex(({ change }) => change.kind === 'rewired' && change.ring === true);
    const many = far.others.findIndex((one) => feeders(one) >= 2 * feeders(far.others[ring] ?? one));
    expect([ring, many]).not.toContain(-1);
    expect(ring).toBeLessThan(many);
  });

  test('a lower trip current is told before dearer work on the wires, where trains draw little', () => {
    const { others } = wiring({
      'wire-trip': '5 A',
      'wire-amps': '0.3 A',
      'supply-amps': '12 A',
      'bus-length': '50 m',
      'track-length': '50 m',
      'bus-wire': '0.75 mm2',
      'feeder-count': '2',
    });
    expect(others.map(({ change }) => change.kind)).toEqual(['lower-trip', 'rewired', 'rewired']);
    expect(others).toEqual([...others].sort((a, b) => byMoneyThenTime(a.cost, b.cost)));
  });

  test('where a feeder more makes it good, no booster is told of', () => {
    const one = wiring({ 'bus-length': '12 m', 'track-length': '12 m', 'bus-wire': '0.75 mm2', 'feeder-count': '3' });
    expect(parts(one)).toEqual(['more-feeders']);
    expect(one.others.map(({ change }) => change.kind)).not.toContain('second-stage');
  });

  test.each(['8 m', '14 m', '22 m', '30 m', '50 m'])('so it is at %s', (length) => {
    for (const feeders of ['1', '4', '10']) {
      const { others } = wiring({
        'bus-length': length,
        'track-length': length,
        'bus-wire': '0.75 mm2',
        'feeder-count': feeders,
      });
      expect(others).toEqual([...others].sort((a, b) => byMoneyThenTime(a.cost, b.cost)));
    }
  });
});

describe('rails', () => {
  const volts = (more: Texts): number => wiring(more).now?.volts ?? 0;

  test('an N layout whose rail nobody knows is not taken to have an H0 rail', () => {
    const n = { scale: 'n', 'wire-volts': '14 V', 'wire-trip': '2 A', 'supply-amps': '3 A' };
    const assumed = wiring({ ...n, 'rail-kind': 'unknown' }).assumptions.find(({ field }) => field === 'rail-kind');
    expect(assumed?.answer).toEqual({ kind: 'choice', option: 'code-80' });
  });

  test('code 55 loses more than code 80, that more than code 100; a brass garden rail loses least', () => {
    const few = { 'feeder-count': '2', joints: 'fed' };
    const all = ['code-55', 'code-70', 'code-80', 'code-83', 'code-100', 'steel', 'brass', 'large-brass'];
    const left = all.map((kind) => volts({ ...few, 'rail-kind': kind }));
    const order = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => left[i] ?? 0);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  test('set track has about four times the joiners of long lengths, and loses more', () => {
    const few = { 'feeder-count': '2' };
    const joints = (kind: string): number => wiring({ ...few, joints: kind }).plan.rails.joints.length;
    expect(joints('sectional') / joints('plain')).toBeGreaterThan(3.5);
    expect(volts({ ...few, joints: 'sectional' })).toBeLessThan(volts({ ...few, joints: 'plain' }));
  });
});

describe('wire to buy', () => {
  test.each(['h0', 'n', '0'])('never gets thinner where the track gets longer, at scale %s', (scale) => {
    const areas = ['2 m', '5 m', '8 m', '10 m', '15 m', '20 m', '30 m'].map((length) => {
      const one = found({ ...UNKNOWN, scale, 'bus-length': length, 'track-length': length });
      const change = one.kind === 'not-known' ? one.enough[0]?.least?.change : undefined;
      return change?.kind === 'rewired' ? (change.bus?.area ?? 0) : Number.POSITIVE_INFINITY;
    });
    expect(areas).toEqual([...areas].sort((a, b) => a - b));
  });
});

describe('what a fresh reader would not sign', () => {
  test.each(['0.25 mm2', '0.75 mm2'])(
    'N on a unit for 5 A, feeders of %s: nothing is good, nor will do, before that comes down',
    (feeder) => {
      const one = wiring({
        scale: 'n',
        'wire-volts': '12 V',
        'wire-trip': '5 A',
        'supply-volts': '15 V',
        'supply-amps': '8 A',
        'bus-length': '3 m',
        'track-length': '4 m',
        'rail-kind': 'code-55',
        'feeder-wire': feeder,
      });
      expect(one.outcome).toBe('lower-trip-level');
      for (const { change, verdict } of [...one.candidates, ...one.others])
        if (change.kind !== 'lower-trip' && change.kind !== 'breakers') expect(verdict).toBe('fails');
    },
  );

  test('a garden of 80 m: the ring, if the ends meet, before a hundred feeders', () => {
    const one = wiring({
      scale: '1',
      'wire-volts': '20 V',
      'wire-trip': '10 A',
      'wire-amps': '6 A',
      'supply-volts': '22 V',
      'supply-amps': '12 A',
      'bus-length': '40 m',
      'track-length': '80 m',
      'bus-wire': '2.5 mm2',
      'feeder-count': '3',
      'rail-kind': 'large-brass',
    });
    expect(parts(one)).toContain('bus-as-a-ring');
    const [next] = one.others;
    expect(next?.cost.money.to).toBeGreaterThan(one.chosen?.cost.money.to ?? 0);
    expect(one.others.some(({ change }) => change.kind === 'rewired' && change.ring === undefined)).toBe(true);
  });

  test('where a ring spares little, what needs no second end comes first', () => {
    const one = wiring({
      'bus-length': '20 m',
      'track-length': '20 m',
      'feeder-count': '8',
      'bus-wire': '2.5 mm2',
      'wire-amps': '3 A',
    });
    expect(one.outcome).toBe('wiring-good');
    expect(one.now?.verdict).toBe('bearable');
    expect(one.others.map(({ verdict }) => verdict)).toContain('good');
  });
});

describe('what a short draws', () => {
  const LONG = { 'bus-length': '14 m', 'track-length': '14 m', 'bus-wire': '0.75 mm2', 'feeder-count': 'unknown' };

  test('is never more than the supply surely gives, before and after: no wire raises that', () => {
    const one = wiring({ ...LONG, 'supply-amps': '3 A' });
    expect(one.chosen).not.toBe(one.now);
    for (const candidate of [one.now, one.chosen, ...one.others]) {
      if (candidate === undefined) throw new Error('no such wiring');
      expect(shortDrawn(candidate, one.supply).from).toBeLessThanOrEqual(3);
      expect(shortDrawn(candidate, one.supply).to).toBeLessThanOrEqual(3 * 1.3 + 1e-9);
    }
    for (const { amps } of one.short.points) expect(amps).toBeLessThanOrEqual(3);
  });

  test('3 A behind 3 A: better wires alone make no trip sure; a lower trip current does, and so does a larger supply', () => {
    const equal = wiring({ ...LONG, 'supply-amps': '3 A' });
    for (const one of equal.candidates) {
      const lowered = one.change.kind === 'lower-trip' || one.change.kind === 'breakers';
      expect(isTripSure(one, equal.supply)).toBe(lowered);
    }
    const larger = wiring({ ...LONG, 'supply-amps': '5 A' });
    expect(larger.candidates.every((one) => isTripSure(one, larger.supply))).toBe(true);
  });

  test('with a label that nobody has read no trip is sure', () => {
    const unread = wiring({ 'supply-amps': 'unknown' });
    expect(unread.candidates.some((one) => isTripSure(one, unread.supply))).toBe(false);
  });
});

describe('what to buy where little is known', () => {
  const missing = (more: Texts): readonly string[] => {
    const one = found({ ...UNKNOWN, ...more });
    return one.kind === 'not-known' ? one.missing : [];
  };

  test('rests on the trip current and on the supply, which are read first', () => {
    expect(missing({})).toEqual(['trip', 'supply', 'wire', 'way', 'track', 'feeders']);
    expect(missing({ 'wire-trip': '5 A' })[0]).toBe('supply');
    const told_ = { 'wire-trip': '3 A', 'supply-kind': 'dc', 'supply-volts': '16 V', 'supply-amps': '5 A' };
    expect(missing(told_)).toEqual(['wire', 'way', 'track', 'feeders']);
  });
});

describe('what is called needed', () => {
  const FAR = {
    'wire-volts': '15 V',
    'bus-length': '14 m',
    'track-length': '14 m',
    'bus-wire': '0.75 mm2',
    'feeder-count': 'unknown',
    'feeder-wire': 'unknown',
    'wire-amps': '2 A',
  };

  /** A tenth of what is reckoned to be lost may be lengths and joints that nobody has measured. */
  const falls = ({ drop }: WiringCandidate, now: WiringCandidate | undefined): boolean =>
    now === undefined || drop <= 0.9 * now.drop;

  test('14 m of 0.75 mm² that is too thin: no other of the straight changes that a meter would show and that will do is cheaper', () => {
    for (const amps of ['3 A', '5 A']) {
      const { now, chosen, candidates } = wiring({ ...FAR, 'supply-amps': amps });
      const straight = candidates.filter(
        (one) =>
          one.change.kind === 'rewired' && one.change.ring !== true && one.verdict !== 'fails' && falls(one, now),
      );
      expect(straight.length).toBeGreaterThan(0);
      expect(chosen).toBeDefined();
      expect(now?.verdict).toBe('fails');
      if (chosen === undefined) continue;
      for (const { cost } of straight) expect(byMoneyThenTime(chosen.cost, cost)).toBeLessThanOrEqual(0);
    }
  });

  test('one feeder more that leaves the loss where it was is not needed: on 16 V the unit goes to the middle', () => {
    for (const more of [{ 'supply-amps': '3 A' }, { 'supply-amps': '5 A' }, { 'feeder-count': '5' }]) {
      const one = wiring({ ...FAR, 'wire-volts': '16 V', 'supply-volts': '16 V', ...more });
      expect(one.now?.fails).toContain('drop');
      expect(one.chosen?.verdict).not.toBe('fails');
      expect(one.chosen === undefined ? false : falls(one.chosen, one.now)).toBe(true);
      expect(parts(one)).toEqual(['feed-bus-from-middle']);
      for (const { change, drop } of one.others)
        if (change.kind === 'rewired') expect(drop).toBeLessThanOrEqual(0.9 * (one.now?.drop ?? 1));
    }
  });

  test('from 3 to 24 m, with any wire: what is needed for the volts lowers the loss by more than the lengths are unsure', () => {
    const lengths = ['3 m', '7 m', '10 m', '14 m', '18 m', '24 m'];
    const laid = ['0.5 mm2', '0.75 mm2', '1.5 mm2'].flatMap((bus) =>
      lengths.map((length) =>
        wiring({ ...FAR, 'bus-length': length, 'track-length': length, 'bus-wire': bus, 'feeder-count': '2' }),
      ),
    );
    const needed = laid.flatMap(({ now, chosen }) =>
      now?.fails.join() === 'drop' && chosen?.change.kind === 'rewired' ? [falls(chosen, now)] : [],
    );
    expect(needed.length).toBeGreaterThan(3);
    expect(needed).not.toContain(false);
  });

  test('feeders that nobody has counted are known to be assumed where they are drawn', () => {
    expect(wiring(FAR).feedersTold).toBe(false);
    expect(wiring({ ...FAR, 'feeder-count': '5' }).feedersTold).toBe(true);
  });
});

describe('how far it is from the unit to the farthest feeder, once the bus is not fed from its end', () => {
  const FAR = {
    ...{ 'wire-volts': '16 V', 'supply-volts': '16 V', 'supply-amps': '5 A', 'wire-amps': '2 A' },
    ...{ 'bus-length': '14 m', 'track-length': '14 m', 'bus-wire': '0.75 mm2' },
    ...{ 'feeder-count': 'unknown', 'feeder-wire': 'unknown' },
  };
  const END = { ...FAR, 'bus-shape': 'end' };
  const COUNTED = { ...FAR, 'feeder-count': '5' };

  test('is asked with its shape, and not where it is fed from its end', () => {
    const shape = QUESTIONS['bus-shape'];
    expect(answersTo(shape, told({ 'bus-shape': 'end' }))).toBeDefined();
    for (const at of ['middle', 'ring']) {
      expect(answersTo(shape, told({ 'bus-shape': at }))).toBeUndefined();
      expect(answersTo(shape, told({ 'bus-shape': at, 'bus-way': '7 m' }))).toBeDefined();
    }
  });

  test('told as 7 m of a bus of 14 m, it has what feeding it from its middle was said to bring', () => {
    const before = wiring(END).chosen;
    expect(before?.change).toMatchObject({ kind: 'rewired', middle: expect.anything() });
    const after = wiring({ ...FAR, 'bus-shape': 'middle', 'bus-way': '7 m' }).now;
    expect(after?.drop).toBeCloseTo(before?.drop ?? 0, 6);
    expect(after?.verdict).not.toBe('fails');
  });

  test('not told again, it is half the bus and what lay before it, and that is said to be assumed', () => {
    for (const at of ['middle', 'ring']) {
      const [known, open] = ['7 m', 'unknown'].map((way) => wiring({ ...COUNTED, 'bus-shape': at, 'bus-way': way }));
      expect(open?.now?.drop).toBeCloseTo(known?.now?.drop ?? 0, 9);
      expect(open?.way).toBe(7);
      expect(open?.assumptions.map(({ field }) => field)).toContain('bus-way');
    }
    const away = wiring({ ...FAR, 'bus-length': '20 m', 'bus-shape': 'middle', 'bus-way': 'unknown' });
    expect(away.way).toBe(13);
  });

  test('not told again, it may be as long as the way that was told: what it depends on is that, and it is no reason for more feeders', () => {
    const [known, open] = ['7 m', 'unknown'].map((way) =>
      wiring({ ...COUNTED, 'bus-shape': 'middle', 'bus-way': way }),
    );
    expect(open?.sure).toEqual({ kind: 'depends', on: expect.arrayContaining(['bus-way']) });
    expect(open?.now?.verdict).not.toBe('fails');
    expect(open?.chosen?.change).toEqual(known?.chosen?.change);
  });

  test('links from before the way was asked again take it as not told', () => {
    const way = replay(wireIt, told({ ...WIRED_HOME, ...FAR, 'bus-shape': 'middle' }));
    expect(way.used['bus-way']).toEqual({ kind: 'unknown' });
    expect(way.left).not.toContain('bus-shape');
  });
});

describe('a bus closed to a ring whose feeders nobody has counted', () => {
  const RING = {
    ...{ 'wire-volts': '16 V', 'supply-volts': '16 V', 'supply-amps': '3 A', 'wire-amps': '2 A', 'wire-trip': '3 A' },
    ...{ 'bus-length': '14 m', 'track-length': '14 m', 'bus-wire': '0.75 mm2', 'bus-shape': 'ring', 'bus-way': '7 m' },
    ...{ 'feeder-count': 'unknown', 'feeder-wire': 'unknown', 'rail-kind': 'unknown', joints: 'unknown' },
  };

  test('lacks the feeders alone, and tells what it would be with as many as is usual', () => {
    const one = found(RING);
    if (one.kind !== 'not-known') throw new Error(one.kind);
    expect(one.missing).toEqual(['feeders']);
    expect(one.uncounted?.now?.verdict).not.toBe('fails');
    expect(one.uncounted?.feedersTold).toBe(false);
    expect(one.uncounted?.supply?.kind).toBe('perhaps');
  });

  test('is told nothing of feeders where more is missing', () => {
    const one = found({ ...RING, 'bus-wire': 'unknown' });
    expect(one).toMatchObject({ kind: 'not-known', missing: ['wire', 'feeders'], uncounted: undefined });
  });
});
