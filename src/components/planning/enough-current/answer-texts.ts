// What the answer to "Is my power enough?" says in sentences: verdict, headline, lead, tonight, and what a remedy is called and takes.
import type { Remedy } from '../../../engine/index.ts';
import { SCALE_RANGE, SUPPLY_COST } from '../../../engine/index.ts';
import type { Conclusion, Power, Reckoning } from '../../../wizards/enough-current/index.ts';
import { isTold } from '../../../wizards/enough-current/index.ts';
import type { FixWords, Say } from '../../words/index.ts';
import { listed } from '../../words/index.ts';
import {
  costWords,
  type Free,
  isTripTest,
  outOfReachSaid,
  type Tone,
  tripTest,
  type WorkedOutProps,
} from '../frame/index.ts';

interface Found extends Pick<WorkedOutProps, 'say' | 'numbers' | 'fixes' | 'answers' | 'language'> {
  readonly reckoning: Reckoning;
  readonly conclusion: Conclusion;
}

/** Outcomes that come before any verdict on the trains: each has its word. */
const BEFORE_THE_TRAINS: ReadonlySet<string> = new Set([
  'wrong-supply',
  'volts-too-low',
  'rail-voltage-too-high',
  'regulated-supply',
  'lower-trip-level',
  'supply-cannot-trip',
  'read-both-labels',
]);

/** The one word for it: a stop and unread labels come before any verdict on the trains. */
export function verdictOf({ reckoning, conclusion, say }: Found): { readonly tone: Tone; readonly word: string } {
  const { kind, outcome } = conclusion;
  const verdict = reckoning.power?.judgement.verdict;
  if (kind === 'stop') return { tone: 'stop', word: say('verdict-stop') };
  if (kind === 'labels-first' || verdict === undefined) return { tone: 'open', word: say('verdict-unknown') };
  if (saysAboveUsual(reckoning, conclusion)) return { tone: 'short', word: say('verdict-above-usual') };
  if (BEFORE_THE_TRAINS.has(outcome)) return { tone: 'short', word: say(`verdict-of-${outcome}`) };
  if (kind === 'depends') return { tone: 'open', word: say('verdict-depends') };
  return { tone: verdict, word: say(verdict === 'tight' ? 'verdict-tight' : `verdict-surely-${verdict}`) };
}

/** Rails above what is usual for the scale, though no track is forbidden that. */
const saysAboveUsual = ({ power }: Reckoning, { outcome }: Conclusion): boolean =>
  outcome === 'rail-voltage-too-high' && power?.rails.tooHigh === 'no';

const isOfTheTrip = (outcome: string): boolean => outcome === 'supply-cannot-trip' || outcome === 'lower-trip-level';

export function headlineOf({ reckoning, conclusion, fixes, say }: Found): string {
  const { power, fleet } = reckoning;
  const { outcome, kind, deciding } = conclusion;
  if (outcome === 'read-both-labels' && areNamed(reckoning.unread)) return say('headline-labels-few');
  if (saysAboveUsual(reckoning, conclusion)) return say(`headline-above-usual${kind === 'depends' ? '-perhaps' : ''}`);
  if (isOfTheTrip(outcome) && power?.judgement.verdict === 'short') return say(`headline-${outcome}-short`);
  if (power === undefined || BEFORE_THE_TRAINS.has(outcome)) return fixes[outcome]?.title ?? '';
  if (kind === 'depends' && deciding !== undefined && fleet.moving === 0 && reckoning.trains > 0)
    return say('headline-depends-standing');
  if (kind === 'depends' && deciding !== undefined)
    return say(`headline-depends-${deciding.unknown}`, { moving: fleet.moving });
  return trainsLine(reckoning, power, say);
}

/** Its volts may be too many for the rails, and nobody has read whether the unit takes them. */
const staysUnplugged = ({ power, unread }: Reckoning): boolean =>
  power !== undefined &&
  (power.rails.tooHigh !== 'no' || power.rails.aboveUsual) &&
  unread.some((id) => id.startsWith('unit-input'));

/** What may not be read past, right below the verdict: each a paragraph. */
export function warningsOf(found: Found): string[] {
  const { reckoning, conclusion, say, numbers } = found;
  const { power, scale } = reckoning;
  if (power === undefined) return [];
  const { rails, trip, beyondNorm } = power;
  const { outcome, kind } = conclusion;
  if (kind === 'stop') return [];
  const volts = { volts: numbers.volts(rails.volts), ...usualVolts(scale, numbers) };
  if (outcome === 'read-both-labels') return staysUnplugged(reckoning) ? [say('unplugged-till-read', volts)] : [];
  // One thing at a time: on other volts another supply may stand there.
  if (saysAboveUsual(reckoning, conclusion)) return [];
  return [
    ...(rails.finding === 'above-range'
      ? [say(rails.known ? 'rails-above-range' : 'rails-perhaps-above-range', volts)]
      : []),
    ...(rails.outOfReach === undefined ? [] : [outOfReachSaid(rails.outOfReach, say, numbers)]),
    ...(trip?.kind === 'perhaps' ? [say(isTested(found) ? 'trip-perhaps' : 'trip-perhaps-till')] : []),
    ...(beyondNorm ? [say('beyond-norm')] : []),
  ];
}

/** Among the steps is the test that settles whether a short trips the unit. */
const isTested = (found: Found): boolean => {
  const fix = severalOf(found)?.fix ?? found.fixes[found.conclusion.outcome];
  return fix?.steps.some(isTripTest) === true;
};

/** What is tried says what the answer would: its word, its headline, and what may not be read past. */
export function triedOf(found: Found): { readonly tone: Tone; readonly word: string; readonly sentence: string } {
  return { ...verdictOf(found), sentence: [headlineOf(found), ...warningsOf(found)].join(' ') };
}

const usualVolts = (scale: Reckoning['scale'], numbers: Found['numbers']) => ({
  from: numbers.plain(SCALE_RANGE[scale].from, 0),
  to: numbers.volts(SCALE_RANGE[scale].to),
});

/** What is said of the trains alone. */
export function trainsLine({ fleet }: Reckoning, { judgement, seen }: Power, say: Say): string {
  const { verdict } = judgement;
  const values = { moving: fleet.moving };
  if (verdict === 'short') return say(`headline-short-${seen}`, values);
  const standing = fleet.moving === 0 && verdict !== 'tight';
  return say(standing ? 'headline-standing-ample' : `headline-${verdict}`, values);
}

function leadValues(found: Found) {
  const { reckoning, conclusion, numbers } = found;
  const { power, unit, stage } = reckoning;
  const { chosen, mayMove, toBuy, tripBelow } = conclusion;
  const [here = 0, there = 0] = chosen?.usable ?? [];
  const { muted = 0, parked = 0, moving = mayMove?.tight ?? 0 } = chosen?.counts ?? {};
  return {
    ...usualVolts(reckoning.scale, numbers),
    labels: unreadNames(found),
    limit: numbers.amps(unit.limit),
    below: numbers.amps(tripBelow ?? unit.limit),
    bears: numbers.amps(stage.limit),
    usable: numbers.ampsExactly(power?.capacity.usable ?? 0),
    coaches: reckoning.fleet.coaches,
    rating: numbers.amps(toBuy?.amps ?? chosen?.ratings[0] ?? 0),
    supply: numbers.amps(power?.supply.amps ?? 0),
    volts: numbers.volts(toBuy?.volts ?? 0),
    high: numbers.volts(power?.rails.voltage.idle.to ?? 0),
    here: numbers.amps(here),
    there: numbers.amps(there),
    each: numbers.amps(here),
    passes: numbers.amps(chosen?.limit ?? 0),
    districts: chosen?.usable.length ?? 1,
    moving,
    muted,
    parked,
  };
}

export function leadOf(found: Found): string {
  const { reckoning, conclusion, say } = found;
  const { labels } = reckoning;
  const { chosen, outcome } = conclusion;
  const because = labels.kind === 'not-permitted' ? ` ${say(`because-not-permitted-${labels.because}`)}` : '';
  const way = variant(found);
  const which = way === '' ? outcome : `${outcome}-${way}`;
  const lead = say(`lead-${which}`, leadValues(found));
  const groups = chosen?.inGroups === true ? [say('in-groups')] : [];
  return [`${lead}${because}`, ...groups].join(' ');
}

/** Supplies that replace the one whose trip is in doubt. */
const REPLACES_SUPPLY: ReadonlySet<string> = new Set([
  'larger-unit',
  'larger-supply',
  'leds-and-larger-supply',
  'booster-with-freed-supply',
]);

/** The steps begin with the test that settles whether a short trips the unit, where that is perhaps; undefined elsewhere. */
function provedFirst({ reckoning, conclusion, fixes, say }: Found): FixWords | undefined {
  const { outcome, kind } = conclusion;
  const fix = fixOf({ conclusion, fixes, say });
  // On larger boosters the unit there is feeds no track any more.
  if (conclusion.chosen?.limit !== undefined) return;
  const before = kind === 'stop' || kind === 'labels-first' || BEFORE_THE_TRAINS.has(outcome);
  if (fix === undefined || before || REPLACES_SUPPLY.has(outcome) || reckoning.power?.trip?.kind !== 'perhaps') return;
  return testedFirst(fix, fixes, say('step-prove-trip'));
}

/** What a larger booster asks for besides: wires that bear it, and the track's leads taken off the unit there is. */
const ASKED_BY_LARGER = [1, 2] as const;

/** Where in its fix it stands how what only stands is muted, or parked. */
const QUIET_STEPS = { muted: 0, parked: 1 } as const;

/** The fix with what is free before what is bought. */
export function quietFirst(
  fix: FixWords | undefined,
  quiet: keyof typeof QUIET_STEPS | undefined,
  { fixes, say }: Pick<Found, 'fixes' | 'say'>,
): FixWords | undefined {
  if (fix === undefined || quiet === undefined) return fix;
  const step = fixes['mute-and-park']?.steps[QUIET_STEPS[quiet]];
  if (step === undefined) return fix;
  // There parking comes after muting, and for some trains only.
  const first = quiet === 'parked' ? { ...step, do: say('step-park') } : step;
  return { ...fix, steps: [first, ...fix.steps] };
}

/** What of it is free and spares districts. */
function quietIn({ onceQuiet }: Conclusion): keyof typeof QUIET_STEPS | undefined {
  if (onceQuiet?.muted !== undefined) return 'muted';
  return onceQuiet?.parked === undefined ? undefined : 'parked';
}

const fixOf = (found: Pick<Found, 'conclusion' | 'fixes' | 'say'>): FixWords | undefined =>
  quietFirst(largerOf(found), quietIn(found.conclusion), found);

/** The steps of the fix; of districts on larger boosters, with what these ask for before the first part is done. */
function largerOf({
  conclusion: { outcome, chosen },
  fixes,
}: Pick<Found, 'conclusion' | 'fixes'>): FixWords | undefined {
  const [fix, larger] = [fixes[outcome], fixes['larger-unit']];
  if (fix === undefined || larger === undefined || outcome !== 'more-districts' || chosen?.limit === undefined)
    return fix;
  const first = fix.steps.findIndex(({ job }) => job !== undefined);
  const asked = ASKED_BY_LARGER.flatMap((at) => larger.steps[at] ?? []);
  return { ...fix, steps: [...fix.steps.slice(0, first), ...asked, ...fix.steps.slice(first)] };
}

/** The fix with its steps as this answer tells them; undefined where there is none. */
export function severalOf(found: Found): { readonly fixes: readonly string[]; readonly fix: FixWords } | undefined {
  const fix = provedFirst(found) ?? fixOf(found);
  return fix === undefined ? undefined : { fixes: [found.conclusion.outcome], fix };
}

/** The steps of a fix behind the test whether a short trips, worded as `act`. */
export function testedFirst(fix: FixWords, fixes: Found['fixes'], act: string): FixWords | undefined {
  const test = tripTest(fixes['power-is-enough'], act);
  return test === undefined ? undefined : { ...fix, steps: [test, ...fix.steps] };
}

/** What the unit passes; that it is the usual figure, where nobody has read it. */
export function limitWords({ stage, unread }: Reckoning, say: Say, numbers: Found['numbers']): string {
  const limit = numbers.amps(stage.limit);
  return unread.includes('unit-limit') ? say('limit-not-read', { limit }) : limit;
}

/** What can be planned with and the limit, amperes; undefined while they would rest on a limit that nobody has read. */
export const levelsOf = ({ power, unread }: Reckoning): Power['capacity'] | undefined =>
  unread.includes('unit-limit') ? undefined : power?.capacity;

/** So few lines of the labels that they are named rather than all of both labels. */
const FEW_LINES = 2;

/** Few lines, or those of one label alone. */
const areNamed = (unread: readonly string[]): boolean =>
  unread.length <= FEW_LINES || new Set(unread.map((id) => id.startsWith('unit-'))).size < 2;

/** The lines of the labels that nobody has read. */
function unreadNames({ reckoning, say, language }: Found): string {
  return listed(
    reckoning.unread.map((id) => say(`unread-${id}`)),
    language,
  );
}

/** Which of the sentences of an outcome fits. */
function variant(found: Found): string {
  const { reckoning, conclusion, answers } = found;
  const { outcome, kind, chosen, tripBelow } = conclusion;
  switch (outcome) {
    case 'rail-voltage-too-high':
      return saysAboveUsual(reckoning, conclusion) ? 'usual' : '';
    case 'read-both-labels':
      return areNamed(reckoning.unread) ? 'few' : '';
    case 'power-is-enough':
      return kind === 'depends' ? 'open' : '';
    case 'lower-trip-level':
      return tripBelow === undefined ? 'small' : '';
    case 'supply-cannot-trip':
      return tripVariant(conclusion, isTold(answers, 'own-use'));
    case 'more-districts':
      return districtsVariant(chosen);
    case 'fewer-moving':
      return chosen?.counts.parked === undefined ? '' : 'parked';
    case 'mute-and-park':
      return quietVariant(chosen);
    default:
      return '';
  }
}

/** `small`: too small for the unit, whatever that is set to. `lower`: no permitted supply surely trips it. */
function tripVariant({ toBuy, tripBelow }: Conclusion, ownUseTold: boolean): string {
  if (tripBelow === undefined) return toBuy === undefined ? 'small-lower' : 'small';
  if (toBuy === undefined) return 'lower';
  return ownUseTold ? '' : 'own-use';
}

function districtsVariant(chosen: Remedy | undefined): string {
  if (chosen?.limit !== undefined) return 'larger';
  return chosen?.counts.moving === undefined ? '' : 'part';
}

/** `none`: even what only stands is too much. */
function quietVariant(chosen: Remedy | undefined): string {
  if (chosen === undefined) return 'none';
  if (chosen.counts.muted === undefined) return 'park';
  return chosen.counts.parked === undefined ? 'mute' : '';
}

/** What can be run with what is there. With a label unread only what has run before. */
export function tonightOf({ reckoning, conclusion, say }: Found): string | undefined {
  const { kind, outcome, mayMove } = conclusion;
  if (kind === 'labels-first') return say(staysUnplugged(reckoning) ? 'tonight-unplugged' : 'tonight-labels');
  if (outcome === 'rail-voltage-too-high' || outcome === 'regulated-supply') return say('tonight-measure');
  const { tight = 0, enough = 0 } = mayMove ?? {};
  const { moving } = reckoning.fleet;
  // That what stands is too much has been said already.
  const said = (outcome === 'mute-and-park' && conclusion.chosen === undefined) || reckoning.trains === 0;
  const mix = mixOf(reckoning, say);
  const most = parkedTonight(conclusion, moving, mix, say) ?? mostTonight(tight, enough, moving, mix, say);
  const parts = [...(said ? [] : [most]), ...beside(reckoning, outcome, said, say)];
  return parts.length === 0 ? undefined : parts.join(' ');
}

/** How many may move holds for trains that are mixed like all that were named; empty where these are alike. */
const mixOf = ({ fleet }: Reckoning, say: Say): string => (fleet.trains.length > 1 ? ` ${say('in-your-mix')}` : '');

/** A short may not switch it off; why is told above already where that is perhaps. */
function beside({ power }: Reckoning, outcome: string, alone: boolean, say: Say): string[] {
  if (isOfTheTrip(outcome)) return [say('tonight-beside')];
  return power?.trip?.kind === 'perhaps' ? [say(alone ? 'tonight-beside-alone' : 'tonight-beside-it')] : [];
}

/** How many may move beyond what is wished, which is told for tonight already; and what is free, where nothing before has said it. */
export function fitsOf({ reckoning, conclusion, say }: Found): string[] {
  const { mayMove, more } = conclusion;
  const { trains, fleet } = reckoning;
  if (mayMove === undefined || trains === 0) return [];
  const some = mayMove.enough < mayMove.tight ? 'fits' : 'fits-all';
  const most = mayMove.enough < 1 ? 'fits-tight' : some;
  return [
    ...(mayMove.tight < fleet.moving
      ? []
      : [say(most, { enough: mayMove.enough, tight: mayMove.tight, mix: mixOf(reckoning, say) })]),
    ...(more !== undefined && more.count > 0
      ? [say('fits-more', { n: more.count, kind: say(`kind-${more.kind}`) })]
      : []),
    ...freeFirst(conclusion, fleet.moving, say),
    ...evenDivided(conclusion, say),
  ];
}

/** Whether parking brings more, free, where not all that is wished may move and the answer is not free itself. */
function parkingHelps({ mayMove, chosen }: Conclusion, wished: number): boolean {
  const { tight = 0, alone = 0 } = mayMove ?? {};
  return chosen?.cost.money.to !== 0 && tight < wished && alone > tight;
}

/** How many may move as it stands, or with all that waits parked: up to the limit, and with room to spare; undefined where that brings no more, or is told elsewhere. */
function parkedTonight(conclusion: Conclusion, wished: number, mix: string, say: Say): string | undefined {
  const { tight = 0, alone = 0, aloneEnough = 0 } = conclusion.mayMove ?? {};
  if (!parkingHelps(conclusion, wished) || BEFORE_THE_TRAINS.has(conclusion.outcome)) return undefined;
  const words = tight < 1 ? 'tonight-parked' : 'tonight-or';
  const all = aloneEnough < 1 || aloneEnough >= alone;
  return say(all ? `${words}-all` : words, { tight, moving: alone, enough: aloneEnough, mix });
}

/** The same where something comes before the trains: until then one stays beside it, whatever runs. */
function freeFirst(conclusion: Conclusion, wished: number, say: Say): string[] {
  const told = BEFORE_THE_TRAINS.has(conclusion.outcome) && parkingHelps(conclusion, wished);
  return told ? [say('free-first', { moving: conclusion.mayMove?.alone ?? 0 })] : [];
}

/** Where fewer may move because districts do not carry it either: what they would carry. */
function evenDivided({ outcome, remedies }: Conclusion, say: Say): string[] {
  const most = remedies.find(({ id }) => id === 'more-districts');
  const moving = most?.counts.moving;
  if (outcome !== 'fewer-moving' || moving === undefined) return [];
  return [say('fits-divided', { districts: most?.usable.length ?? 1, moving })];
}

/** What is free and comes before what is bought: a measurement that may spare it, and what spares districts once it stands quiet. */
export function freeOf({ conclusion, say }: Pick<Found, 'conclusion' | 'say'>): Free[] {
  const { onceQuiet, chosen, kind, deciding } = conclusion;
  const { muted, parked } = onceQuiet ?? {};
  const districts = (n: number): string =>
    say('then-districts', { districts: say(n === 1 ? 'districts-one' : 'districts-many', { n }) });
  const measures = kind === 'depends' && deciding?.unknown === 'train-draws' && (chosen?.ratings.length ?? 0) > 0;
  return [
    ...(measures ? [{ what: say('free-measured'), brings: say('then-measured') }] : []),
    ...(muted === undefined ? [] : [{ what: say('free-muted'), brings: districts(muted) }]),
    ...(parked === undefined ? [] : [{ what: say('free-parked'), brings: districts(parked) }]),
  ];
}

/** How many may move of those that are wished, and how many of them with room to spare. */
function mostTonight(tight: number, enough: number, wished: number, mix: string, say: Say): string {
  if (tight < 1 && wished > 0) return say('tonight-none');
  const most = say(tight >= wished ? 'tonight-all' : 'tonight', { moving: tight, mix });
  if (enough >= Math.min(tight, wished)) return most;
  return `${most} ${say(enough < 1 ? 'tonight-tight' : 'tonight-easily', { moving: enough })}`;
}

/** Its short name with what is to be got or counted. */
export function remedyName(remedy: Remedy, { fixes, say, numbers }: Pick<Found, 'fixes' | 'say' | 'numbers'>): string {
  const { counts, ratings } = remedy;
  const short = fixes[remedy.id]?.short ?? remedy.id;
  if (remedy.limit !== undefined) return largerBoosters(remedy, remedy.limit, say, numbers);
  if (remedy.id === 'mute-and-park' && counts.muted !== undefined)
    return say(counts.parked === undefined ? 'remedy-mute' : 'remedy-mute-and-park', { n: counts.parked ?? 0 });
  if (ratings.length > 0) return withRatings(remedy, short, say, numbers);
  if (counts.moving !== undefined && counts.parked !== undefined)
    return say('remedy-fewer-parked', { short, n: counts.moving });
  const pieces = counts.moving ?? counts.coaches ?? counts.parked ?? counts.muted;
  return pieces === undefined ? short : say('remedy-counted', { short, n: pieces });
}

/** Boosters that pass more than the unit there is. */
function largerBoosters(
  { ratings, counts, usable }: Remedy,
  passes: number,
  say: Say,
  numbers: Found['numbers'],
): string {
  const values = { n: usable.length, limit: numbers.amps(passes), amps: numbers.amps(ratings[0] ?? 0) };
  if (usable.length > 1) return say('remedy-larger-boosters', values);
  const larger = say('remedy-larger-unit', values);
  return counts.moving === undefined ? larger : say('remedy-larger-unit-part', { larger, moving: counts.moving });
}

/** What each number is: of a booster's supply, or of that of the command station, which comes first where it is to be got. */
function withRatings(
  { id, ratings, usable, counts }: Remedy,
  short: string,
  say: Say,
  numbers: Found['numbers'],
): string {
  const amps = numbers.amps(ratings.at(-1) ?? 0);
  if (id === 'booster-with-freed-supply') return say('remedy-freed', { amps });
  const further = usable.length - 1;
  if (further < 1) return say('remedy-supplies', { short, amps });
  const many = (counts.boosters ?? 0) < further ? 'remedy-boosters-there' : 'remedy-boosters';
  const boosters = say(further === 1 ? 'remedy-booster' : many, { n: further, amps });
  if (ratings.length <= further) return boosters;
  return say('remedy-and-station', { boosters, amps: numbers.amps(ratings[0] ?? 0) });
}

export interface ToDo {
  readonly toDo?: string;
  readonly price?: string;
}

/** The one thing to do, and its price; else what the fix itself says. The test that comes first is named first. */
export function toDoOf(found: Found): ToDo {
  const then = remedyToDo(found);
  return provedFirst(found) === undefined ? then : testThen(then, found);
}

/** The test first, then what is to be done; where that is nothing, the test alone. */
export function testThen(then: ToDo, { say, fixes, conclusion }: Pick<Found, 'say' | 'fixes' | 'conclusion'>): ToDo {
  const price = say('price-prove');
  if (conclusion.outcome === 'power-is-enough') return { toDo: say('to-do-prove'), price };
  const { title, effort } = fixes[conclusion.outcome] ?? { title: '', effort: '' };
  return {
    toDo: say('to-do-prove-then', { what: then.toDo ?? title }),
    price: `${price} ${say('price-then', { price: then.price ?? effort })}`,
  };
}

function remedyToDo(found: Found): ToDo {
  const { conclusion, say, numbers, fixes } = found;
  const { chosen, toBuy, outcome, tripBelow } = conclusion;
  if (chosen !== undefined) return { toDo: remedyName(chosen, found), price: costWords(chosen.cost, say, numbers) };
  if (outcome === 'mute-and-park') return { toDo: say('to-do-fewer-on-track'), price: say('costs-nothing') };
  if (outcome === 'rail-voltage-too-high') return { toDo: fixes[outcome]?.short ?? '' };
  if (outcome === 'supply-cannot-trip' && toBuy === undefined && tripBelow !== undefined)
    return { toDo: say('to-do-lower-trip', { below: numbers.amps(tripBelow) }) };
  if (toBuy === undefined) return {};
  const { kind, volts, amps } = toBuy;
  const values = { kind: say(`kind-${kind}`), volts: numbers.volts(volts), rating: numbers.amps(amps) };
  return { toDo: say('to-do-supply', values), price: costWords(SUPPLY_COST, say, numbers) };
}
