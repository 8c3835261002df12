// The list of lessons shows which are done on this device, lets the marks be taken off and put back, and keeps the path open that was gone by.
import { clearLessons, lessonsDone, markLesson, onLessons, PATH } from '../device/index.ts';

const place = document.getElementById('lessons-done');
/** The marks that were just taken off here. */
let takenOff: readonly string[] = [];

function showNow(box: HTMLElement): void {
  const done = new Set(lessonsDone());
  const listed = new Set<string>();
  for (const mark of document.querySelectorAll<HTMLElement>('[data-mark]')) {
    const id = mark.dataset.mark ?? '';
    mark.hidden = !done.has(id);
    listed.add(id);
  }
  const count = [...done].filter((id) => listed.has(id)).length;
  const text = box.querySelector('[role="status"]');
  const button = box.querySelector('button');
  if (text === null || button === null) return;
  if (done.size > 0) takenOff = [];
  box.hidden = done.size === 0 && takenOff.length === 0;
  const undo = takenOff.length > 0;
  text.textContent = undo ? (box.dataset.cleared ?? '') : (box.dataset.count ?? '').replace('{done}', String(count));
  button.textContent = (undo ? box.dataset.undo : box.dataset.clear) ?? '';
}

/** Takes all marks off; tapped again at once, puts them back. */
function clearOrUndo(): void {
  if (takenOff.length > 0) {
    for (const id of takenOff) markLesson(id, true);
    return;
  }
  takenOff = lessonsDone();
  clearLessons();
}

/** The path whose list is open stands in the address, so that Back and a reload find it open. */
function keepPath(): void {
  const lists = [...document.querySelectorAll<HTMLDetailsElement>('.paths > details')];
  const listOf = ({ hash }: Location): HTMLDetailsElement | undefined =>
    lists.find((list) => hash === `#${PATH}-${list.dataset.path}`);
  const gone = listOf(location);
  if (gone !== undefined) gone.open = true;
  for (const list of lists) {
    list.addEventListener('toggle', () => {
      if (!list.open && listOf(location) !== list) return;
      const hash = list.open ? `#${PATH}-${list.dataset.path}` : '';
      history.replaceState(history.state, '', location.pathname + location.search + hash);
    });
  }
}

if (place !== null) {
  showNow(place);
  onLessons(() => showNow(place));
  place.querySelector('button')?.addEventListener('click', clearOrUndo);
}
keepPath();
