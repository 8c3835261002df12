// What this room lets out.

/** @keptFor I the pages that work on a sheet */
export { type OpenedSheet, openSheet } from './open.ts';
/** @keptFor I the page of the layout sheet */
export { MOST_LINK, packedIn, packSheet, unpackSheet } from './packed.ts';
/** @keptFor I the page of the layout sheet */
export {
  clearSheets,
  deleteSheet,
  forgetSpoiltSheets,
  type KeptSheet,
  keptSheets,
  onSheets,
  openShelf,
  type Put,
  putSheet,
  type Shelf,
  turnTo,
} from './sheets.ts';
