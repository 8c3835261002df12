// With one part there is no gap: whoever has told so is asked nothing whose words need a second part, and nobody is who has not said that there
// is one.
import type { Precondition } from '../../../engine/index.ts';
import { OF_THE_LAYOUT } from '../../../engine/index.ts';
import type { CheckId } from './checks/index.ts';
import type { OpeningId } from './openings.ts';

/** What the check on parts forbids after "one": to speak of another part, or of a gap. */
export const ANOTHER_PART = 'speaks-of-another-part';
export const PARTS_CHECK = 'how-many-parts' satisfies CheckId;
export const ONE_PART = 'one';

/** Checks whose words need a gap, though the stretch behind it may have no unit of its own: a reversing section has two. */
const SPEAK_OF_A_GAP: ReadonlySet<string> = new Set<CheckId>([
  ...(['analogue-one-at-the-gap', 'card-through-gaps', 'follow-the-red-rail', 'joint-by-hand', 'jumper-test'] as const),
  ...(['list-every-path', 'longer-locomotive', 'meter-across-the-gap', 'unplug-across-boundary'] as const),
]);

/** Checks whose words need a second part with a unit of its own. */
const SPEAK_OF_A_UNIT: ReadonlySet<string> = new Set<CheckId>([
  ...(['clip-power-to-rails', 'coach-in-far-part', 'common-wire', 'each-stage-alone', 'exchange-units'] as const),
  ...(['feed-from-other-unit', 'how-it-ran-on', 'look-at-feed-wires', 'meter-same-and-diagonal'] as const),
  ...(['meter-two-stages', 'move-trains-over', 'other-locomotive-runs-on', 'own-throttle', 'stand-across'] as const),
  ...(['swap-track-wires', 'two-lamps', 'vehicle-in-far-part'] as const),
]);

/** Checks whose words need a throttle with a cable: one by radio has no socket. */
const SPEAK_OF_A_SOCKET: ReadonlySet<string> = new Set<CheckId>(['exchange-handhelds']);

export const speaksOfAnotherPart = (check: string): boolean => SPEAK_OF_A_GAP.has(check) || SPEAK_OF_A_UNIT.has(check);

/** What a check forbids by its words: with one part it is not asked, though a reversing section has gaps all the same. */
export const wordsNeed = (check: string): typeof ANOTHER_PART | undefined =>
  SPEAK_OF_A_UNIT.has(check) ? ANOTHER_PART : undefined;

/** What a check supposes of the layout: not asked of anybody who has not said so. */
export function supposes(check: string): readonly Precondition[] {
  if (SPEAK_OF_A_UNIT.has(check)) return ['several-parts'];
  if (SPEAK_OF_A_GAP.has(check)) return ['a-gap-there'];
  return SPEAK_OF_A_SOCKET.has(check) ? ['throttles-on-a-cable'] : [];
}

/** Whether it is done or shown before the check; what a check supposes of the layout is neither. */
export const isDoneFirst = (need: string): boolean => !OF_THE_LAYOUT.some((one) => one === need);

const BOTH = ['a-gap-there', 'several-parts'] as const satisfies readonly Precondition[];

/** Answers that say so: of parts, of a gap, of throttles on a cable, or what only a second part can have shown. */
const SAY_SO: Readonly<Partial<Record<CheckId, Readonly<Record<string, readonly Precondition[]>>>>> = {
  'how-many-parts': { several: BOTH },
  'when-it-happens': { 'at-the-gap': ['a-gap-there'] },
  'which-places': { 'every-gap': ['a-gap-there'], 'in-the-loop': ['a-gap-there'] },
  'what-goes-dark': { 'one-after-the-other': BOTH },
  'how-driven': { handhelds: ['throttles-on-a-cable'] },
};

/** What each answer of a check says of the layout. */
export function saysOfLayout(
  check: CheckId,
  options: readonly string[],
): Readonly<Record<string, readonly Precondition[]>> {
  if (SPEAK_OF_A_UNIT.has(check)) return Object.fromEntries(options.map((option) => [option, BOTH]));
  return SAY_SO[check] ?? {};
}

/** Questions of a gap that make no sense, by what people came with: with one part there is none, unless it is a reversing section. */
export const gapQuestions = (complaint: string, onePart: boolean): readonly string[] =>
  onePart && complaint !== HAS_A_SECTION ? [...SPEAK_OF_A_GAP] : [];

/** Its title tells of a section with gaps, though one unit may feed all. */
export const HAS_A_SECTION = 'loop-trips' satisfies OpeningId;

/** Single options whose words need one. */
const OPTIONS: Readonly<Partial<Record<CheckId, readonly string[]>>> = {
  'when-it-happens': ['at-the-gap'],
  'which-places': ['every-gap'],
  'sparks-at-the-gap': ['spark-or-tick'],
};

const has = (id: string): id is CheckId & keyof typeof OPTIONS => Object.hasOwn(OPTIONS, id);

/** Options of a check that make sense, by whether the layout is one part. */
export const optionsFor = (check: string, options: readonly string[], onePart: boolean): readonly string[] =>
  onePart && has(check) ? options.filter((option) => OPTIONS[check]?.includes(option) !== true) : options;
