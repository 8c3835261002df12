// What is read off the table while a train is driven across the gap.
import { describe, expect, test } from 'vitest';
import type { DriveSettings } from '../../../src/engine/drive/layout.ts';
import { DRIVE_START } from '../../../src/engine/drive/layout.ts';
import type { DriveFrame } from '../../../src/engine/drive/run.ts';
import { beginDrive, passTime, placeTrain, railsOf, throughTrain, unitOf } from '../../../src/engine/drive/run.ts';
import { mostlyStray } from '../../../src/engine/table/meter.ts';

const stood = (some: Partial<DriveSettings>, front = -0.16): DriveFrame =>
  passTime(placeTrain(beginDrive({ ...DRIVE_START, ...some }), front), 0.5);
const ACROSS = 0.08;

describe('the rails of a part', () => {
  test('have a volt less than the supply, and both parts the plus on the same rail', () => {
    const frame = stood({});
    const [a, b] = [railsOf(frame, 'a'), railsOf(frame, 'b')];
    expect(a.volts).toBeGreaterThan(14.5);
    expect(a.volts).toBeLessThan(15);
    expect([a.alive, b.alive, a.plus === b.plus]).toEqual([true, true, true]);
  });

  test('have the plus on the other rail where the wires of B are turned round', () => {
    const frame = stood({ reversed: true });
    expect(railsOf(frame, 'a').plus).not.toBe(railsOf(frame, 'b').plus);
  });

  test('are dead where nothing feeds them', () => {
    expect(railsOf(stood({ feed: false }), 'b').alive).toBe(false);
  });
});

describe('a unit', () => {
  test('shows what it gives, its trip current and the volts of its supply', () => {
    const { lamp, amps, trip, supplyVolts, tripped } = unitOf(stood({ voltsB: 18 }), 1);
    expect([lamp, trip, supplyVolts, tripped]).toEqual(['ready', 3, 18, false]);
    expect(amps).toBeGreaterThan(0.7);
  });

  test('that is off gives nothing', () => {
    expect(unitOf(stood({ on: false }), 1)).toMatchObject({ lamp: 'off', amps: 0 });
  });
});

test('through a train across unlike supplies current runs from the higher to the lower part', () => {
  const { amps, from } = throughTrain(stood({ voltsB: 16.8 }, ACROSS));
  expect(from).toBe('b');
  expect(amps).toBeGreaterThan(0.25);
});

test('a reading is mostly stray where two volts or more, and more than half of it, come in from the mains', () => {
  expect(mostlyStray({ ac: 30, dc: 0, ghost: 28 })).toBe(true);
  expect(mostlyStray({ ac: 16.7, dc: 0, ghost: 3 })).toBe(false);
  expect(mostlyStray({ ac: 2, dc: 0, ghost: 1.9 })).toBe(false);
});
