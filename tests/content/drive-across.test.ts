// The live figure "drive it across the gap": what it says of each fault. Common practice, no source, where nothing else is named.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { DriveSettings } from '../../src/engine/drive/layout.ts';
import {
  canBePutRight,
  DRIVE_PRESETS,
  DRIVE_START,
  isDrivePreset,
  presetSettings,
} from '../../src/engine/drive/layout.ts';
import type { DriveFrame } from '../../src/engine/drive/run.ts';
import {
  beginDrive,
  driveTrain,
  frontOf,
  holdProbes,
  passTime,
  placeOf,
  placeTrain,
} from '../../src/engine/drive/run.ts';
import { happenings } from '../../src/engine/drive/story.ts';
import { isRecord, wordsOf } from './folder.ts';

const keys = (frame: DriveFrame): string[] => happenings(frame).map(({ id }) => `drive-${id}`);
const said = (settings: DriveSettings, seconds = 12): Set<string> => {
  let frame = driveTrain(beginDrive(settings), 1);
  const all = new Set(keys(frame));
  for (let time = 0; time < seconds; time += 1 / 30) {
    frame = passTime(frame, 1 / 30);
    for (const key of keys(frame)) all.add(key);
  }
  return all;
};
const stood = (some: Partial<DriveSettings>, front: number, seconds = 0.5): DriveFrame =>
  passTime(placeTrain(beginDrive({ ...DRIVE_START, ...some }), front), seconds);
const ACROSS = 0.08;
const IN_B = 0.3;

describe('A train that is driven across the gap', () => {
  test.each([
    ['feed-missing', 'drive-dark-not-fed'],
    ['booster-off', 'drive-dark-off'],
    ['link-missing', 'drive-dark-no-signal'],
    ['link-missing-held', 'drive-deaf'],
    ['feed-reversed', 'drive-across-trips-over'],
    ['gap-closed', 'drive-fed-by-other'],
    ['forgotten-path', 'drive-fed-by-other'],
    ['unlike-supplies', 'drive-across-trips-lifted'],
    ['no-reference', 'drive-across-split'],
    ['long-dead-gap', 'drive-dead-piece'],
    ['suppressor', 'drive-garbled'],
    ['overload-district', 'drive-trips-over'],
    ['wheelset-short', 'drive-shorted-trips'],
    ['stored-energy', 'drive-runs-on-stored'],
  ] as const)('with the fault "%s" shows %s, and not once it is put right', (preset, sign) => {
    expect(said(presetSettings(preset))).toContain(sign);
    expect(said(presetSettings(preset, true))).not.toContain(sign);
  });

  test('shows nothing at all where one rail is not cut and the units have nothing in common', () => {
    expect(said(presetSettings('one-rail'))).toEqual(said(DRIVE_START));
  });

  test('gets into B and stops at the end of what is seen where nothing is wrong', () => {
    const frame = passTime(driveTrain(beginDrive(DRIVE_START), 1), 10);
    expect(frame.where).toBe('b');
    expect(frontOf(frame)).toBeCloseTo(0.33, 6);
  });
});

describe('One rail not cut, the minus sides joined and the wires of B turned round', () => {
  test('is a short circuit with no train at all', () => {
    const found = stood({ cutLower: false, common: true, reversed: true }, -0.16);
    expect(keys(found)).toContain('drive-trips-over');
  });
  test('waits for the train where the minus sides are not joined', () => {
    expect(keys(stood({ cutLower: false, reversed: true }, -0.16))).not.toContain('drive-trips-over');
    expect(keys(stood({ cutLower: false, reversed: true }, ACROSS))).toContain('drive-across-trips-over');
  });
});

describe('A meter across one gap', () => {
  const read = (some: Partial<DriveSettings>) =>
    holdProbes(stood(some, -0.16), [placeOf('a-upper'), placeOf('b-upper')]).shot.meter;
  test('shows what strays in from the mains where the units have nothing in common', () => {
    const reading = read({});
    expect(reading?.ghost).toBeGreaterThan(0.9 * (reading?.ac ?? 0));
  });
  test('shows little in phase and the whole signal out of phase once the minus sides are joined', () => {
    expect(read({ common: true })?.ac).toBeLessThan(0.5);
    expect(read({ common: true, reversed: true })?.ac).toBeGreaterThan(14);
  });
});

describe('A pulled control cable', () => {
  const INPUTS = [
    ['an input of its own', false],
    ['an input that shares the minus side', true],
  ] as const;
  const trips = (told: Set<string>): string[] => [...told].filter((key) => key.includes('trip'));
  const rightOf = (id: string): string => {
    const prediction = wordsOf('en', 'lessons').find((one) => one.id === id)?.data['prediction'];
    const options = isRecord(prediction) && Array.isArray(prediction['options']) ? prediction['options'] : [];
    const right = options.filter(isRecord).find((one) => one['right'] === true);
    return `${right?.['says']} ${right?.['because']}`;
  };

  test.each(INPUTS)('leaves a quiet booster with %s dark, and nothing trips', (_, common) => {
    const told = said({ ...DRIVE_START, cable: false, common });
    expect(told).toContain('drive-dark-no-signal');
    expect(trips(told)).toEqual([]);
  });

  test.each(INPUTS)(
    'makes a short at the gap of one that holds a level, with %s, and the train is lit and deaf then',
    (_, common) => {
      const told = said({ ...DRIVE_START, cable: false, holds: true, common });
      expect(told).toContain('drive-across-trips-over');
      expect(told).toContain('drive-deaf');
      expect([...told].filter((key) => key.includes('both-trip'))).toEqual([]);
    },
  );

  test.each(['drive-across-the-gap', 'control-link'])('is foretold so in %s', (id) => {
    expect(rightOf(id)).toMatch(/unit trips/);
  });

  test('is foretold for both kinds of booster where both are driven', () => {
    expect(rightOf('drive-across-the-gap')).toMatch(/dark, and nothing trips.*plain level.*a unit trips.*lit and deaf/);
  });
});

describe('A dead piece that keeps two parts apart', () => {
  test('is no fault, and nothing is there to put right', () => {
    expect(canBePutRight('kept-apart')).toBe(false);
    expect(canBePutRight('long-dead-gap')).toBe(true);
    expect(said(presetSettings('kept-apart', true))).toEqual(said(presetSettings('kept-apart')));
  });
  test('never lets the train join them', () => {
    expect([...said(presetSettings('kept-apart'))].filter((key) => key.includes('across'))).toEqual([]);
  });
});

describe('Every sentence of a drive', () => {
  const words = readFileSync(join(import.meta.dirname, '../../src/content/en/words/drive-across.yaml'), 'utf8');
  test.each(Object.keys(DRIVE_PRESETS).filter(isDrivePreset))('has its words with the fault "%s"', (preset) => {
    for (const right of [false, true]) {
      for (const key of said(presetSettings(preset, right))) expect(words).toContain(`\n${key}: `);
    }
    expect(words).toContain(`\ndrive-preset-${preset}: `);
    expect(words).toContain(`\ndrive-note-${preset}: `);
  });
  test('is there for a train wholly in B', () => {
    expect(keys(stood({}, IN_B))).toEqual(['drive-stands-well']);
  });
});
