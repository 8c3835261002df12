// What this room lets out.
export { default } from './DriveAcross.tsx';
export type { DrivePreset } from './drive-layout.ts';
