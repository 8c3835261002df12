// What the answer to "Which supply goes on which unit?" says in sentences: verdict, headline, lead, warnings, and what is to be got and done.
import type { NamedSupply } from '../../../engine/index.ts';
import { SCALE_RANGE, SUPPLY_COST } from '../../../engine/index.ts';
import type { Alike, Placement, UnitId, Wanted } from '../../../wizards/which-supply-where/index.ts';
import { forbiddenIn } from '../../../wizards/which-supply-where/index.ts';
import type { FixWords, Numbers, Say } from '../../words/index.ts';
import { listed } from '../../words/index.ts';
import { costWords, outOfReachSaid, type Tone, tripTest, type WorkedOutProps } from '../frame/index.ts';

const STOPS: readonly string[] = [
  'wrong-supply',
  'rail-voltage-too-high',
  'regulated-supply',
  'volts-too-low',
  'supply-cannot-trip',
  'lower-trip-level',
];

/** Nothing is placed before this is done. */
const FIRST: readonly string[] = ['two-supplies-alike', 'set-both-outputs-equal'];

export function verdictOf({ outcome, because, stillShort }: Placement, say: Say): { tone: Tone; word: string } {
  if (because === 'above-usual') return { tone: 'short', word: say('place-chip-volts') };
  if (STOPS.includes(outcome)) return { tone: 'stop', word: say('place-chip-stop') };
  if (outcome === 'read-both-labels') return { tone: 'open', word: say('place-chip-labels') };
  if (outcome === 'measure-rail-volts-first') return { tone: 'open', word: say('place-chip-measure') };
  if (stillShort) return { tone: 'short', word: say('place-chip-too-little') };
  if (outcome === 'supplies-either-way') return { tone: 'enough', word: say('place-chip-either') };
  return { tone: 'tight', word: say(FIRST.includes(outcome) ? 'place-chip-first' : 'place-chip-matters') };
}

export function headlineOf({ outcome, because, unit }: Placement, say: Say): string {
  if (because === 'one-follows' || because === 'above-usual') return say(`place-headline-${because}`);
  return say(`place-headline-${outcome}`, { unit: unit === undefined ? '' : say(`place-${unit.unit}`) });
}

/** What may not be read past, right below the verdict. */
export function warningsOf(placement: Placement, say: Say, numbers: Numbers): string[] {
  const { outcome, aboveRange, outOfReach, scale } = placement;
  if (outcome === 'wrong-supply') return mustNotGo(placement, say, numbers);
  const tooLow = outOfReach.map((one) => outOfReachSaid(one, say, numbers));
  const proofs = [...tooLow, ...proofWarnings(placement, say)];
  if (aboveRange === undefined) return proofs;
  const values = { volts: numbers.volts(aboveRange.volts), usual: usualVolts(scale, say, numbers) };
  return [...proofs, say(aboveRange.known ? 'place-rails-above' : 'place-rails-perhaps-above', values)];
}

/** Where a short may not trip a unit, that is said of each. */
function proofWarnings({ toProve, arrangements: [best] }: Placement, say: Say): string[] {
  const [unit, ...more] = toProve;
  if (unit === undefined) return [];
  if (more.length > 0) return [say('place-prove-both')];
  const supply = best?.stages[unit === 'station' ? 0 : 1]?.supply ?? 0;
  return [say('place-prove', { n: supply + 1, unit: say(`place-${unit}`) })];
}

const usualVolts = (scale: Placement['scale'], say: Say, numbers: Numbers): string =>
  say('place-usual', { from: numbers.plain(SCALE_RANGE[scale].from, 0), to: numbers.volts(SCALE_RANGE[scale].to) });

/** Which supply must not go into which unit, and why. */
function mustNotGo({ arrangements, supplies }: Placement, say: Say, numbers: Numbers): string[] {
  return forbiddenIn(arrangements).flatMap(({ supply, units, because }) => {
    const named = supplies[supply];
    if (named === undefined) return [];
    const [unit] = units;
    const into = units.length === 1 && unit !== undefined ? say(`place-${unit}`) : say('place-either-unit');
    const values = { n: supply + 1, volts: numbers.volts(named.volts), kind: say(`kind-${named.kind}`), unit: into };
    return [`${say('place-forbidden', values)} ${say(`because-not-permitted-${because}`)}`];
  });
}

/** Why it comes to this, where the fix alone would say more than is so. */
export function leadOf(
  { outcome, because, unit, railVolts, scale, alike, supplies, toProve }: Placement,
  say: Say,
  numbers: Numbers,
): string | undefined {
  if (alike !== undefined) return suitsWords(alike, supplies, say, numbers);
  if (unit !== undefined) return unitWords(outcome, unit, say, numbers);
  if (railVolts !== undefined) {
    const volts = { from: numbers.volts(railVolts.from), to: numbers.volts(railVolts.to) };
    if (because === 'alternating') return say('place-lead-alternating', volts);
    if (because === 'above-usual')
      return say('place-lead-above-usual', { ...volts, usual: usualVolts(scale, say, numbers) });
    return say(because === 'too-low' ? 'place-lead-volts-too-low' : 'place-lead-too-high', volts);
  }
  if (because === undefined || because === 'both-set') return undefined;
  return say(because === 'trip' && toProve.length > 0 ? 'place-lead-trip-perhaps' : `place-lead-${because}`);
}

function unitWords(
  outcome: string,
  { unit, limit, ceiling, ratingAbove, buy }: NonNullable<Placement['unit']>,
  say: Say,
  numbers: Numbers,
): string {
  const buys = outcome === 'supply-cannot-trip' && buy !== undefined;
  return say(`place-lead-${outcome}${buys ? '-buy' : ''}`, {
    ...(buy === undefined ? {} : supplyValues(buy, say, numbers)),
    unit: say(`place-${unit}`),
    limit: numbers.amps(limit),
    ceiling: numbers.amps(ceiling),
    above: numbers.amps(ratingAbove),
  });
}

export const supplyValues = ({ volts, kind, plug, amps }: NamedSupply, say: Say, numbers: Numbers) => ({
  volts: numbers.volts(volts),
  kind: say(`kind-${kind}`),
  plug: say(`place-plug-${plug ?? 'terminals'}`),
  amps: numbers.amps(amps),
});

/** Which of the two suits both units. */
function suitsWords({ unfit }: Alike, supplies: readonly NamedSupply[], say: Say, numbers: Numbers): string {
  if (unfit.every((one) => one === undefined)) return say('place-suits-either');
  const sentences = unfit.map((one, at) => {
    const values = { n: at + 1, volts: numbers.volts(supplies[at]?.volts ?? 0) };
    if (one === undefined) return say('place-suits-both', values);
    return say('place-suits-not', {
      ...values,
      unit: say(`place-${one.unit}`),
      why: say(`place-unfit-${one.because}`),
    });
  });
  return sentences.join(' ');
}

/** The one thing to do and its price, where the fix alone would say less. */
export function toDoOf(
  { alike, outcome, toProve }: Placement,
  say: Say,
  numbers: Numbers,
): { readonly toDo?: string; readonly price?: string } {
  if (outcome === 'supplies-either-way' && toProve.length > 0)
    return { toDo: say('to-do-prove'), price: say('price-prove') };
  if (alike === undefined) return {};
  const [one, two] = alike.buy;
  if (one === undefined) return {};
  const { money, hours } = SUPPLY_COST;
  const times = ({ from, to }: typeof money) => ({ from: from * alike.buy.length, to: to * alike.buy.length });
  return { toDo: buyWords(one, two, say, numbers), price: costWords({ money: times(money), hours }, say, numbers) };
}

function buyWords(one: Wanted, two: Wanted | undefined, say: Say, numbers: Numbers): string {
  const values = { ...supplyValues(one.supply, say, numbers), unit: say(`place-${one.unit}`) };
  if (two === undefined) return say('place-buy-one', values);
  return say('place-buy-two', { ...values, more: numbers.amps(two.supply.amps) });
}

/** Where the steps of the fix choose, get and exchange. */
const CHOOSE = 1;
const GET = 2;
const EXCHANGE = 3;
/** From here on trains run. */
const RUNS = 5;

/** The steps with what is known in place of what would have to be found out, and with the test whether a short trips where that is in doubt; undefined where the fix says all. */
export function stepsOf(placement: Placement, { fixes, say, numbers, language }: Speaks): FixWords | undefined {
  const { outcome, alike, supplies, toProve } = placement;
  const fix = fixes[outcome];
  if (fix === undefined) return undefined;
  const told = alike === undefined ? fix : alikeSteps(fix, alike, supplies, say, numbers);
  const units = alike?.kept?.proves === true ? [alike.kept.unit] : toProve;
  const act = `${say('place-prove-at', { units: unitsWords(units, say, language) })} ${say('step-prove-trip')}`;
  const test = units.length === 0 ? undefined : tripTest(fixes['supply-cannot-trip'], act);
  if (test === undefined) return alike === undefined ? undefined : told;
  const [before, after] = [told.steps.slice(0, RUNS), told.steps.slice(RUNS)];
  // No train runs before it.
  return { ...told, steps: alike === undefined ? [...told.steps, test] : [...before, test, ...after] };
}

type Speaks = Pick<WorkedOutProps, 'fixes' | 'say' | 'numbers' | 'language'>;

const unitsWords = (units: readonly UnitId[], say: Say, language: string): string =>
  listed(
    units.map((unit) => say(`place-${unit}`)),
    language,
  );

function alikeSteps(
  fix: FixWords,
  alike: Alike,
  supplies: readonly NamedSupply[],
  say: Say,
  numbers: Numbers,
): FixWords {
  const { kept, buy } = alike;
  const stays = kept === undefined ? undefined : supplies[kept.supply];
  const keep =
    kept === undefined || stays === undefined
      ? undefined
      : {
          n: kept.supply + 1,
          other: 2 - kept.supply,
          unit: say(`place-${kept.unit}`),
          ...supplyValues(stays, say, numbers),
        };
  const words: Readonly<Record<number, string>> = {
    [CHOOSE]: keep === undefined ? say('place-step-neither') : say('place-step-keep', keep),
    [GET]: buy.map((one) => getWords(one, say, numbers)).join(' '),
    [EXCHANGE]: keep === undefined ? say('place-step-put-two') : say('place-step-put', keep),
  };
  const steps = fix.steps.map((step, at) => {
    const what = words[at];
    return what === undefined ? step : { ...step, do: what, more: at === GET ? step.more : undefined };
  });
  return { ...fix, steps };
}

const getWords = ({ unit, supply, above }: Wanted, say: Say, numbers: Numbers): string =>
  say('place-step-get', {
    ...supplyValues(supply, say, numbers),
    unit: say(`place-${unit}`),
    above: numbers.amps(above, 'at-least'),
  });
