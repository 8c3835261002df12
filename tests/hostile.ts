// Addresses that nobody writes in good faith, or that a mail program, a forum or an older release has spoilt. The same seed gives the same ones.
import { seeded } from './seeded.ts';

const JUNK = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  'javascript:alert(1)',
  '%00',
  '%E0%A4%A',
  '%',
  '%%%',
  '\ud800',
  '\u202e\u0000\u2028',
  '1e9',
  '1e-400',
  '-1',
  'NaN',
  'Infinity',
  '0x10',
  '1,5,5',
  '\ud835\udfdc',
  '',
  ' ',
  '+',
  '&',
  '=',
  '#',
  '?',
  '/../../etc/passwd',
  'constructor',
  '__proto__',
  'toString',
  '{"__proto__":{"a":1}}',
  'unknown',
  'none',
  'cannot',
  "';--",
  '{{7*7}}',
  'a'.repeat(3000),
  '9'.repeat(400),
  'a.b.c'.repeat(200),
] as const;

/** What a page can be asked by: names it knows, each with values that it reads. */
export type Known = Readonly<Record<string, readonly string[]>>;

/**
 * `count` searches from "?" on, made out of what is known: cut short, doubled, swapped, filled with junk, or junk altogether.
 * @param known at least one name with at least one value
 */
export function hostileSearches(known: Known, count: number, seed: number): readonly string[] {
  const random = seeded(seed);
  const below = (limit: number): number => Math.floor(random() * limit);
  const pick = <T>(list: readonly T[], or: T): T => list[below(list.length)] ?? or;
  const names = Object.keys(known);
  const good = (): string => {
    const name = pick(names, '');
    return `${name}=${encodeURIComponent(pick(known[name] ?? [], ''))}`;
  };
  const bad = (): string => `${random() < 0.7 ? pick(names, '') : pick(JUNK, '')}=${pick(JUNK, '')}`;
  const parts = (): string[] => Array.from({ length: 1 + below(12) }, () => (random() < 0.5 ? good() : bad()));
  const spoilt = (text: string): string => {
    const at = below(text.length + 1);
    switch (below(6)) {
      case 0:
        return text.slice(0, at);
      case 1:
        return text.slice(0, at) + pick(JUNK, '') + text.slice(at);
      case 2:
        return text.slice(0, at) + text.slice(at + 1 + below(6));
      case 3:
        return text + text.slice(at);
      case 4:
        return text.slice(at) + text.slice(0, at);
      default:
        return text;
    }
  };
  return Array.from({ length: count }, () => {
    let text = parts().join('&');
    for (let times = below(4); times > 0; times -= 1) text = spoilt(text);
    return `?${text}`;
  });
}

/** How many are tried, and how long one may take, milliseconds: a sample in every run, which other tests slow down; all, each timed, with `npm run hostile`. */
export const TRIED = {
  texts: Number(process.env.HOSTILE_TEXTS ?? 2_000),
  links: Number(process.env.HOSTILE_LINKS ?? 130),
  slowest: Number(process.env.HOSTILE_SLOWEST ?? Number.POSITIVE_INFINITY),
};

/** How often one that seems slow is tried again: the machine may have been busy with something else. */
const AGAIN = 3;

/** Milliseconds of `work`; of one that takes too long the least of some tries. */
export function timed(work: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let tries = 0; tries <= AGAIN && (tries === 0 || least > TRIED.slowest); tries += 1) {
    const begun = performance.now();
    work();
    least = Math.min(least, performance.now() - begun);
  }
  return least;
}
