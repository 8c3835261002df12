// With one part there is no gap: whoever has told so is asked nothing whose words need a second part.
import type { CheckId } from './checks/index.ts';

/** What the check on parts forbids after "one": to speak of another part, or of a gap. */
export const ANOTHER_PART = 'speaks-of-another-part';
export const PARTS_CHECK = 'how-many-parts' satisfies CheckId;
export const ONE_PART = 'one';

/** Checks whose words need a second part. */
const SPEAK_OF_IT: ReadonlySet<string> = new Set<CheckId>([
  ...(['analogue-one-at-the-gap', 'card-through-gaps', 'clip-power-to-rails', 'coach-in-far-part'] as const),
  ...(['common-wire', 'each-stage-alone', 'exchange-units', 'feed-from-other-unit', 'follow-the-red-rail'] as const),
  ...(['how-it-ran-on', 'joint-by-hand', 'jumper-test', 'list-every-path', 'longer-locomotive'] as const),
  ...(['look-at-feed-wires', 'meter-across-the-gap', 'meter-same-and-diagonal', 'meter-two-stages'] as const),
  ...(['move-trains-over', 'other-locomotive-runs-on', 'own-throttle', 'sparks-at-the-gap', 'stand-across'] as const),
  ...(['swap-track-wires', 'two-lamps', 'unplug-across-boundary', 'vehicle-in-far-part'] as const),
]);

export const speaksOfAnotherPart = (check: string): boolean => SPEAK_OF_IT.has(check);

/** Single options whose words need one. */
const OPTIONS: Readonly<Partial<Record<CheckId, readonly string[]>>> = {
  'when-it-happens': ['at-the-gap'],
  'which-places': ['every-gap'],
};

const has = (id: string): id is CheckId & keyof typeof OPTIONS => Object.hasOwn(OPTIONS, id);

/** Options of a check that make sense, by whether the layout is one part. */
export const optionsFor = (check: string, options: readonly string[], onePart: boolean): readonly string[] =>
  onePart && has(check) ? options.filter((option) => OPTIONS[check]?.includes(option) !== true) : options;
