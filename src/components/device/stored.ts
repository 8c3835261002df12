// Everything that this site keeps on a device, and the only code that reads or writes it, but for the copy of the site (src/offline, copy.ts)
// whole texts, as the case notebook is one (kept-text.ts), and what a tab keeps until it is closed (tests-in-tab.ts).
// The privacy page lists it by id; what each entry is for stands in the content as stored-<id>-what, -why, -how-long and -who.
import type { MeasureSystem } from '../../engine/index.ts';

/** One thing that may be kept. `read` gives undefined for whatever is old or damaged: it then counts as nothing. */
export interface Entry<Value> {
  readonly id: string;
  readonly read: (text: string) => Value | undefined;
  readonly write: (value: Value) => string;
}

/** How the two systems are written, on the device and in an address. */
const SYSTEMS = { metric: 'metric', feet: 'feet-and-gauge' } as const;

export const systemNamed = (name: string | null): MeasureSystem | undefined =>
  name === 'metric' || name === 'feet' ? SYSTEMS[name] : undefined;
export const nameOfSystem = (system: MeasureSystem): keyof typeof SYSTEMS => (system === 'metric' ? 'metric' : 'feet');

/** The units a person chose by the switch. */
export const UNITS: Entry<MeasureSystem> = { id: 'units', read: systemNamed, write: nameOfSystem };

const LESSON = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/** A list of ids with spaces between them; undefined for anything else. */
function lessonsNamed(text: string): readonly string[] | undefined {
  const ids = text.split(' ');
  return ids.every((id) => LESSON.test(id)) ? [...new Set(ids)] : undefined;
}

/** The lessons that a person is done with, by id, in the order in which they were done. */
export const LESSONS: Entry<readonly string[]> = {
  id: 'lessons',
  read: lessonsNamed,
  write: (ids) => ids.join(' '),
};

export const keyOf = (id: string): string => `both-rails-${id}`;

/** Undefined where the browser keeps nothing for this site, or refuses to. */
export function shelf(): Storage | undefined {
  try {
    return localStorage;
  } catch {
    return undefined;
  }
}

export function readStored<Value>({ id, read }: Entry<Value>): Value | undefined {
  const text = textStored(id);
  return text === undefined ? undefined : read(text);
}

export function textStored(id: string): string | undefined {
  try {
    return shelf()?.getItem(keyOf(id)) ?? undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a value; where the browser refuses, the page goes on without. */
export function store<Value>({ id, write }: Entry<Value>, value: Value): void {
  try {
    shelf()?.setItem(keyOf(id), write(value));
  } catch {
    // A full or closed shelf: the choice then holds for this page only.
  }
}

export function clearStored(id: string): void {
  try {
    shelf()?.removeItem(keyOf(id));
  } catch {
    // A closed shelf holds nothing of ours.
  }
}
