// What beginners most often believe, and where the course clears it up: the heading that says so, found by their own words.
import { describe, expect, test } from 'vitest';
import { CONFUSIONS } from './confusions.ts';
import { wordsOf } from './folder.ts';

const LESSONS = new Map(wordsOf('en', 'lessons').map((lesson) => [lesson.id, lesson]));

/** The text below a heading, up to the next. */
const below = (body: string, heading: string): string =>
  body.split(/^## /m).find((section) => section.startsWith(`${heading}\n`)) ?? '';

describe('The course clears up what beginners believe:', () => {
  test.each(CONFUSIONS)('$believed', ({ says, lesson, heading, cleared }) => {
    const found = LESSONS.get(lesson);
    expect(found?.data['says']).toContain(says);
    expect(below(found?.body ?? '', heading), `${lesson}: ${heading}`).toMatch(cleared);
  });
});
