// The privacy page: what is kept on this device now, and the buttons that clear it.
import { clearStored, onUnits, STORED_IDS, storedNow, tellUnits } from '../device/index.ts';

const place = document.getElementById('stored');

function showNow(stored: HTMLElement): void {
  for (const id of STORED_IDS) {
    const now = storedNow(id);
    const cell = stored.querySelector<HTMLElement>(`[data-stored="${id}"]`);
    const button = stored.querySelector<HTMLButtonElement>(`[data-clear="${id}"]`);
    if (cell !== null) {
      cell.textContent = now.kept ? (now.text ?? stored.dataset.unreadable ?? '') : (stored.dataset.nothing ?? '');
    }
    if (button !== null) button.disabled = !now.kept;
  }
  const all = stored.querySelector<HTMLButtonElement>('[data-clear=""]');
  if (all !== null) all.disabled = !STORED_IDS.some((id) => storedNow(id).kept);
}

if (place !== null) {
  for (const waits of place.querySelectorAll('[data-waits]')) waits.removeAttribute('data-waits');
  showNow(place);
  onUnits(() => showNow(place));
  place.addEventListener('click', (event) => {
    const button = event.target instanceof Element ? event.target.closest<HTMLElement>('[data-clear]') : null;
    if (button === null) return;
    const which = button.dataset.clear;
    for (const id of STORED_IDS) if (which === '' || which === id) clearStored(id);
    tellUnits();
    showNow(place);
    const status = place.querySelector('[role="status"]');
    if (status !== null) status.textContent = place.dataset.cleared ?? '';
  });
}
