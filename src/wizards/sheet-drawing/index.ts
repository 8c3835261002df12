// The door of the drawing: a layout sheet becomes a picture as data; components draw it.
export type { Districts, Dressed, DressedJoint, JointState } from './dressed.ts';
export { districtLetter, dress } from './dressed.ts';
export type { Box, Laid, LaidJoint, LaidSection, NameOf } from './laid.ts';
export { layOut, layOutInParts } from './laid.ts';
