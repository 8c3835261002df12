// What lessons have people predict at "drive it across the gap" is what happens there.
import { describe, expect, test } from 'vitest';
import type { DriveSettings } from '../../../src/engine/drive/layout.ts';
import { DRIVE_START } from '../../../src/engine/drive/layout.ts';
import type { DriveFrame } from '../../../src/engine/drive/run.ts';
import {
  beginDrive,
  driveTrain,
  frontOf,
  passTime,
  placeTrain,
  railsOf,
  rewireDrive,
  unitOf,
} from '../../../src/engine/drive/run.ts';
import { happenings } from '../../../src/engine/drive/story.ts';

const IN_A = -0.16;
const ACROSS = 0.08;
const IN_B = 0.32;
const stood = (some: Partial<DriveSettings>, front = IN_A): DriveFrame =>
  passTime(placeTrain(beginDrive({ ...DRIVE_START, ...some }), front), 0.5);
const told = (frame: DriveFrame): string[] => happenings(frame).map(({ id }) => id);

/** Some seconds, in short spells as a page shows them. */
function spells(begun: DriveFrame, seconds: number): DriveFrame {
  let frame = begun;
  for (let spell = 0; spell < seconds * 20; spell += 1) frame = passTime(frame, 0.05);
  return frame;
}

/** Driven from A as far as it goes. */
const driven = (some: Partial<DriveSettings>): DriveFrame => spells(driveTrain(stood(some), 1), 6);

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

describe('Feed the new part', () => {
  test('without its wires the new part is dark, and only a train across the gap brings it to life', () => {
    expect(told(driven({ feed: false }))).toEqual(['dark-not-fed']);
    expect(told(stood({ feed: false }, ACROSS))).toContain('across-carries');
  });

  test('with its wires turned round all is well in each part, and the gap is a short circuit', () => {
    for (const at of [IN_A, IN_B]) expect(told(stood({ reversed: true }, at))).toEqual(told(stood({}, at)));
    expect(told(stood({ reversed: true }, ACROSS))).toContain('across-trips-over');
  });

  test('with a capacitor a train runs into B, and cannot be called back', () => {
    const there = driven({ capacitor: true });
    expect([there.where, frontOf(there)]).toEqual(['b', frontOf(driven({}))]);
    expect(told(there)).toEqual(['garbled']);
    const called = spells(driveTrain(there, -1), 3);
    expect(frontOf(called)).toBe(frontOf(there));
    expect(frontOf(spells(driveTrain(driven({}), -1), 3))).toBeLessThan(frontOf(there));
  });
});

describe('The control cable', () => {
  const HELD = { cable: false, holds: true } as const;

  test('pulled, it leaves part B dark where the booster falls silent', () => {
    expect(told(driven({ cable: false }))).toEqual(['dark-no-signal']);
  });

  test('pulled, it leaves part B lit and deaf where the booster holds a level, and a train that reaches across trips it', () => {
    expect(told(stood(HELD, IN_B))).toEqual(['deaf']);
    expect(told(stood(HELD, ACROSS))).toContain('across-trips-over');
  });

  test('pulled while a train stands in B, it leaves the train standing when it is called back', () => {
    const there = driven({});
    for (const holds of [false, true]) {
      const pulled = rewireDrive(there, { ...there.settings, cable: false, holds });
      expect(frontOf(spells(driveTrain(pulled, -1), 3))).toBe(frontOf(there));
    }
  });
});

describe('Switching on for the first time', () => {
  test('with the parts joined and B turned round, A alone is well, and both together are a short circuit without a train', () => {
    const hidden = { path: true, reversed: true } as const;
    const alone = stood({ ...hidden, on: false });
    expect(told(alone)).toContain('stands-well');
    const both = passTime(rewireDrive(alone, { ...alone.settings, on: true }), 1);
    expect(told(both)).toContain('trips-over');
    expect(both.where).toBe('a');
  });

  test('a booster shows ready though its wires do not reach the rails', () => {
    const frame = stood({ feed: false }, IN_B);
    expect(unitOf(frame, 1).lamp).toBe('ready');
    expect(told(frame)).toEqual(['dark-not-fed']);
  });

  test('both parts show the same volts to the same meter where nothing is wrong', () => {
    const frame = stood({});
    expect(railsOf(frame, 'a').volts).toBeCloseTo(railsOf(frame, 'b').volts, 0);
  });
});
