// The door of the layout sheet: what it holds, and how it is read.
/** @keptFor I the page of the layout sheet, the drawing and the plan */
export type { Joint, Section, SectionTag, Sheet, SheetStage, SheetSupply, SheetTrains } from './sheet.ts';
/** @keptFor I the page of the layout sheet */
export { MOST, SECTION_TAGS, SHEET_FORM, sheetShape } from './sheet.ts';
