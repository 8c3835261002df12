// A train that one drives across the gap of the virtual layout: what can be switched, what happens, what is seen.
export type { DrivePreset, DriveSettings } from './layout.ts';
export {
  canBePutRight,
  DRIVE_METERS,
  DRIVE_PRESETS,
  DRIVE_VEHICLES,
  deadOf,
  frontRange,
  HALF_SEEN,
  isDrivePreset,
  middleOf,
  presetSettings,
  vehicleOf,
} from './layout.ts';
export type { DriveFrame, DrivePoint } from './run.ts';
export {
  beginDrive,
  DRIVE_POINTS,
  driveTrain,
  FELT,
  frontOf,
  holdProbes,
  isUnderWay,
  passTime,
  placeOf,
  placeTrain,
  pointOf,
  railsOf,
  resetDrive,
  rewireDrive,
  throughTrain,
  unitOf,
  wayOf,
} from './run.ts';
export type { Happening } from './story.ts';
export { happenings } from './story.ts';
