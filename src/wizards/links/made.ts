// What a link to an answer says of itself: which release made it, and which verdict it led to. It is no answer: replay never sees it.

/** The name in the address: `?…&made=0.1.0-larger-supply`. */
export const MADE = 'made';

export interface Made {
  /** As in package.json. */
  readonly release: string;
  /** The outcome of a planning wizard, the fix class that a walk proposes or has proven, or `HANDED_ON`. */
  readonly verdict: string;
}

/** The verdict of a walk that ends without a fix. */
export const HANDED_ON = 'handed-on';

const WRITTEN = /^(\d{1,4}(?:\.\d{1,4}){0,2})-([a-z][a-z0-9-]{0,59})$/;

export const madeText = ({ release, verdict }: Made): string => `${release}-${verdict}`;

/** Reads one; anything else is none, and nobody is told of it. */
export function readMade(text: string | null): Made | undefined {
  const [, release, verdict] = WRITTEN.exec(text ?? '') ?? [];
  return release === undefined || verdict === undefined ? undefined : { release, verdict };
}

export const madeIn = (search: string): Made | undefined => readMade(new URLSearchParams(search).get(MADE));

/** The address with what it leads to now, in the place of whatever it said before; names sorted. */
export function withMade(search: string, made: Made): string {
  const params = new URLSearchParams(search);
  params.set(MADE, madeText(made));
  params.sort();
  return `?${params}`;
}

/**
 * What is to be said of a link whose answer is `now`: nothing, that an earlier release said the same or something else, or that the link once
 * said something else. A release that is yet to come has said nothing that is known here.
 */
export function sinceThen(made: Made, now: Made): 'nothing' | 'the-same' | 'earlier' | 'otherwise' {
  if (isOlder(now.release, made.release)) return 'nothing';
  const same = made.verdict === now.verdict;
  if (isOlder(made.release, now.release)) return same ? 'the-same' : 'earlier';
  return same ? 'nothing' : 'otherwise';
}

function isOlder(one: string, other: string): boolean {
  const [a, b] = [numbersOf(one), numbersOf(other)];
  const at = a.findIndex((part, i) => part !== b[i]);
  return at >= 0 && (a[at] ?? 0) < (b[at] ?? 0);
}

const numbersOf = (release: string): number[] =>
  [0, 1, 2].map((at) => Number.parseInt(release.split('.')[at] ?? '0', 10) || 0);
