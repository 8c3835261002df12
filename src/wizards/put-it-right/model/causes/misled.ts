// Nothing is wrong: the test of the gap misled.
import { QUIET } from '../families.ts';
import type { CauseRow, Row } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

const ALL_IS_WELL = {
  ...QUIET,
  trouble: { none: always },
  when: { 'at-the-gap': always },
  where: { gaps: usually, part: usually },
  vehicles: { 'every-one': usually, 'one-only': sometimes },
  since: { 'track-or-wires': always, 'supply-or-unit': rarely },
  cut: { 'both-cut': always },
} as const satisfies Partial<Row>;

export const MISLED = [
  // The locomotive ran on by stored energy or a flywheel.
  {
    id: 'stored-energy',
    fixClass: 'test-misled',
    minutes: 10,
    needs: { parts: ['several'] },
    shows: {
      ...ALL_IS_WELL,
      vehicles: { 'one-only': usually, 'every-one': usually },
      'unfed-test': { 'rolls-on': always },
    },
  },
  // It still stood with some wheels on the live side, or a coach behind it did, and so fed itself.
  {
    id: 'still-straddling',
    fixClass: 'test-misled',
    minutes: 10,
    needs: { parts: ['several'] },
    shows: {
      ...ALL_IS_WELL,
      vehicles: { 'every-one': usually, 'lit-or-long': usually, 'one-only': sometimes },
      'unfed-test': { 'still-across': always, 'lit-beyond': sometimes },
    },
  },
  // The new part was fed already by its own unit.
  {
    id: 'already-fed',
    fixClass: 'test-misled',
    minutes: 10,
    needs: { parts: ['several'] },
    shows: { ...ALL_IS_WELL, vehicles: { 'every-one': always }, 'unfed-test': { 'fed-already': always } },
  },
] as const satisfies readonly CauseRow[];
