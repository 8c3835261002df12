// The list of lessons shows which are done on this device, and lets the marks be taken off.
import { clearLessons, lessonsDone, onLessons } from '../device/index.ts';

const place = document.getElementById('lessons-done');

function showNow(box: HTMLElement): void {
  const done = new Set(lessonsDone());
  const listed = new Set<string>();
  for (const mark of document.querySelectorAll<HTMLElement>('[data-mark]')) {
    const id = mark.dataset.mark ?? '';
    mark.hidden = !done.has(id);
    listed.add(id);
  }
  const count = [...done].filter((id) => listed.has(id)).length;
  box.hidden = done.size === 0;
  const text = box.querySelector('[role="status"]');
  if (text !== null) text.textContent = (box.dataset.count ?? '').replace('{done}', String(count));
}

if (place !== null) {
  showNow(place);
  onLessons(() => showNow(place));
  place.querySelector('button')?.addEventListener('click', clearLessons);
}
