// The door of the layout sheet: what it holds, how it is read, what one starts from, and what others take of it.
export { answersOf, freshMark, trafficOf, withAnswers } from './answers.ts';
export type { Column, Table } from './columns.ts';
export { COLUMNS, cellText, TABLES, WIRING_COLUMNS } from './columns.ts';
export { DEMO_CLUB, DEMO_OVAL } from './demo.ts';
export type { Edited, History } from './edits.ts';
export { begun, done, redone, undone, withCell, withMore, without, withTold, withWire } from './edits.ts';
export { divisionFlaw } from './fit.ts';
export type { Flaw } from './flaws.ts';
export { EMPTY_SHEET } from './migrations.ts';
export type { Pasted, PastedTable } from './pasted.ts';
export { PASTED, pasted } from './pasted.ts';
export type { SheetProblem } from './read.ts';
export { MOST_SHEET_TEXT, type ReadSheet, readSheet, writeSheet } from './read.ts';
export type { StageRead, Unread } from './reckoned.ts';
export { fleetOf, stagesOf } from './reckoned.ts';
export { SHAPE_IDS, SHAPES } from './shapes.ts';
export type { Joint, Section, SectionTag, Sheet, SheetStage, SheetSupply, SheetTrains } from './sheet.ts';
export { sheetShape } from './sheet.ts';
