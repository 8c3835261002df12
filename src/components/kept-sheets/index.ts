// What this room lets out.
export { linkTo, TooLong } from './link-to.ts';
export { openSheet } from './open.ts';
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
