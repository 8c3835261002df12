// The groups in which people look for what they come with.
import { describe, expect, test } from 'vitest';
import { COMPLAINT_GROUPS } from '../../src/wizards/put-it-right/complaint-groups.ts';
import { ENDS_AT_ONCE, OPENINGS } from '../../src/wizards/put-it-right/model/index.ts';
import { wordsOf } from '../content/folder.ts';

const GROUPED = COMPLAINT_GROUPS.flatMap(({ complaints }): readonly string[] => complaints);
const OFTEN = new Map<string, number>(OPENINGS.map(({ id, often }) => [id, often]));
const said = new Map(wordsOf('en', 'complaints').map(({ id, data }) => [id, data]));
/** Nobody can say how often nothing fits, so it stands last. */
const oftenOf = (complaint: string): number => OFTEN.get(complaint) ?? 0;

test('Whatever people come with stands in exactly one group', () => {
  expect(GROUPED.toSorted()).toEqual([...OFTEN.keys(), 'none-of-these'].toSorted());
});

test('Whatever stands in a group has words, and no words are left out of the groups', () => {
  expect([...said.keys()].sort()).toEqual(GROUPED.toSorted());
});

test('No two complaints have one title', () => {
  const titles = [...said.values()].map(({ title }) => String(title).toLowerCase());
  expect(titles.filter((title, at) => titles.indexOf(title) !== at)).toEqual([]);
});

test('Danger is what the eye meets first, and whoever finds nothing that fits is met last', () => {
  expect(COMPLAINT_GROUPS[0].id).toBe('danger');
  expect(GROUPED.slice(0, 3)).toEqual(expect.arrayContaining(Object.keys(ENDS_AT_ONCE)));
  expect(GROUPED.at(-1)).toBe('none-of-these');
});

describe.each(COMPLAINT_GROUPS.map(({ id, complaints }) => [id, complaints] as const))('The group %s', (id, of) => {
  test('names the commonest first', () => {
    expect([...of]).toEqual([...of].sort((one, other) => oftenOf(other) - oftenOf(one)));
  });

  test('is read at one glance', () => {
    expect(of.length).toBeGreaterThan(1);
    expect(of.length).toBeLessThanOrEqual(8);
  });

  test('has a line that says what it holds', () => {
    const words = wordsOf('en', 'words').find((room) => room.id === 'put-it-right')?.data ?? {};
    expect(words[`put-right-group-${id}`]).toMatch(/\S/);
  });
});

test.each(Object.keys(ENDS_AT_ONCE))('Whoever comes with %s is told to unplug and to leave it unplugged', (id) => {
  const first = String(said.get(id)?.['first']);
  expect(first).toMatch(/unplug all supplies/i);
  expect(first).toContain('leave them unplugged');
  expect(first).toContain('licensed electrician');
});
