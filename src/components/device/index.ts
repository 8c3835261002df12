// What this room lets out.
export { copyKept } from './copy.ts';
export { clearLessons, isLessonDone, lessonsDone, markLesson, onLessons } from './lessons.ts';
export { clearStored, copyWanted, STORED_IDS, storedNow, systemNamed } from './stored.ts';
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
