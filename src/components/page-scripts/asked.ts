// A part of a page that comes alive once somebody wants something of it: reaches for it, sets it up by a link, or has come by one that does.
// Until then it stands as it was built, and costs no script. A button that was tapped meanwhile is tapped again.
import type { ClientDirective } from 'astro';

const REACHES = ['pointerover', 'touchstart', 'focusin', 'click'] as const;

/** What was built knows neither an address nor the lengths that a person measures in. */
const isBuiltOtherwise = (): boolean =>
  location.search !== '' || document.documentElement.dataset.units === 'feet';

const asked: ClientDirective = (load, _options, island) => {
  let tapped: HTMLButtonElement | null = null;
  const over = new AbortController();
  let coming = false;
  const wake = async (): Promise<void> => {
    if (coming) return;
    coming = true;
    try {
      const hydrate = await load();
      await hydrate();
      over.abort();
      setTimeout(() => tapped?.click());
    } catch {
      coming = false;
    }
  };
  const { signal } = over;
  for (const reach of REACHES) island.addEventListener(reach, wake, { signal, passive: true });
  island.addEventListener(
    'click',
    ({ target }) => {
      tapped = target instanceof Element ? target.closest('button') : null;
    },
    { signal },
  );
  addEventListener('popstate', wake, { signal });
  if (isBuiltOtherwise()) wake();
};

export default asked;
