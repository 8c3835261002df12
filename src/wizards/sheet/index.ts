// The door of the layout sheet: what it holds, how it is read, what one starts from, and what others take of it.

/** @keptFor I the page of the layout sheet, and what wizards take of it */
export { answersOf, freshMark, trafficOf, withAnswers } from './answers.ts';
/** @keptFor I the page of the layout sheet */
export type { CellRead, Column, Table } from './columns.ts';
/** @keptFor I the page of the layout sheet */
export { COLUMNS, cellText, readCell, TABLES, WIRING_COLUMNS } from './columns.ts';
/** @keptFor I the page of the layout sheet */
export { DEMO_CLUB, DEMO_OVAL } from './demo.ts';
/** @keptFor I the page of the layout sheet */
export type { Edited, History } from './edits.ts';
/** @keptFor I the page of the layout sheet */
export { begun, done, redone, undone, withCell, withMore, without, withTold, withWire } from './edits.ts';
/** @keptFor I the choice of a division */
export { divisionFlaw } from './fit.ts';
/** @keptFor I the page of the layout sheet */
export type { Flaw, FlawReason, List } from './flaws.ts';
/** @keptFor I the page of the layout sheet */
export { LISTS } from './flaws.ts';
/** @keptFor I the page of the layout sheet */
export { EMPTY_SHEET } from './migrations.ts';
/** @keptFor I the page of the layout sheet */
export type { Pasted, PastedTable } from './pasted.ts';
/** @keptFor I the page of the layout sheet */
export { PASTED, pasted } from './pasted.ts';
/** @keptFor I the page of the layout sheet */
export type { ReadSheet, SheetProblem } from './read.ts';
/** @keptFor I the page of the layout sheet */
export { MOST_SHEET_TEXT, readSheet, writeSheet } from './read.ts';
/** @keptFor I the plan */
export type { StageRead, Unread } from './reckoned.ts';
/** @keptFor I the plan and the division */
export { fleetOf, stagesOf } from './reckoned.ts';
/** @keptFor I the page of the layout sheet */
export type { ShapeId } from './shapes.ts';
/** @keptFor I the page of the layout sheet */
export { SHAPE_IDS, SHAPES } from './shapes.ts';
/** @keptFor I the page of the layout sheet, the drawing and the plan */
export type { Joint, Section, SectionTag, Sheet, SheetStage, SheetSupply, SheetTrains } from './sheet.ts';
/** @keptFor I the page of the layout sheet */
export { MOST, SECTION_TAGS, SHEET_FORM, sheetShape } from './sheet.ts';
