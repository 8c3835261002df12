// Which fix pages carry the live figure "drive it across the gap", and with which fault it begins there.
import type { DrivePreset } from '../engine/index.ts';
import type { FixClass } from '../wizards/put-it-right/index.ts';

export const DRIVE_OF_FIX: Readonly<Partial<Record<FixClass, DrivePreset>>> = {
  'no-feed': 'feed-missing',
  'booster-off': 'booster-off',
  'no-signal': 'link-missing',
  suppressor: 'suppressor',
  'one-rail': 'one-rail',
  'second-path': 'forgotten-path',
  'gap-closed': 'gap-closed',
  reversed: 'feed-reversed',
  'voltage-step': 'unlike-supplies',
  'no-reference': 'no-reference',
  'lopsided-split': 'overload-district',
  'long-dead-gap': 'long-dead-gap',
  'wheelset-short': 'wheelset-short',
  'test-misled': 'stored-energy',
};

/** The fault to begin with on a fix page, by its id; nothing where the figure has none for it. */
export const drivePresetOf = (fix: string): DrivePreset | undefined =>
  new Map<string, DrivePreset>(Object.entries(DRIVE_OF_FIX)).get(fix);
