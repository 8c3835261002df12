// What the build tells the worker of its own release (scripts/build/offline.mjs puts it in front of the code).

/** What is said where a page cannot be had at all. */
interface Lost {
  readonly title: string;
  readonly lead: string;
  readonly again: string;
}

interface Built {
  /** Hash of all that is built, a dot, and how many releases for safety there were up to this one: `3fa9c01b22.0`. */
  readonly release: string;
  /** Address of the pack, below the base. */
  readonly pack: string;
  /** SHA-256 of the pack, in hexadecimal digits. */
  readonly digest: string;
  /** By language; the first is that of addresses without one. */
  readonly lost: Readonly<Record<string, Lost>>;
}

declare const OFFLINE: Built;

export const BUILT: Built = OFFLINE;

/** The address of a file that is given below the base. */
export const addressOf = (file: string): string => new URL(file, location.href).href;

/** How many releases for safety there were up to a release. */
export const safetyOf = (release: string): number => Number(release.split('.')[1]);
