// Which lessons a person is done with: on this device only, read anew at each mark, so that two tabs add up.
import { clearStored, LESSONS, readStored, store } from './stored.ts';

const EVENT = 'both-rails-lessons';

export const lessonsDone = (): readonly string[] => readStored(LESSONS) ?? [];

export const isLessonDone = (id: string): boolean => lessonsDone().includes(id);

/** Marks a lesson as done, or takes the mark off, and tells all that show it. */
export function markLesson(id: string, done: boolean): void {
  const others = lessonsDone().filter((one) => one !== id);
  const now = done ? [...others, id] : others;
  if (now.length === 0) clearStored(LESSONS.id);
  else store(LESSONS, now);
  dispatchEvent(new Event(EVENT));
}

export function clearLessons(): void {
  clearStored(LESSONS.id);
  dispatchEvent(new Event(EVENT));
}

/** Calls when a mark was set or taken off, here or in another tab. */
export function onLessons(listener: () => void): void {
  addEventListener(EVENT, listener);
  addEventListener('storage', listener);
  addEventListener('pageshow', listener);
}
