// Once a page is there and at rest, fetches the script that keeps a copy of the site; where there is one already, that script has something to say.

const CALM_MS = 3000;

/** In the root of the site, as the script is. */
const beside = document.querySelector<HTMLLinkElement>('link[rel=icon]');
addEventListener('load', () =>
  setTimeout(
    () => import(new URL('offline.js', beside?.href).href).catch(() => undefined),
    navigator.serviceWorker?.controller ? 0 : CALM_MS,
  ),
);

export {};
