// A walk as text for a forum post or a help desk: what was told and tried, what is left, and how its link begins. Short, at any point of it.
import type { ComplaintId, Told } from '../../wizards/put-it-right/index.ts';
import { CANNOT, isRepair } from '../../wizards/put-it-right/index.ts';
import type { Numbers, Say } from '../words/index.ts';
import { likely } from './likely.ts';
import type { CheckNames } from './words.ts';

/** A forum post that people still read, characters; the link that follows counts. */
export const CARD_LENGTH = 1200;
/** However long the link is, so much is left for the words. */
const LEAST_LENGTH = 500;

export interface CardProps {
  readonly complaint: ComplaintId;
  readonly told: Told;
  readonly left: readonly { readonly fixClass: string; readonly chance: number }[];
  /** The fix that is proposed now: it is said first, and not among those that are left. */
  readonly proposed?: string | undefined;
  /** What it was and what mended it, where all is well: said first, and nothing is called still possible then. */
  readonly solved?: readonly string[] | undefined;
  readonly checks: Readonly<Record<string, CheckNames>>;
  readonly say: Say;
  readonly numbers: Numbers;
}

/** The lines of the card of a walk as it stands; `cured` is what mended it, where all is well. */
export type Card = (cured?: string) => readonly string[];

/** The lines of a card; together no longer than a post with a link of that many characters. */
export function cardLines(
  { complaint, told, left, proposed, solved, checks, say, numbers }: CardProps,
  linkLength: number,
): string[] {
  const answers = Object.entries(told.seen)
    .filter(([, option]) => option !== CANNOT)
    .map(([check, option]) => `${checks[check]?.known ?? check}: ${checks[check]?.options[option]?.label ?? option}`);
  const cannot = Object.values(told.seen).filter((option) => option === CANNOT).length;
  const tried = told.tried.filter(isRepair).map((one) => {
    const name = say(`class-${one}`);
    return told.left.includes(one) ? say('walk-left-as-changed', { name }) : name;
  });
  const possible = solved === undefined ? left : [];
  const named = ({ fixClass, chance }: (typeof left)[number]): string =>
    `${say(`class-${fixClass}`)} (${likely(chance, say, numbers)})`;
  const parts: Parts = {
    told: answers,
    tried,
    now: possible.filter(({ fixClass }) => fixClass === proposed).map(named),
    left: possible.filter(({ fixClass }) => fixClass !== proposed).map(named),
  };
  const what = say(`complaint-${complaint}`);
  const first = solved === undefined ? [what] : [say('walk-solved-title'), say('walk-card-was', { what }), ...solved];
  const write = (some: Parts): string[] => [
    ...first,
    ...LINES.flatMap((line) => (parts[line].length === 0 ? [] : [lineOf(line, some[line], parts[line].length, say)])),
    ...(cannot > 0 ? [say('walk-card-cannot', { n: cannot })] : []),
    ...(solved === undefined ? [say('walk-card-link')] : []),
  ];
  return shortened(parts, write, Math.max(LEAST_LENGTH, CARD_LENGTH - linkLength));
}

const LINES = ['told', 'tried', 'now', 'left'] as const;
type Parts = Readonly<Record<(typeof LINES)[number], readonly string[]>>;

function lineOf(line: (typeof LINES)[number], shown: readonly string[], all: number, say: Say): string {
  const more = all - shown.length;
  const what = [...shown, ...(more > 0 ? [say('walk-card-more', { n: more })] : [])].join(say('and-then'));
  return say(`walk-card-${line}`, { what });
}

/** The longest list loses its last until all fits: what was told first and what is likeliest stays. */
function shortened(parts: Parts, write: (some: Parts) => string[], most: number): string[] {
  let some = parts;
  for (;;) {
    const lines = write(some);
    const [longest] = LINES.toSorted((a, b) => some[b].join('').length - some[a].join('').length);
    if (lines.join('\n').length <= most || longest === undefined || some[longest].length === 0) return lines;
    some = { ...some, [longest]: some[longest].slice(0, -1) };
  }
}
