// The privacy page: what is kept on this device now, and the buttons that clear it.
import { COPY, clearCopy, clearStored, copyKept, onUnits, STORED_IDS, storedNow, tellUnits } from '../device/index.ts';
import { fill } from '../words/index.ts';

const place = document.getElementById('stored');

const MEGABYTE = 1e6;

let copy: Awaited<ReturnType<typeof copyKept>>;

const isKept = (id: string): boolean => (id === COPY ? copy !== undefined : storedNow(id).kept);

function textOf(stored: HTMLElement, id: string): string {
  const { nothing = '', unreadable = '', size = '', locale = '' } = stored.dataset;
  if (!isKept(id)) return nothing;
  if (id !== COPY || copy === undefined) return storedNow(id).text ?? unreadable;
  return fill(size, { files: copy.files, megabytes: Math.round(copy.bytes / MEGABYTE) }, locale);
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

async function lookAtCopy(stored: HTMLElement): Promise<void> {
  copy = await copyKept();
  showNow(stored);
}

async function clear(stored: HTMLElement, which: string | undefined): Promise<void> {
  const chosen = STORED_IDS.filter((id) => which === '' || which === id);
  const clearing = chosen.includes(COPY) ? clearCopy() : undefined;
  for (const id of chosen) if (id !== COPY) clearStored(id);
  tellUnits();
  showNow(stored);
  await clearing;
  await lookAtCopy(stored);
  const status = stored.querySelector('[role="status"]');
  if (status !== null) status.textContent = stored.dataset.cleared ?? '';
}

if (place !== null) {
  for (const waits of place.querySelectorAll('[data-waits]')) waits.removeAttribute('data-waits');
  showNow(place);
  lookAtCopy(place);
  // It is made a while after a first page is there.
  navigator.serviceWorker?.ready.then(() => lookAtCopy(place));
  onUnits(() => showNow(place));
  place.addEventListener('click', (event) => {
    const button = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-clear]') : null;
    if (button !== null) clear(place, button.dataset.clear);
  });
}
