// What this room lets out.
export {
  cutToFit,
  type Fault,
  type Kept,
  MOST_TEXT,
  merged,
  readBook,
  writeBook,
} from './book.ts';
export { clearCopy, copyKept } from './copy.ts';
export { areFacesKept, keepFaces } from './faces.ts';
export { COPY, copyWanted, NOTEBOOK, SHEETS, STORED_IDS, storedNow } from './kept.ts';
export { type Found, freshMark, isFull, KeptText } from './kept-text.ts';
export { clearLessons, isLessonDone, lessonsDone, markLesson, onLessons } from './lessons.ts';
export {
  type Book,
  changeBook,
  clearBook,
  forgetSpoilt,
  keptInBook,
  linkOf,
  onBook,
  openBook,
  pathHere,
} from './notebook.ts';
export { PATH } from './path-name.ts';
export { saveFile } from './save-file.ts';
export { clearStored, systemNamed } from './stored.ts';
export { clearTests, keepTests, TESTS, testsInTab } from './tests-in-tab.ts';
export { toClipboard } from './to-clipboard.ts';
export {
  chooseUnits,
  chosenUnits,
  keepUnitsIn,
  onUnits,
  showUnits,
  tellUnits,
  unitsShown,
  withoutUnits,
  withUnits,
} from './units.ts';
