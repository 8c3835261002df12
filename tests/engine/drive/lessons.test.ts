// What lessons have people predict at "drive it across the gap" is what happens there.
import { describe, expect, test } from 'vitest';
import type { DriveSettings } from '../../../src/engine/drive/layout.ts';
import { DRIVE_START } from '../../../src/engine/drive/layout.ts';
import type { DriveFrame } from '../../../src/engine/drive/run.ts';
import { beginDrive, driveTrain, frontOf, passTime, placeTrain } from '../../../src/engine/drive/run.ts';
import { happenings } from '../../../src/engine/drive/story.ts';

const IN_A = -0.16;
const ACROSS = 0.08;
const IN_B = 0.32;
const stood = (some: Partial<DriveSettings>, front = IN_A): DriveFrame =>
  passTime(placeTrain(beginDrive({ ...DRIVE_START, ...some }), front), 0.5);
const told = (frame: DriveFrame): string[] => happenings(frame).map(({ id }) => id);

/** Driven from A as far as it goes, in short spells as a page shows them. */
function driven(some: Partial<DriveSettings>, seconds = 6): DriveFrame {
  let frame = driveTrain(stood(some), 1);
  for (let spell = 0; spell < seconds * 20; spell += 1) frame = passTime(frame, 0.05);
  return frame;
}

describe('Gap both rails', () => {
  test('with one rail cut nothing shows', () => {
    for (const at of [IN_A, ACROSS, IN_B]) expect(told(stood({ cutLower: false }, at))).toEqual(told(stood({}, at)));
  });

  test('with both cuts closed and the booster off, a train runs on in B on the unit of A', () => {
    const closed = { cutUpper: false, cutLower: false, on: false };
    expect(driven(closed).where).toBe('b');
    expect(told(stood(closed, IN_B))).toEqual(['fed-by-other']);
  });

  test('a second way feeds B though both rails are cut', () => {
    expect(told(stood({ path: true, on: false }, IN_B))).toEqual(['fed-by-other']);
  });

  test('on a piece that nobody feeds, a train that stops stands still', () => {
    expect(told(stood({ deadPiece: true }, 0.155))).toContain('dead-piece');
  });
});

describe('Prove the isolation', () => {
  test('a train stops with one rail cut just as it does with two, so it proves nothing', () => {
    const [one, two] = [driven({ cutLower: false, on: false }), driven({ on: false })];
    expect(told(one)).toEqual(['dark-off']);
    expect(told(one)).toEqual(told(two));
    expect(frontOf(one)).toBeCloseTo(frontOf(two), 2);
  });

  test('a train with stored energy gets farther than a plain one, though the gap is good', () => {
    expect(frontOf(driven({ vehicle: 'stored', on: false }))).toBeGreaterThan(frontOf(driven({ on: false })) + 0.1);
  });

  test('a train across the gap feeds the part whose booster is off', () => {
    expect(told(stood({ on: false }, ACROSS))).toContain('across-carries');
  });
});
