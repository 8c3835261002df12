// What this room lets out.
export { default } from './LessonFigure.tsx';
