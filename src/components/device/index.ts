// What this room lets out.
export { clearCopy, copyKept } from './copy.ts';
export { COPY, copyWanted, STORED_IDS, storedNow } from './kept.ts';
export { clearLessons, isLessonDone, lessonsDone, markLesson, onLessons } from './lessons.ts';
export { clearStored, systemNamed } from './stored.ts';
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
