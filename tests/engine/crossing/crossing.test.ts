import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CrossingInput, InPhaseCrossing } from '../../../src/engine/crossing/crossing.ts';
import { crossingInPhase } from '../../../src/engine/crossing/crossing.ts';
import type { PlacedSide } from '../../../src/engine/crossing/moments.ts';
import { CROSSING_MOMENTS, crossingOf } from '../../../src/engine/crossing/moments.ts';
import { CROSSING_OHMS, typicalOhms } from '../../../src/engine/crossing/ohms.ts';
import { pushAt, secondsAbove } from '../../../src/engine/crossing/push.ts';
import type { CrossingPush, CrossingSide } from '../../../src/engine/crossing/sides.ts';
import { BIPOLAR_BACK_DROP } from '../../../src/engine/crossing/sides.ts';
import { summarise } from '../../../src/engine/power/demand.ts';
import { districtLoad } from '../../../src/engine/power/fleet.ts';
import { bothBusy } from '../../../src/engine/power/joint.ts';
import { neighbourVolts } from '../../../src/engine/power/rail-voltage.ts';
import type { NamedSupply } from '../../../src/engine/power/supplies.ts';
import { arrange } from '../../../src/engine/power/supplies.ts';
import { near } from '../../near.ts';
import { h0, unit } from '../../samples.ts';
import { spread } from '../../spread.ts';
import { loopOhms } from './loop-parts.ts';
import { pushCurrentAt } from './push-course.ts';

/** What a block detector of the diode kind takes from one rail, volts. Source: from-memory. */
const DIODE_DETECTOR = { from: 0.7, to: 1.4 };

const side = (volts: CrossingSide['volts'], load: number, more: Partial<CrossingSide> = {}): CrossingSide => ({
  volts,
  load,
  ownUse: 0,
  limit: 3,
  ...more,
});

/** The booster is the near side, the command station the far one. */
const booster = (volts: CrossingSide['volts'], load: number, more: Partial<CrossingSide> = {}) =>
  side(volts, load, { role: 'booster', ...more });
const station = (volts: CrossingSide['volts'], load: number, more: Partial<CrossingSide> = {}) =>
  side(volts, load, { role: 'command-station', ...more });

function crossing(input: CrossingInput): InPhaseCrossing {
  const result = crossingInPhase(input);
  if (result.kind !== 'crossing') throw new Error(`no crossing: ${JSON.stringify(result)}`);
  return result;
}

function onlyPush(input: CrossingInput): CrossingPush {
  const { pushes } = crossing(input);
  const [first] = pushes;
  if (first === undefined || pushes.length !== 1) throw new Error(`${pushes.length} pushes`);
  return first;
}

const adviceIds = (one: InPhaseCrossing): string[] => one.advice.map(({ id }) => id);

describe('a stage that cannot sink takes nothing back', () => {
  // Two stages, the lower with a supply of 0.05 ohm behind a diode and 2.2 mF: worked out for this site in steps of time.
  test.each([
    [17, 15, 1, 1, 2.0, 1.0, 16.0, 0],
    [17, 15, 1, 3, 2.05, 2.05, 14.95, 0.95],
    [16, 15, 0.3, 1, 3.33, 1.0, 15.7, 0],
    [17, 15, 0.3, 0.1, 6.67, 0.1, 16.97, 0],
  ])(
    '%d V against %d V over %d ohms, %d A there: peak %d A, then %d A, link at %d V, the lower gives %d A',
    (...row) => {
      const [higherVolts, lowerVolts, ohms, load, peak, steady, link, gives] = row;
      const found = pushAt({ higherVolts, lowerVolts, ohms, load, ownUse: 0, linkFarads: 2.2e-3, supplyOhms: 0.05 });
      near(found.peak, peak, 0.005, 'peak');
      near(found.takeOver, steady, 0.005, 'steady');
      near(found.link, link, 0.005, 'link');
      near(found.lowerGives, gives, 0.005, 'lower gives');
    },
  );

  test('2 V over 0.3 ohms into 2.2 mF: 6.7 A for 0.7 ms, 4.4 mC at most', () => {
    const found = pushAt({ higherVolts: 17, lowerVolts: 15, ohms: 0.3, load: 0.5, ownUse: 0, linkFarads: 2.2e-3 });
    near(found.pulse, 6.67, 0.01);
    near(found.timeConstant, 0.66e-3, 1e-9);
    near(found.charge, 4.4e-3, 1e-9);
  });

  test('a step of 0.5 V is harmless in any case: 1.7 A for less than a millisecond, then 0.5 A over the usual ohm', () => {
    const found = onlyPush({ near: side(15.5, 1), far: side(15, 1) });
    expect(found.pulse.span.to).toBeLessThanOrEqual(1.7);
    near(found.takeOver.typical, 0.5, 1e-9);
    const worst = pushAt({ higherVolts: 15.5, lowerVolts: 15, ohms: 0.3, load: 0, ownUse: 0, linkFarads: 2.2e-3 });
    expect(worst.timeConstant).toBeLessThan(1e-3);
    expect(crossing({ near: side(15.5, 1), far: side(15, 1) }).findings).toContain('harmless-step');
  });

  test('what the lower stage needs for itself is taken over too', () => {
    const found = onlyPush({ near: booster(17, 1), far: station(15, 0.5, { ownUse: 0.25 }), ohms: 1 });
    near(found.takeOver.typical, 0.75, 1e-12);
    near(found.link.typical, 16.25, 1e-12);
    near(found.lift.typical, 1.25, 1e-12);
    near(found.carries.typical, 1.75, 1e-12);
  });

  test('while the difference is less than the lower district draws, its supply still delivers and nothing is lifted', () => {
    const result = crossing({ near: booster(16, 0.5), far: station(15, 2), ohms: { from: 0.6, to: 3 } });
    expect(result.findings).toContain('lower-still-delivers');
    near(result.pushes[0]?.lift.span.to ?? Number.NaN, 0, 1e-12);
    near(result.pushes[0]?.takeOver.span.to ?? Number.NaN, 1 / 0.6, 1e-12);
  });

  test('the current falls from the pulse to the take-over with the time constant', () => {
    const input = { higherVolts: 17, lowerVolts: 15, ohms: 1, load: 1, ownUse: 0, linkFarads: 2.2e-3 };
    near(pushCurrentAt(input, 0), 2, 1e-12);
    near(pushCurrentAt(input, 2.2e-3), 1 + Math.exp(-1), 1e-12);
    near(pushCurrentAt(input, 1), 1, 1e-12);
    near(secondsAbove(pushAt(input), 1.5), 2.2e-3 * Math.LN2, 1e-12);
    near(pushCurrentAt(input, secondsAbove(pushAt(input), 1.2)), 1.2, 1e-9);
    expect(secondsAbove(pushAt(input), 2.5)).toBe(0);
    expect(secondsAbove(pushAt(input), 0.5)).toBe(Number.POSITIVE_INFINITY);
    expect(secondsAbove(pushAt(input), 1)).toBe(Number.POSITIVE_INFINITY);
  });

  test('without a capacitor only the steady current is left', () => {
    const input = { higherVolts: 17, lowerVolts: 15, ohms: 1, load: 1, ownUse: 0, linkFarads: 0 };
    expect(pushCurrentAt(input, 0.001)).toBe(1);
  });
});

describe('a supply that sinks current', () => {
  test('lets the whole difference flow for good, whatever its district draws', () => {
    const input = { near: booster(17, 0), far: station(15, 0.1, { sinks: true }), ohms: 1 };
    near(onlyPush(input).takeOver.typical, 2, 1e-12);
    expect(onlyPush(input).takeOver.working.formula).toBe('crossing-sinking');
    near(onlyPush({ ...input, far: station(15, 0.1) }).takeOver.typical, 0.1, 1e-12);
  });
});

describe('a bipolar stage', () => {
  const far = station(15, 0.5, { stageKind: 'bipolar', ownUse: 0.2 });

  test('conducts back only from about 3 V: below, its rails are fed but its link is left alone', () => {
    const result = crossing({ near: booster(17.5, 0.5), far, ohms: 1 });
    near(result.pushes[0]?.takeOver.span.to ?? Number.NaN, 0.5, 1e-12);
    near(result.pushes[0]?.pulse.span.to ?? Number.NaN, 0.5, 1e-12);
    near(result.pushes[0]?.lift.span.to ?? Number.NaN, 0, 1e-12);
    expect(result.findings).toContain('bipolar-blocks');
    expect(result.verdict).toBe('adjust');
  });

  test('above that also feeds what the stage needs, and lifts its link', () => {
    const found = onlyPush({ near: booster(21, 0.5), far, ohms: 1 });
    near(found.takeOver.span.to, 0.7, 1e-12);
    near(found.pulse.span.to, 21 - 15 - BIPOLAR_BACK_DROP.from, 1e-12);
    near(found.link.span.to, 21 - 0.7 - BIPOLAR_BACK_DROP.from, 1e-12);
    expect(found.conductsBack).toBe('yes');
  });
});

describe('a block detector of the diode kind', () => {
  test('counts in the step: two sides of 15 V, one behind a detector', () => {
    const { step, higher } = crossing({ near: side(15, 1), far: side(15, 1, { detectorVolts: DIODE_DETECTOR }) });
    near(step.from, 0.7, 1e-12);
    near(step.to, 1.4, 1e-12);
    expect(higher).toBe('near');
  });

  test('stands in the way back: no more flows than the lower rails use', () => {
    const found = onlyPush({
      near: side(15, 1),
      far: side(15, 0.4, { detectorVolts: DIODE_DETECTOR, ownUse: 1 }),
      ohms: 1,
    });
    near(found.takeOver.span.to, 0.4, 1e-12);
    near(found.link.span.from, 15, 1e-12);
    near(found.link.span.to, 15, 1e-12);
  });

  test('alike on both sides cancels', () => {
    const both = { detectorVolts: 1 };
    expect(crossing({ near: side(15, 1, both), far: side(15, 1, both) }).step).toEqual({ from: 0, to: 0 });
  });
});

describe('who carries what, and who trips', () => {
  test('the higher stage takes over more than it can: it trips, and the other, left with both, trips too', () => {
    const result = crossing({ near: booster(17, 2), far: station(15, 2), ohms: { from: 0.3, to: 0.9 } });
    expect(result.tripsFirst).toBe('near');
    expect([result.trips, result.cascade, result.oneCarriesBoth]).toEqual(['yes', 'yes', false]);
    expect(result.verdict).toBe('do-not-run');
    expect(result.reasons[0]).toBe('cascade');
    expect(adviceIds(result)).toContain('fewer-trains-there');
    expect(result.advice.find(({ id }) => id === 'fewer-trains-there')?.side).toBe('far');
    expect(result.pushes[0]?.secondsOverLimit).toBe(Number.POSITIVE_INFINITY);
  });

  test('over a poor contact it takes over too little to trip: perhaps', () => {
    const result = crossing({ near: booster(17, 2), far: station(15, 2), ohms: CROSSING_OHMS });
    expect([result.trips, result.cascade]).toEqual(['perhaps', 'perhaps']);
    expect(result.reasons).toContain('cascade-possible');
  });

  test('no cascade where the other stage alone carries both', () => {
    const result = crossing({ near: booster(15.4, 2), far: station(15, 2, { limit: 5 }), ohms: 0.3 });
    expect([result.trips, result.cascade, result.oneCarriesBoth]).toEqual(['yes', 'no', true]);
    expect(result.verdict).toBe('adjust');
    expect(result.reasons).toEqual(['higher-stage-trips']);
    expect(adviceIds(result)).toEqual(['fewer-trains-there', 'do-not-stop-across-the-gap']);
  });

  test('a pulse may pass the limit of a stage that holds afterwards, and for how long', () => {
    const result = crossing({ near: booster(17, 1), far: station(15, 0.5), ohms: 0.3 });
    expect(result.trips).toBe('no');
    expect(result.findings).toContain('pulse-passes-limit');
    near(result.pushes[0]?.secondsOverLimit ?? Number.NaN, 0.66e-3 * Math.log((2 / 0.3 - 0.5) / 1.5), 1e-9);
  });

  test('a stage that is overloaded without any train across is not blamed on the crossing', () => {
    const result = crossing({ near: booster(15.2, 4), far: station(15, 1) });
    expect(result.trips).toBe('no');
    expect(result.findings).toContain('overloaded-anyway');
  });

  test('a stage without power comes alive through the train', () => {
    const result = crossing({ near: station(15, 0.5), far: booster(0, 0.4) });
    expect(result.findings).toContain('wakes-unpowered-stage');
    near(result.pushes[0]?.takeOver.typical ?? Number.NaN, 0.4, 1e-12);
    expect(result.verdict).toBe('do-not-run');
  });
});

describe('the verdict by the step', () => {
  const withStep = (volts: number) => crossing({ near: booster(15 + volts, 0.2), far: station(15, 0.2) });

  test.each([
    [0, 'fine', 'harmless-step'],
    [0.5, 'fine', 'harmless-step'],
    [1, 'adjust', 'pulse-passes-limit'],
    [2, 'do-not-run', 'sparks'],
    [3, 'do-not-run', 'guards-may-act'],
  ])('%d V: %s (%s)', (volts, verdict, finding) => {
    expect(withStep(volts).verdict).toBe(verdict);
    expect(withStep(volts).findings).toContain(finding);
  });

  // NEM 651: a contact of that connector bears 0.5 A.
  test('1 V with a busy district beyond warms small pick-ups', () => {
    const result = crossing({ near: booster(16, 0.5), far: station(15, 1), ohms: 1 });
    near(result.pushes[0]?.takeOver.typical ?? Number.NaN, 1, 1e-12);
    expect(result.findings).toContain('pick-ups-warm');
  });

  test('a changed limit moves the border', () => {
    expect(crossing({ near: booster(16, 0.2), far: station(15, 0.2), stepLimit: 1 }).verdict).toBe('fine');
  });

  test('a lower supply that may or may not still deliver is not said to', () => {
    const found = crossing({ near: booster(17, 0.2), far: station({ from: 15, to: 17 }, 1) });
    expect(found.pushes.map(({ lowerGives }) => lowerGives)).toContain('perhaps');
    expect(found.findings).not.toContain('lower-still-delivers');
    expect(crossing({ near: booster(15, 1), far: station(15, 1) }).findings).not.toContain('lower-still-delivers');
  });

  test('a pulse below the limit is not said to pass it', () => {
    expect(crossing({ near: booster(15.2, 0.2), far: station(15, 0.2) }).findings).not.toContain('pulse-passes-limit');
  });

  test('nobody is told to set an output to the 0 V of a part without power', () => {
    const dead = crossing({ near: booster(17, 0.2, { output: 'settable' }), far: station(0, 1) });
    expect(dead.advice.filter((one) => 'volts' in one && one.volts === 0)).toEqual([]);
  });

  test('a link lifted above its guard is not run', () => {
    const result = crossing({ near: booster(19, 0.2), far: station(18, 0.1, { guardVolts: 18.5 }) });
    expect(result.reasons).toContain('link-above-guard');
    expect(result.verdict).toBe('do-not-run');
  });

  test('rails that may stand either way round give a push in each direction', () => {
    const result = crossing({ near: booster({ from: 14, to: 16 }, 1), far: station(15, 1) });
    expect(result.higher).toBe('either');
    expect(result.pushes.map(({ from }) => from)).toEqual(['near', 'far']);
    expect(result.step).toEqual({ from: -1, to: 1 });
    near(result.current.to, 1, 1e-12);
    near(result.current.from, -1, 1e-12);
  });
});

describe('advice comes in the order in which to try it', () => {
  test('a booster that stands higher, outputs not known: all five', () => {
    const far = station(15, 2, { mayStandHigher: true });
    expect(adviceIds(crossing({ near: booster(17, 2), far, ohms: 0.3 }))).toEqual([
      'set-both-outputs-equal',
      'two-supplies-alike',
      'higher-rails-to-command-station',
      'fewer-trains-there',
      'do-not-stop-across-the-gap',
    ]);
  });

  test('outputs are brought down to the lower one', () => {
    const set = { output: 'settable' } as const;
    const [first, ...rest] = crossing({ near: booster(17, 0.5, set), far: station(15, 0.5, set) }).advice;
    expect(first).toEqual({ id: 'set-both-outputs-equal', side: 'near', volts: 15 });
    expect(rest.map(({ id }) => id)).not.toContain('two-supplies-alike');
  });

  test('outputs that both follow their supplies cannot be set: begin with the supplies', () => {
    const follows = { output: 'follows' } as const;
    const found = crossing({ near: booster(16, 0.5, follows), far: station(15, 0.5, follows) });
    expect(adviceIds(found)).toEqual(['two-supplies-alike', 'do-not-stop-across-the-gap']);
  });

  test('the command station is never raised above its label, nor while the label is not known', () => {
    const follows = booster(17, 0.5, { output: 'follows' });
    const forbidden = crossing({ near: follows, far: station(15, 0.5, { mayStandHigher: false }) });
    expect(adviceIds(forbidden)).toEqual(['two-supplies-alike', 'do-not-stop-across-the-gap']);
    expect(forbidden.withheld).toEqual([
      { id: 'set-both-outputs-equal', because: 'above-its-label' },
      { id: 'higher-rails-to-command-station', because: 'above-its-label' },
    ]);
    const unknown = crossing({ near: follows, far: station(15, 0.5) });
    expect(unknown.withheld.map(({ because }) => because)).toEqual(['label-not-known', 'label-not-known']);
    const permitted = crossing({ near: follows, far: station(15, 0.5, { mayStandHigher: true }) });
    expect(permitted.advice[0]).toEqual({ id: 'set-both-outputs-equal', side: 'far', volts: 17 });
  });

  test('where the command station stands higher already, nothing is exchanged', () => {
    const found = crossing({ near: booster(15, 0.5, { mayStandHigher: true }), far: station(16, 0.5) });
    expect(adviceIds(found)).not.toContain('higher-rails-to-command-station');
  });

  test('equal rails need none', () => {
    const found = crossing({ near: booster(15, 1), far: station(15, 1) });
    expect([found.verdict, found.advice, found.reasons]).toEqual(['fine', [], []]);
  });

  test('with unknown volts: measure first, and nothing else', () => {
    const result = crossingInPhase({ near: booster(undefined, 1), far: station(15, 1) });
    expect(result).toMatchObject({
      kind: 'volts-unknown',
      parts: ['near.volts'],
      advice: [{ id: 'measure-rail-volts-first' }],
    });
    const parts = (near: number | undefined, far: number | undefined) => {
      const found = crossingInPhase({ near: booster(near, 1), far: booster(far, 1) });
      return found.kind === 'volts-unknown' ? found.parts : [];
    };
    expect(parts(15, undefined)).toEqual(['far.volts']);
    expect(parts(undefined, undefined)).toEqual(['near.volts', 'far.volts']);
  });
});

describe('two placed supplies', () => {
  const supply = (volts: number, amps: number): NamedSupply => ({ kind: 'dc', volts, amps, plug: 'terminals' });
  const load = districtLoad(h0(3, 0, 3));
  const p95 = summarise(load.distribution).p95;
  const stage = { ...unit(3), input: { kind: 'dc', volts: 19, plug: 'terminals' }, load } as const;
  const [best, other] = arrange([supply(15, 3), supply(17, 3)], [stage, stage]);

  function placed(at: typeof best, index: number, role: 'command-station' | 'booster'): PlacedSide {
    const one = at?.stages[index];
    if (one === undefined) throw new Error('nothing placed');
    return { placed: one, load: p95, ownUse: 0.1, role, output: 'follows' };
  }
  const of = (at: typeof best) => {
    const [near, far] = [at?.stages[1], at?.stages[0]];
    if (near === undefined || far === undefined) throw new Error('nothing placed');
    const volts = neighbourVolts(near.fed, far.fed);
    return crossingOf(placed(at, 1, 'booster'), placed(at, 0, 'command-station'), { volts });
  };

  test('2 V apart: idle, only own use is taken over; loaded, the whole district', () => {
    const { idle, loaded } = of(other).moments;
    if (idle.kind !== 'crossing' || loaded.kind !== 'crossing') throw new Error('no crossing');
    near(idle.pushes[0]?.takeOver.span.to ?? Number.NaN, 0.1, 1e-12);
    near(loaded.pushes[0]?.takeOver.span.to ?? Number.NaN, p95 + 0.1, 1e-12);
    near(idle.pushes[0]?.pulse.span.to ?? Number.NaN, 2 / 0.3, 1e-9);
  });

  test('with the same trains in both parts, both busy is what the whole layout draws: 2.95 A on 3 A, no cascade', () => {
    const fleet = h0(8, 2, 5);
    const whole = bothBusy(districtLoad(fleet).distribution, 0.65);
    const parts = [0.65, 0.35].map((share) => ({ ...stage, load: districtLoad(fleet, share) }));
    const [, follows] = arrange([supply(15, 3), supply(17, 3)], parts);
    const side = (index: 0 | 1, loadTogether?: number): PlacedSide => ({
      ...placed(follows, index, index === 0 ? 'command-station' : 'booster'),
      ownUse: 0,
      load: summarise(districtLoad(fleet, index === 0 ? 0.65 : 0.35).distribution).p95,
      ...(loadTogether === undefined ? {} : { loadTogether }),
    });
    const added = crossingOf(side(0), side(1)).moments.loaded;
    const joint = crossingOf(side(0, whole.near), side(1, whole.far)).moments.loaded;
    if (added.kind !== 'crossing' || joint.kind !== 'crossing') throw new Error('no crossing');
    expect(added.cascade).not.toBe('no');
    expect(joint.cascade).toBe('no');
    for (const { carries } of joint.pushes) expect(carries.span.to).toBeLessThan(2.96);
  });

  test('the arrangement with the higher rails at the command station has the sign turned', () => {
    const { moments } = of(best);
    for (const moment of CROSSING_MOMENTS) expect(moments[moment]).toMatchObject({ kind: 'crossing', higher: 'far' });
    for (const moment of CROSSING_MOMENTS) expect(of(other).moments[moment]).toMatchObject({ higher: 'near' });
    expect(of(best).signFlips).toBe(false);
  });

  test('like supplies still differ by their sag while one side is busy: then each may be the higher', () => {
    const [alike] = arrange([supply(15, 3), supply(15, 3)], [stage, stage]);
    const found = of(alike);
    expect(found.moments.idle).toMatchObject({ higher: 'neither', verdict: 'fine' });
    expect(found.moments.loaded).toMatchObject({ higher: 'neither', verdict: 'fine' });
    expect(found.moments['near-busy']).toMatchObject({ higher: 'far', verdict: 'adjust' });
    expect(found.signFlips).toBe(true);
    expect(found.worst).toBe('near-busy');
  });

  test('a stage that puts nothing on the track is named', () => {
    const dead = {
      placed: { rails: { idle: { from: 15, to: 15 }, loaded: { from: 14, to: 14 } }, capacity: { hard: 0 } },
    };
    const found = crossingOf({ ...dead, load: 1, ownUse: 0 }, placed(best, 0, 'command-station'));
    expect(found.moments.idle).toEqual({ kind: 'no-solution', because: 'not-positive', parts: ['near.limit'] });
  });
});

describe('parts of the loop', () => {
  test('two switching stages, supply, bus, rails, four clean contacts and leads lie between the all-metal and the dirty end', () => {
    const sum = loopOhms();
    near(sum.from, 0.66, 0.01);
    near(sum.to, 2.68, 0.01);
    expect(sum.from).toBeGreaterThan(CROSSING_OHMS.from);
    expect(sum.to).toBeLessThan(CROSSING_OHMS.to);
    near(typicalOhms(sum), 1.33, 0.01);
    near(typicalOhms(sum) / CROSSING_OHMS.typical, 1, 0.35);
  });

  test('one dirty wheel is worth more than all the rest', () => {
    const [clean, dirty] = [loopOhms(), loopOhms({ 'clean-contacts': 3, 'dirty-wheel': 1 })];
    expect(dirty.to - clean.to).toBeGreaterThan(clean.to);
  });
});

describe('input that no circuit has', () => {
  const good = { near: booster(16, 1), far: station(15, 1) };
  test.each<readonly [string, CrossingInput, string, string]>([
    ['no resistance', { ...good, ohms: 0 }, 'not-positive', 'ohms'],
    ['a negative one', { ...good, ohms: { from: -1, to: 1 } }, 'not-positive', 'ohms'],
    ['a usual one beyond its range', { ...good, ohms: { from: 1, to: 2, typical: 5 } }, 'wrong-order', 'ohms.typical'],
    [
      'a usual one that is no number',
      { ...good, ohms: { from: 1, to: 2, typical: Number.NaN } },
      'not-a-number',
      'ohms.typical',
    ],
    ['ends in the wrong order', { ...good, ohms: { from: 3, to: 1 } }, 'wrong-order', 'ohms'],
    ['volts that are no number', { ...good, near: booster(Number.NaN, 1) }, 'not-a-number', 'near.volts'],
    ['endless volts', { ...good, far: station(Number.POSITIVE_INFINITY, 1) }, 'not-a-number', 'far.volts'],
    ['negative volts', { ...good, far: station(-15, 1) }, 'negative', 'far.volts'],
    ['a negative load', { ...good, far: station(15, -1) }, 'negative', 'far.load'],
    ['a stage without any limit', { ...good, near: booster(16, 1, { limit: 0 }) }, 'not-positive', 'near.limit'],
    ['a negative capacitor', { ...good, far: station(15, 1, { linkFarads: -1e-3 }) }, 'negative', 'far.link-farads'],
    ['a negative step limit', { ...good, stepLimit: -1 }, 'negative', 'step-limit'],
  ])('%s: names the part', (_, input, because, part) => {
    expect(crossingInPhase(input)).toEqual({ kind: 'no-solution', because, parts: [part] });
  });
});

describe('whatever the two sides', () => {
  const volts = fc.double({ min: 8, max: 22, noNaN: true });
  const range = fc.tuple(volts, volts).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }));
  const amps = spread(0, 5);
  const anySide: fc.Arbitrary<CrossingSide> = fc.record({
    volts: range,
    load: amps,
    ownUse: spread(0, 0.5),
    limit: spread(0.5, 8),
    stageKind: fc.constantFrom('switching', 'bipolar'),
  });
  const loop = spread(0.05, 10);

  test('equal sources: no current', () => {
    fc.assert(
      fc.property(anySide, anySide, volts, loop, (a, b, v, ohms) => {
        const found = crossing({ near: { ...a, volts: v }, far: { ...b, volts: v }, ohms });
        expect(found.current).toEqual({ from: 0, to: 0 });
        expect(found.pushes).toEqual([]);
      }),
    );
  });

  test('exchanged: the same current the other way', () => {
    fc.assert(
      fc.property(anySide, anySide, loop, (a, b, ohms) => {
        const one = crossing({ near: a, far: b, ohms });
        const two = crossing({ near: b, far: a, ohms });
        near(two.current.from, -one.current.to, 1e-12);
        near(two.current.to, -one.current.from, 1e-12);
        near(two.step.from, -one.step.to, 1e-12);
        expect(two.verdict).toBe(one.verdict);
      }),
    );
  });

  const one = fc.record({
    higherVolts: volts,
    lowerVolts: volts,
    ohms: loop,
    load: amps,
    ownUse: amps,
    linkFarads: fc.constant(2.2e-3),
    backDrop: fc.constantFrom(0, 3),
  });

  test('the take-over is never above the difference over the loop, nor above what the lower side draws', () => {
    fc.assert(
      fc.property(one, (input) => {
        const { takeOver, step, pulse, link, lowerGives } = pushAt(input);
        expect(takeOver).toBeGreaterThanOrEqual(0);
        expect(takeOver).toBeLessThanOrEqual(Math.max(0, step) / input.ohms + 1e-9);
        expect(takeOver).toBeLessThanOrEqual(input.load + input.ownUse + 1e-9);
        expect(takeOver).toBeLessThanOrEqual(pulse + 1e-9);
        expect(lowerGives).toBeGreaterThanOrEqual(-1e-9);
        expect(link).toBeGreaterThanOrEqual(input.lowerVolts - 1e-9);
        expect(link).toBeLessThanOrEqual(Math.max(input.higherVolts, input.lowerVolts) + 1e-9);
      }),
    );
  });

  test('a larger difference never gives less current, less lift or a smaller pulse', () => {
    fc.assert(
      fc.property(one, spread(0, 5), (input, more) => {
        const [a, b] = [pushAt(input), pushAt({ ...input, higherVolts: input.higherVolts + more })];
        expect(b.takeOver).toBeGreaterThanOrEqual(a.takeOver - 1e-9);
        expect(b.pulse).toBeGreaterThanOrEqual(a.pulse - 1e-9);
        expect(b.lift).toBeGreaterThanOrEqual(a.lift - 1e-9);
      }),
    );
  });

  test('the ranges hold every case within them', () => {
    const share = spread(0, 1);
    const detector = fc.constantFrom(0, DIODE_DETECTOR);
    fc.assert(
      fc.property(anySide, anySide, detector, share, share, share, share, share, (a, b, drop, ...at) => {
        const [p = 0, q = 0, r = 0, s = 0, t = 0] = at;
        const within = (span: { from: number; to: number }, k: number) => span.from + k * (span.to - span.from);
        const found = crossing({ near: a, far: { ...b, detectorVolts: drop } });
        const pushed = found.pushes.find(({ from }) => from === 'near');
        if (pushed === undefined || typeof a.volts !== 'object' || typeof b.volts !== 'object') return;
        const lowDrop = typeof drop === 'number' ? drop : within(drop, s);
        const lower = within(b.volts, q) - lowDrop;
        const bipolar = b.stageKind === 'bipolar' ? within(BIPOLAR_BACK_DROP, t) : 0;
        const point = pushAt({
          higherVolts: within(a.volts, p),
          lowerVolts: lower,
          ohms: within(CROSSING_OHMS, r),
          load: b.load,
          ownUse: b.ownUse,
          linkFarads: 2.2e-3,
          backDrop: bipolar + 2 * lowDrop,
        });
        for (const [value, { span }] of [
          [point.takeOver, pushed.takeOver],
          [point.pulse, pushed.pulse],
          [point.step, pushed.step],
          [point.lift, pushed.lift],
          [point.link + lowDrop, pushed.link],
        ] as const) {
          expect(value).toBeGreaterThanOrEqual(span.from - 1e-9);
          expect(value).toBeLessThanOrEqual(span.to + 1e-9);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('every working gives its number again, with its inputs and a source', () => {
    const { workings } = crossing({ near: booster(17, 1), far: station(15, 1) });
    expect(workings.map(({ formula }) => formula)).toEqual([
      'crossing-step',
      'crossing-pulse',
      'crossing-charge',
      'crossing-time-constant',
      'crossing-take-over',
      'crossing-link',
      'crossing-carries',
    ]);
    for (const row of workings) {
      expect(Number.isFinite(row.value)).toBe(true);
      expect(row.inputs.length).toBeGreaterThan(0);
      expect(row.sources.length).toBeGreaterThan(0);
    }
    const pulse = workings.find(({ formula }) => formula === 'crossing-pulse');
    const value = (name: string) => pulse?.inputs.find((input) => input.name === name)?.value ?? Number.NaN;
    near(value('step') / value('ohms'), pulse?.value ?? Number.NaN, 1e-12);
  });
});

describe('what is concluded of a crossing, at its borders', () => {
  const says = (input: CrossingInput) => {
    const { verdict, reasons, findings, advice, withheld } = crossing(input);
    return { verdict, reasons, findings, advice, withheld };
  };
  const stay = { id: 'do-not-stop-across-the-gap' };

  test('two that stand alike: fine, and nothing to do', () => {
    expect(says({ near: booster(15, 1), far: station(15, 1) })).toEqual({
      ...{ verdict: 'fine', reasons: [], findings: ['harmless-step'], advice: [], withheld: [] },
    });
  });

  test.each([
    [0.5, 'fine', ['harmless-step', 'lower-still-delivers'], []],
    [0.51, 'adjust', ['pick-ups-warm', 'lower-still-delivers'], ['step-above-limit']],
    [2, 'do-not-run', ['pick-ups-warm', 'sparks'], ['step-too-large']],
  ])('a step of %d V into a part that draws 1.9 A: %s', (step, verdict, findings, reasons) => {
    const found = says({ near: booster(15 + step, 0.2), far: station(15, 1.9, { limit: 6 }), ohms: 1 });
    expect([found.verdict, found.findings, found.reasons]).toEqual([verdict, findings, reasons]);
  });

  test('guards may act from 3 V on, and only where current runs back', () => {
    const at = (step: number, load: number) =>
      says({ near: booster(15 + step, 0), far: station(15, load, { limit: 6 }), ohms: 1 }).findings;
    expect(at(3, 1)).toContain('guards-may-act');
    expect(at(2.99, 1)).not.toContain('guards-may-act');
    expect(at(3, 3.5)).not.toContain('guards-may-act');
  });

  test('a link lifted above its guard, or above what no rails may have, is no crossing to run', () => {
    const lifted = (guardVolts?: number) =>
      says({ near: booster(16.4, 0), far: station(15, 0.1, guardVolts === undefined ? {} : { guardVolts }), ohms: 1 });
    expect(lifted().reasons).toEqual(['step-above-limit']);
    // 16.4 V less an ampere tenth over an ohm.
    expect(lifted(16.3).reasons).toEqual(['step-above-limit']);
    expect(lifted(16.29)).toMatchObject({ verdict: 'do-not-run', reasons: ['link-above-guard', 'step-above-limit'] });
    expect(lifted(16.29).findings).toContain('link-above-guard');
  });

  test('the higher stage trips where it has to take over more than it has left, for good or for the pulse', () => {
    const at = (load: number, limit: number) =>
      says({ near: booster(16, load, { limit }), far: station(15, 1, { limit: 9 }), ohms: 1 });
    expect(at(2, 3).reasons).toEqual(['step-above-limit']);
    // What is just the limit passes it for no time at all.
    expect(onlyPush({ near: booster(16, 2), far: station(15, 1, { limit: 9 }), ohms: 1 }).secondsOverLimit).toBe(0);
    expect(onlyPush({ near: booster(16, 2.01), far: station(15, 1), ohms: 1 }).secondsOverLimit).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(onlyPush({ near: booster(16, 3.5), far: station(15, 1), ohms: 1 }).secondsOverLimit).toBe(0);
    expect(at(2.01, 3).reasons).toEqual(['higher-stage-trips', 'step-above-limit']);
    expect(at(3.1, 3)).toMatchObject({
      reasons: ['step-above-limit'],
      findings: expect.arrayContaining(['overloaded-anyway']),
    });
    const pulse = says({ near: booster(17, 2, { limit: 3 }), far: station(15, 0.5, { limit: 9 }), ohms: 1 });
    expect(pulse.findings).toContain('pulse-passes-limit');
    expect(pulse.reasons).toEqual(['step-too-large']);
  });

  test('both trip one after the other only where the second cannot carry both parts, to the last of it', () => {
    const at = (limit: number) => crossing({ near: booster(16, 2.5), far: station(15, 1, { limit }), ohms: 1 });
    expect(at(3.5)).toMatchObject({ cascade: 'no', trips: 'yes', tripsFirst: 'near', oneCarriesBoth: true });
    expect(at(3.49)).toMatchObject({ cascade: 'yes', oneCarriesBoth: false, verdict: 'do-not-run' });
    expect(at(3.49).reasons[0]).toBe('cascade');
    const perhaps = crossing({
      near: booster({ from: 15.3, to: 16 }, 2.5),
      far: station(15, 1, { limit: 3.4 }),
      ohms: 1,
    });
    expect(perhaps).toMatchObject({ cascade: 'perhaps', trips: 'perhaps', verdict: 'adjust' });
    expect(perhaps.reasons).toEqual(['cascade-possible', 'higher-stage-may-trip', 'step-above-limit']);
  });

  test('a current that only just reaches a limit is not above it', () => {
    const flat = pushAt({ higherVolts: 16, lowerVolts: 15, ohms: 1, load: 2, ownUse: 0, linkFarads: 2.2e-3 });
    expect([flat.pulse, flat.takeOver]).toEqual([1, 1]);
    expect(secondsAbove(flat, 1)).toBe(0);
    expect(secondsAbove(flat, 0.99)).toBe(Number.POSITIVE_INFINITY);
  });

  test('a side without power is woken, also where a detector leaves open which side is higher', () => {
    const dead = booster(0, 0);
    expect(says({ near: station(15, 1), far: dead }).findings).toContain('wakes-unpowered-stage');
    const open = crossing({ near: station({ from: 0, to: 15 }, 1, { detectorVolts: 1 }), far: dead });
    expect(open.higher).toBe('either');
    expect(open.findings).toContain('wakes-unpowered-stage');
    expect(says({ near: station(15, 1), far: booster(14, 1) }).findings).not.toContain('wakes-unpowered-stage');
  });

  test.each<[string, Partial<CrossingSide>, Partial<CrossingSide>, readonly unknown[], readonly unknown[]]>([
    [
      'the higher can be set: down to the lower',
      { output: 'settable' },
      { output: 'settable', role: 'booster' },
      [{ id: 'set-both-outputs-equal', side: 'near', volts: 15 }],
      [],
    ],
    [
      'the higher follows its supply: the lower up, where its label is known to permit that',
      ...([{ output: 'follows' }, { output: 'settable', mayStandHigher: true, role: 'booster' }] as const),
      ...([[{ id: 'set-both-outputs-equal', side: 'far', volts: 17 }, { id: 'two-supplies-alike' }], []] as const),
    ],
    [
      'and not where it forbids it',
      ...([{ output: 'follows' }, { output: 'settable', mayStandHigher: false, role: 'booster' }] as const),
      ...([[{ id: 'two-supplies-alike' }], [{ id: 'set-both-outputs-equal', because: 'above-its-label' }]] as const),
    ],
    [
      'both follow: two supplies alike, or the higher one to the command station where its label permits it',
      ...([{ output: 'follows' }, { output: 'follows', mayStandHigher: true }] as const),
      ...([[{ id: 'two-supplies-alike' }, { id: 'higher-rails-to-command-station', side: 'far' }], []] as const),
    ],
    [
      'both follow, and the label is not read',
      ...([{ output: 'follows' }, { output: 'follows' }] as const),
      ...([
        [{ id: 'two-supplies-alike' }],
        [{ id: 'higher-rails-to-command-station', because: 'label-not-known' }],
      ] as const),
    ],
  ])('%s', (_, higher, lower, advice, withheld) => {
    const found = says({ near: booster(17, 0.5, higher), far: station(15, 0.5, lower), ohms: 1 });
    expect(found.advice).toEqual([...advice, stay]);
    expect(found.withheld).toEqual(withheld);
  });

  test('fewer trains where the higher stage may trip: on the other side of the gap', () => {
    const { advice } = says({ near: booster(15.4, 2.8), far: station(15, 1), ohms: 1 });
    expect(advice).toEqual([{ id: 'fewer-trains-there', side: 'far' }, stay]);
  });
});
