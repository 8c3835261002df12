// What divides a shape, as a part of its own.
export { shareOutFor, takenInto } from '../../../wizards/share-out/index.ts';
