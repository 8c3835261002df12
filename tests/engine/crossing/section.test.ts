// A train through a reversing section: where a short comes, and that no device helps a train that is longer than the section.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SectionRun, throughSection } from '../../../src/engine/crossing/section.ts';
import { spread } from '../../spread.ts';

const RUN: SectionRun = { length: 1.5, metal: 0.8, front: 0, device: 'automatic', thrownFor: 'entry' };
const at = (front: number, some: Partial<SectionRun> = {}) => throughSection({ ...RUN, front, ...some });

describe('a train of 0.8 m through a section of 1.5 m', () => {
  test.each([
    [-0.1, 'before'],
    [0.4, 'entering'],
    [1, 'inside'],
    [1.9, 'leaving'],
    [2.4, 'beyond'],
  ] as const)('whose front is at %d m: %s', (front, place) => {
    expect(at(front).place).toBe(place);
  });

  test('makes no short with an automatic reverser, wherever it is', () => {
    fc.assert(
      fc.property(spread(-1, 4), (front) => {
        expect(at(front).shortAt).toBeUndefined();
      }),
    );
  });

  test('makes a short at the exit where nothing turns the section over', () => {
    expect(at(1.9, { device: 'none' }).shortAt).toBe('exit');
    expect(at(0.4, { device: 'none' }).shortAt).toBeUndefined();
  });

  test('whose front wheels stand just at the first gap bridges nothing yet, nor with its last ones just over it', () => {
    expect(at(0)).toMatchObject({ place: 'before', bridged: { entry: false, exit: false } });
    expect(at(0.75, { metal: 0.75 })).toMatchObject({ place: 'inside', bridged: { entry: false, exit: false } });
    expect(at(1.5)).toMatchObject({ place: 'inside', bridged: { entry: false, exit: false } });
    expect(at(2.25, { metal: 0.75 })).toMatchObject({ place: 'beyond', bridged: { entry: false, exit: false } });
  });

  test('finds the section turned for the way out once it has left by an automatic reverser, not before it comes in', () => {
    expect(at(2.4).suits).toBe('exit');
    expect(at(1).suits).toBe('entry');
    expect(at(-0.1).suits).toBe('entry');
  });

  test('needs its switch thrown while it is wholly inside', () => {
    expect(at(0.4, { device: 'switch', thrownFor: 'exit' }).shortAt).toBe('entry');
    expect(at(1.9, { device: 'switch', thrownFor: 'entry' }).shortAt).toBe('exit');
    for (const thrownFor of ['entry', 'exit'] as const)
      expect(at(1, { device: 'switch', thrownFor })).toMatchObject({ place: 'inside', shortAt: undefined });
  });
});

test('a train whose metal is longer than the section makes a short somewhere, whatever turns it over', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('none', 'switch', 'automatic'),
      fc.constantFrom('entry', 'exit'),
      fc.double({ min: 1.51, max: 4, noNaN: true }),
      (device, thrownFor, metal) => {
        const found = at((1.5 + metal) / 2, { device, thrownFor, metal });
        expect(found.place).toBe('both');
        expect(found.shortAt).toBeDefined();
      },
    ),
  );
});
