// Faults put into the virtual layout, and the walk of a person who has that layout on the table.

import type { Tool } from '../../src/engine/diagnosis/model.ts';
import { SOMETHING_ELSE, TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Seen } from '../../src/engine/diagnosis/posterior.ts';
import type { TableLayout } from '../../src/engine/table/layout.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/model/index.ts';
import { COMPLAINT_IDS, OPENINGS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { handedOn } from '../../src/wizards/put-it-right/possible.ts';
import { stepOf, walkModelNow } from '../../src/wizards/put-it-right/step.ts';
import { seeded } from '../seeded.ts';
import { answerCheck } from './answers/index.ts';
import type { MetId } from './complaints.ts';
import { caseOf, MET, showsAs } from './complaints.ts';
import type { TableFault } from './injection.ts';
import { TABLE_FAULTS } from './injection.ts';
import { makeLayout } from './layouts.ts';
import { repaired } from './repair.ts';
import { signOf } from './signs.ts';

const ROWS = new Map(SIGN_MODEL.causes.map((row) => [row.id, row]));
const OPTIONS = new Map(SIGN_MODEL.checks.map(({ id, options }) => [id, options]));
const SHARES = new Map<string, Readonly<Record<string, number>>>(OPENINGS.map(({ id, shares }) => [id, shares]));
const SAYS = new Map<string, Readonly<Record<string, readonly string[]>>>(OPENINGS.map(({ id, says }) => [id, says]));

export const classOf = (fault: string): string => ROWS.get(fault)?.fixClass ?? fault;
export const WITHOUT_METER: readonly Tool[] = TOOLS.filter((tool) => tool !== 'multimeter');

export interface Injected {
  readonly fault: TableFault;
  readonly seed: number;
  /** What the person has met. */
  readonly complaint: MetId;
  /** The title that they tap: one time in three one that fits in half only. */
  readonly opening: ComplaintId;
  readonly layout: TableLayout;
  /** The same layout as it is while a trouble that comes and goes is away; undefined where it stands. */
  readonly well: TableLayout | undefined;
}

const WELL = { usually: 0.8, sometimes: 0.3, rarely: 0.07 } as const satisfies Readonly<Record<string, number>>;
const HALF_FITS = 1 / 3;

/** One of a list, each with its weight; undefined where all are nothing. */
function drawn<Of>(random: () => number, list: readonly Of[], weight: (one: Of) => number): Of | undefined {
  let left = random() * list.reduce((sum, one) => sum + weight(one), 0);
  return list.find((one) => {
    left -= weight(one);
    return left < 0;
  });
}

/**
 * A layout with the fault in it, and with what the person comes. A fault can show in several ways on one layout; one of them is drawn, by the
 * share that the model gives the fault among the causes of each title. Undefined where this layout shows the fault in no way that
 * the model knows.
 */
export function injected(fault: TableFault, seed: number): Injected | undefined {
  const random = seeded(7919 * seed + 131 * TABLE_FAULTS.indexOf(fault) + 13);
  const shown = MET.flatMap((complaint) => {
    const share = SHARES.get(complaint)?.[fault] ?? 0;
    const layout = share > 0 ? caseOf(fault, complaint, seeded(seed)) : undefined;
    return layout === undefined ? [] : [{ complaint, layout, share }];
  });
  const met = drawn(random, shown, ({ share }) => share);
  if (met === undefined) return undefined;
  const { complaint, layout } = met;
  const opening = random() < HALF_FITS ? halfFitting(met, random) : complaint;
  const goes = wellShare(fault);
  return { fault, seed, complaint, opening, layout, well: random() < goes ? makeLayout(seeded(seed)) : undefined };
}

function wellShare(fault: string): number {
  const word = ROWS.get(fault)?.well;
  return word === 'usually' || word === 'sometimes' || word === 'rarely' ? WELL[word] : 0;
}

/** A title of which at least one sign, and not each, is what the circuit shows; or the very title where there is none. */
function halfFitting(met: { readonly layout: TableLayout; readonly complaint: MetId }, random: () => number) {
  const fits = COMPLAINT_IDS.filter((id) => {
    if (id === met.complaint) return false;
    const says = Object.entries(SAYS.get(id) ?? {}).map(([sign, values]) => values.includes(signOf(met, sign) ?? ''));
    return says.includes(true) && says.includes(false);
  });
  return drawn(random, fits, () => 1) ?? met.complaint;
}

/** `count` layouts of every fault that can be seen, from the seed given on; handed over one by one, for each holds all its scenes. */
export function* allInjected(count: number, firstSeed = 1): Generator<Injected> {
  for (const fault of TABLE_FAULTS) {
    let found = 0;
    for (let seed = firstSeed; found < count && seed < firstSeed + 6 * count; seed++) {
      const one = injected(fault, seed);
      if (one === undefined) continue;
      found++;
      yield one;
    }
  }
}

/**
 * Whether the person would truly say "that fixed it": with this repair done as its steps say, what they came with is gone, and nothing new
 * has come. Before a part is connected its trains shall stop at the gap.
 */
export function helps({ layout, complaint }: Injected, fixClass: string): boolean {
  const before = showsAs(layout);
  const wanted = complaint === 'still-runs-past-gap' ? 'stops-at-gap' : undefined;
  const after = showsAs(repaired(layout, fixClass));
  return !after.includes(complaint) && after.every((id) => before.includes(id) || id === wanted);
}

export interface Walked {
  readonly fault: TableFault;
  readonly complaint: MetId;
  readonly opening: ComplaintId;
  /** Fix classes in the order of their proposal. */
  readonly proposed: readonly string[];
  /** `right`: the class of the fault. `healed`: another one that ended the trouble all the same. */
  readonly end: 'right' | 'healed' | 'handed-on';
  /** The walk came to where causes are left side by side. */
  readonly sideBySide: boolean;
  /** Asked until the last proposal, those that were skipped among them. */
  readonly questions: number;
}

export interface Person {
  readonly tools: readonly Tool[];
  /** Share of answers that are wrong, 0 to 1; what is dangerous now is always told right. */
  readonly wrong?: number;
}

/** Goes the whole way: answers what the layout shows, tries what is proposed, sets aside what did not help. */
export function walk(one: Injected, { tools, wrong = 0 }: Person): Walked {
  const { fault, complaint, opening, seed } = one;
  const random = seeded(31 * seed + 7);
  const answers: Seen[] = [];
  const skipped: string[] = [];
  const proposed: string[] = [];
  const trusted = new Set<string>();
  let sideBySide = false;
  const ended = (end: Walked['end']): Walked => {
    return { fault, complaint, opening, proposed, end, sideBySide, questions: answers.length + skipped.length };
  };
  for (;;) {
    const known = { complaint: opening, answers, skipped, tools, tried: proposed, trusted };
    const step = stepOf(known);
    if (step.kind === 'ask') {
      const seen = seenBy(one, step.check);
      trusted.add(step.check);
      if (seen === undefined) skipped.push(step.check);
      else answers.push({ check: step.check, option: told(step.check, seen, wrong, random) });
      continue;
    }
    // Where causes are left side by side, the person tries the likeliest of them.
    const fixClass =
      step.kind === 'fix' ? step.fixClass : handedOn(known).find(({ fixClass: of }) => of !== SOMETHING_ELSE)?.fixClass;
    if (fixClass === undefined || proposed.length >= MOST_TRIED) return ended('handed-on');
    if (step.kind === 'hand-on') sideBySide = true;
    proposed.push(fixClass);
    if (fixClass === classOf(fault)) return ended('right');
    if (step.kind === 'fix' && step.danger !== undefined) return ended('handed-on');
    if (helps(one, fixClass)) return ended('healed');
  }
}

const MOST_TRIED = 12;

/** What is looked at or measured now shows a sound layout while a trouble is away; what is remembered does not. */
function seenBy({ layout, well, complaint }: Injected, id: string): string | undefined {
  const isNow = well !== undefined && SOURCES.get(id) !== 'memory';
  return answerCheck(isNow ? well : layout, complaint, id);
}

const SOURCES = new Map(SIGN_MODEL.checks.map(({ id, source }) => [id, source]));

const FIRST: ReadonlySet<string> = new Set(SIGN_MODEL.checks.filter(({ first }) => first === true).map(({ id }) => id));

function told(check: string, seen: string, wrong: number, random: () => number): string {
  if (wrong === 0 || FIRST.has(check) || random() >= wrong) return seen;
  const others = (OPTIONS.get(check) ?? []).filter((option) => option !== seen);
  return others[Math.floor(random() * others.length)] ?? seen;
}

/** How often each cause is behind a trouble, by the titles that people tap. */
const OVERALL = new Map(walkModelNow().compiled.faults.map(({ id }, at) => [id, walkModelNow().overall[at] ?? 0]));

/** Share of walks as people meet the causes: each walk with the weight of its cause. */
export function shareAsMet(walks: readonly Walked[], is: (walk: Walked) => boolean): number {
  const counts = new Map<string, number>();
  for (const { fault } of walks) counts.set(fault, (counts.get(fault) ?? 0) + 1);
  const weight = ({ fault }: Walked): number => (OVERALL.get(fault) ?? 0) / (counts.get(fault) ?? 1);
  const sum = (some: readonly Walked[]): number => some.reduce((total, one) => total + weight(one), 0);
  return sum(walks.filter(is)) / sum(walks);
}

export const isFirst = (one: Walked): boolean => endsWell(one) && one.proposed.length === 1;

export const share = (walks: readonly Walked[], is: (walk: Walked) => boolean): number =>
  walks.filter(is).length / walks.length;

export const endsWell = ({ end }: Walked): boolean => end !== 'handed-on';

/** Questions within which this share of all walks has come to its end; endless where fewer have. */
export function questionsAt(walks: readonly Walked[], part: number): number {
  const counts = walks.map((one) => (endsWell(one) ? one.questions : Number.POSITIVE_INFINITY)).sort((a, b) => a - b);
  return counts[Math.ceil(part * counts.length) - 1] ?? Number.POSITIVE_INFINITY;
}

const percent = (part: number): string => `${(100 * part).toFixed(1)} %`;

export function summary(walks: readonly Walked[]): string {
  return [
    `${walks.length} walks`,
    `ended right ${percent(share(walks, endsWell))}`,
    `in the very class ${percent(share(walks, ({ end }) => end === 'right'))}`,
    `first proposal right ${percent(share(walks, isFirst))}, as people meet the causes ${percent(shareAsMet(walks, isFirst))}`,
    `among the first three ${percent(share(walks, (one) => endsWell(one) && one.proposed.length <= 3))}`,
    `questions at 50, 90, 95 % of the walks ${[0.5, 0.9, 0.95].map((part) => questionsAt(walks, part)).join(', ')}`,
  ].join(' · ');
}

/** Injected class by first proposed class, largest first; then how each class of faults fared. */
export function confusion(walks: readonly Walked[]): string {
  const cells = countBy(walks, ({ fault, proposed, end }) => {
    const [first = 'handed-on'] = proposed;
    const healed = end === 'healed' && proposed.length === 1 ? ' (and it helped)' : '';
    return `${classOf(fault)} -> ${first}${healed}`;
  });
  const missed = countBy(
    walks.filter((one) => !endsWell(one)),
    ({ fault, complaint }) => `${fault} as ${complaint}`,
  );
  const mean = [...new Set(walks.map(({ fault }) => fault))].map((fault) => {
    const own = walks.filter((one) => one.fault === fault);
    return `${fault}: ${(own.reduce((sum, { questions }) => sum + questions, 0) / own.length).toFixed(1)}`;
  });
  return [summary(walks), '', ...cells, '', 'handed on', ...missed, '', 'mean questions', ...mean, ''].join('\n');
}

function countBy(walks: readonly Walked[], key: (walk: Walked) => string): string[] {
  const counts = new Map<string, number>();
  for (const one of walks) counts.set(key(one), (counts.get(key(one)) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0])).map(([of, n]) => `${n} ${of}`);
}
