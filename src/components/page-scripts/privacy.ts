// The privacy page: what is kept on this device now, and the buttons that clear it.
import {
  COPY,
  clearBook,
  clearCopy,
  clearStored,
  clearTests,
  copyKept,
  keptInBook,
  NOTEBOOK,
  onUnits,
  SHEETS,
  STORED_IDS,
  storedNow,
  TESTS,
  tellUnits,
} from '../device/index.ts';
import { fill } from '../words/index.ts';

const place = document.getElementById('stored');

const MEGABYTE = 1e6;

/** What is more than a word: looked for when the page opens and after each clearing. */
let copy: Awaited<ReturnType<typeof copyKept>>;
/** What reads sheets weighs more than this page. */
const loadSheets = () => import('../kept-sheets/index.ts');
const clearSheets = () => loadSheets().then((sheets) => sheets.clearSheets());
const keptSheets = () => loadSheets().then((sheets) => sheets.keptSheets());

const counted: Record<string, number | undefined> = {};
const CLEARED_APART = { [COPY]: clearCopy, [NOTEBOOK]: clearBook, [SHEETS]: clearSheets };
const clearedApart = (id: string): id is keyof typeof CLEARED_APART => Object.hasOwn(CLEARED_APART, id);

function isKept(id: string): boolean {
  if (id === COPY) return copy !== undefined;
  return clearedApart(id) ? counted[id] !== undefined : storedNow(id).kept;
}

function textOf(stored: HTMLElement, id: string): string {
  const { nothing = '', unreadable = '', size = '', answers = '', sheets = '', locale = '' } = stored.dataset;
  if (!isKept(id)) return nothing;
  if (id === COPY && copy !== undefined) {
    return fill(size, { files: copy.files, megabytes: Math.round(copy.bytes / MEGABYTE) }, locale);
  }
  const n = counted[id];
  if (n !== undefined) return fill(id === NOTEBOOK ? answers : sheets, { n }, locale);
  return storedNow(id).text ?? unreadable;
}

function showNow(stored: HTMLElement): void {
  for (const id of STORED_IDS) {
    const cell = stored.querySelector<HTMLElement>(`[data-stored="${id}"]`);
    const button = stored.querySelector<HTMLButtonElement>(`[data-clear="${id}"]`);
    if (cell !== null) cell.textContent = textOf(stored, id);
    if (button !== null) button.disabled = !isKept(id);
  }
  const all = stored.querySelector<HTMLButtonElement>('[data-clear=""]');
  if (all !== null) all.disabled = !STORED_IDS.some(isKept);
}

async function look(stored: HTMLElement): Promise<void> {
  [copy, counted[NOTEBOOK], counted[SHEETS]] = await Promise.all([
    copyKept(),
    keptInBook(),
    keptSheets().catch(() => undefined),
  ]);
  showNow(stored);
}

async function clear(stored: HTMLElement, which: string | undefined): Promise<void> {
  const chosen = STORED_IDS.filter((id) => which === '' || which === id);
  const clearing = chosen.filter(clearedApart).map((id) => CLEARED_APART[id]());
  for (const id of chosen) {
    if (id === TESTS) clearTests();
    else if (!clearedApart(id)) clearStored(id);
  }
  tellUnits();
  showNow(stored);
  await Promise.allSettled(clearing);
  await look(stored);
  const status = stored.querySelector('[role="status"]');
  if (status !== null) status.textContent = stored.dataset.cleared ?? '';
}

if (place !== null) {
  for (const waits of place.querySelectorAll('[data-waits]')) waits.removeAttribute('data-waits');
  showNow(place);
  look(place);
  // It is made a while after a first page is there.
  navigator.serviceWorker?.ready.then(() => look(place));
  onUnits(() => showNow(place));
  place.addEventListener('click', (event) => {
    const button = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-clear]') : null;
    if (button !== null) clear(place, button.dataset.clear);
  });
}
