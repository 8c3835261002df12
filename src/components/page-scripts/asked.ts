// A part of a page that comes alive once somebody wants something of it: reaches for it, sets it up by a link, or has come by one that does.
// Until then it stands as it was built, and costs no script. What was tapped, chosen or moved meanwhile is done once it lives.
import type { ClientDirective } from 'astro';

const ACTS = ['click', 'input', 'change'] as const;
const REACHES = ['pointerover', 'touchstart', 'focusin', ...ACTS] as const;

/** What was built knows neither an address nor the lengths that a person measures in. */
const isBuiltOtherwise = (): boolean => location.search !== '' || document.documentElement.dataset.units === 'feet';

/** Does again what somebody just did to a control: coming alive puts it back to what was built. */
function againOf(control: Element): (() => void) | undefined {
  if (control instanceof HTMLButtonElement) return () => control.click();
  if (!(control instanceof HTMLInputElement || control instanceof HTMLSelectElement)) return undefined;
  const now = control instanceof HTMLInputElement ? { checked: control.checked } : {};
  const { value } = control;
  return () => {
    Object.assign(control, now, { value });
    for (const type of ['input', 'change']) control.dispatchEvent(new Event(type, { bubbles: true }));
  };
}

const asked: ClientDirective = (load, _options, island) => {
  const over = new AbortController();
  const held = new Map<Element, () => void>();
  let coming = false;
  const hold = ({ target, type }: Event): void => {
    const control = target instanceof Element ? target.closest(type === 'click' ? 'button' : 'input, select') : null;
    const again = control === null ? undefined : againOf(control);
    if (control !== null && again !== undefined) held.set(control, again);
  };
  const wake = async (): Promise<void> => {
    if (coming) return;
    coming = true;
    try {
      await (await load())();
      over.abort();
      setTimeout(() => {
        for (const again of held.values()) again();
      });
    } catch {
      coming = false;
    }
  };
  const { signal } = over;
  for (const act of ACTS) island.addEventListener(act, hold, { signal });
  for (const reach of REACHES) island.addEventListener(reach, wake, { signal, passive: true });
  addEventListener('popstate', wake, { signal });
  if (isBuiltOtherwise()) wake();
};

export default asked;
