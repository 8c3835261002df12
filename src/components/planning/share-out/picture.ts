// What draws the answer, as a part of its own.
export { Picture } from '../../diagram/index.ts';
