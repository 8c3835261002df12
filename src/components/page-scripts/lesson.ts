// A lesson comes alive: a prediction is made before it is shown, a link sets the figure without leaving the page, and what was answered
// right marks the lesson as done on this device. Without script all of it stands there to be read.
import { isLessonDone, markLesson, onLessons, PATH, toClipboard } from '../device/index.ts';
import { onPrintKey } from '../shared/index.ts';

const lesson = document.querySelector<HTMLElement>('[data-lesson]');

/** What an address says of other things than the figure. */
const NOT_OF_THE_FIGURE = ['check-seed', PATH];

/** The figure reads its address as if somebody had come back to it. What the link does not say stands as at the start. */
function setFigure(link: HTMLAnchorElement): void {
  const search = new URLSearchParams(link.search);
  const old = new URLSearchParams(location.search);
  for (const name of NOT_OF_THE_FIGURE) {
    const value = old.get(name);
    if (value !== null) search.set(name, value);
  }
  search.sort();
  history.pushState(null, '', `${location.pathname}?${search}#figure`);
  dispatchEvent(new PopStateEvent('popstate'));
}

/** What is to be read and moved comes into sight, not only what to try. */
function showFigure(): void {
  const live = document.querySelector('#figure .live');
  const box = live?.getBoundingClientRect();
  if (box !== undefined && (box.top < 0 || box.bottom > innerHeight)) live?.scrollIntoView({ block: 'start' });
}

document.addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('a[data-set]') : null;
  if (link === null || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  setFigure(link);
  showFigure();
});

function holdPrediction(prediction: HTMLElement): void {
  const run = prediction.querySelector<HTMLDetailsElement>('details.run');
  const status = prediction.querySelector<HTMLElement>('[role="status"]');
  const chosen = (): string | undefined => prediction.querySelector<HTMLInputElement>('input:checked')?.value;
  if (run === null || status === null) return;
  run.querySelector('summary')?.addEventListener('click', (event) => {
    const choice = chosen();
    if (choice === undefined) {
      event.preventDefault();
      status.textContent = prediction.dataset.predict ?? '';
      prediction.querySelector<HTMLInputElement>('input')?.focus();
      return;
    }
    status.textContent = '';
    showReasons(prediction, choice);
    const set = run.querySelector<HTMLAnchorElement>('a[data-set]');
    if (!run.open && set !== null) setFigure(set);
  });
  prediction.addEventListener('change', () => {
    const choice = chosen();
    status.textContent = '';
    if (run.open && choice !== undefined) showReasons(prediction, choice);
  });
}

/** What was expected, and what happens; the other reasons step back. */
function showReasons(prediction: HTMLElement, choice: string): void {
  for (const reason of prediction.querySelectorAll<HTMLElement>('[data-reason]')) {
    reason.hidden = reason.dataset.reason !== choice && reason.dataset.right === undefined;
  }
}

/** All questions are answered right once the right answer of each was opened. */
const allRight = (check: Element): boolean =>
  [...check.querySelectorAll('[data-question]')].every(
    (question) => question.querySelector('details[data-right][open]') !== null,
  );

function showDone(page: HTMLElement): void {
  const box = page.querySelector<HTMLInputElement>('input[data-done]');
  if (box !== null) box.checked = isLessonDone(page.dataset.lesson ?? '');
}

/** Whoever has come by a path sees how far along it is, is led on along it, and back to it. */
function stayOnPath(page: HTMLElement): void {
  const path = new URLSearchParams(location.search).get(PATH);
  const ours = [...page.querySelectorAll<HTMLElement>('[data-on-path]')].filter(
    ({ dataset }) => dataset.onPath === path,
  );
  if (path === null || ours.length === 0) return;
  for (const one of ours) one.hidden = false;
  for (const one of page.querySelectorAll<HTMLElement>('[data-off-path]')) one.hidden = true;
  const back = document.querySelector<HTMLAnchorElement>('p.back a');
  if (back !== null) back.hash = `${PATH}-${path}`;
}

/** What passes the figure on is loaded once somebody reaches for it. */
function offerFigure(card: HTMLElement): void {
  const load = () => import('./pass-on-figure.ts');
  const getReady = (): void => {
    load().catch(() => undefined);
  };
  const tell = (sentence: string | undefined): void => {
    const status = card.querySelector('[role="status"]');
    if (status !== null) status.textContent = sentence ?? '';
  };
  const passOn = (way: string): void => {
    const figure = load();
    if (way === 'code' || way === 'print') {
      figure
        .then(({ passOn }) => passOn(card, way, NOT_OF_THE_FIGURE))
        .then(
          () => tell(''),
          () => (way === 'print' ? print() : tell(card.dataset.failed)),
        );
      return;
    }
    toClipboard(figure.then(({ written }) => written(card, way, NOT_OF_THE_FIGURE))).then(
      () => tell(card.dataset.copied),
      () => tell(card.dataset.failed),
    );
  };
  card.addEventListener('pointerenter', getReady);
  card.addEventListener('focusin', getReady);
  card.addEventListener('click', ({ target }) => {
    const way = target instanceof HTMLButtonElement ? target.dataset.copy : undefined;
    if (way !== undefined) passOn(way);
  });
  onPrintKey(() => passOn('print'));
}

if (lesson !== null) {
  stayOnPath(lesson);
  const id = lesson.dataset.lesson ?? '';
  for (const waits of lesson.querySelectorAll('[data-waits]')) waits.removeAttribute('data-waits');
  for (const prediction of lesson.querySelectorAll<HTMLElement>('[data-predict]')) holdPrediction(prediction);
  const card = lesson.querySelector<HTMLElement>('[data-pass-on-figure]');
  if (card !== null) offerFigure(card);
  showDone(lesson);
  onLessons(() => showDone(lesson));
  lesson.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLInputElement && target.dataset.done !== undefined) markLesson(id, target.checked);
  });
  const check = lesson.querySelector('section.check');
  check?.addEventListener('toggle', () => allRight(check) && !isLessonDone(id) && markLesson(id, true), true);
}
