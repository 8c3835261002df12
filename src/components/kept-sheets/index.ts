// What this room lets out.
export { openSheet } from './open.ts';
export { MOST_LINK, packSheet } from './packed.ts';
export {
  clearSheets,
  deleteSheet,
  forgetSpoiltSheets,
  type KeptSheet,
  keptSheets,
  onSheets,
  openShelf,
  putSheet,
  type Shelf,
  turnTo,
} from './sheets.ts';
