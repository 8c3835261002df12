// What this room lets out.
export { clearLessons, isLessonDone, lessonsDone, markLesson, onLessons } from './lessons.ts';
export { clearStored, STORED_IDS, storedNow, systemNamed } from './stored.ts';
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
