// The paths through the course: what people want. Which lessons belong to each says the lesson; their order is that of the course.
import type { CollectionEntry } from 'astro:content';

export const PATH_IDS = ['more-trains', 'divide', 'wire', 'understand'] as const;

type Lesson = CollectionEntry<'lessons'>;

/** Where a lesson stands on a path. */
export interface OnPath {
  readonly id: (typeof PATH_IDS)[number];
  /** From 1. */
  readonly place: number;
  readonly lessons: number;
  /** The next one; none after the last. */
  readonly following: Lesson | undefined;
}

/** The paths of a lesson, out of all lessons in the order of the course. */
export const pathsOf = (lesson: Lesson, all: readonly Lesson[]): OnPath[] =>
  PATH_IDS.filter((id) => lesson.data.paths.includes(id)).map((id) => {
    const there = all.filter(({ data }) => data.paths.includes(id));
    const place = there.indexOf(lesson);
    return { id, place: place + 1, lessons: there.length, following: there[place + 1] };
  });
