// Where the tests of a first power-up stand, once one differs: kept in the tab that made them until it is closed, so that the walk which
// finds the fault names the place and leads back. No address carries it.
import { keyOf } from './stored.ts';

export const TESTS = 'tests';

export interface TestsInTab {
  /** The complaint that the walk began with. */
  readonly complaint: string;
  /** The place of the test that differs, as the person reads it. */
  readonly place: string;
  /** The address of the tests. */
  readonly back: string;
  /** Of which tests: those of a sheet that was changed meanwhile are none of these. */
  readonly of: string;
  /** What was seen, for whoever made them to read. */
  readonly seen: unknown;
}

/** Undefined where the browser keeps nothing for this site, or refuses to. */
function shelf(): Storage | undefined {
  try {
    return sessionStorage;
  } catch {
    return undefined;
  }
}

/** Undefined where none are kept, or what is kept is damaged. */
export function testsInTab(): TestsInTab | undefined {
  try {
    const told: unknown = JSON.parse(shelf()?.getItem(keyOf(TESTS)) ?? '');
    return isTests(told) ? told : undefined;
  } catch {
    return undefined;
  }
}

const isTests = (told: unknown): told is TestsInTab =>
  typeof told === 'object' &&
  told !== null &&
  ['complaint', 'place', 'back', 'of'].every((name) => typeof Reflect.get(told, name) === 'string');

export function keepTests(tests: TestsInTab): void {
  try {
    shelf()?.setItem(keyOf(TESTS), JSON.stringify(tests));
  } catch {
    // A full or closed shelf: the way back is then that of the browser.
  }
}

export function clearTests(): void {
  try {
    shelf()?.removeItem(keyOf(TESTS));
  } catch {
    // A closed shelf holds nothing of ours.
  }
}
