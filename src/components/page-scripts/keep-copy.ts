// Once a page is there and at rest, fetches the script that keeps a copy of the site; where there is one already, that script has something to say.

const CALM_MS = 3000;

const site = document.querySelector<HTMLLinkElement>('link[rel=manifest]');
if ('serviceWorker' in navigator && site !== null) {
  const begin = (): void => {
    import(new URL('offline.js', site.href).href).catch(() => undefined);
  };
  addEventListener('load', () => setTimeout(begin, navigator.serviceWorker.controller === null ? CALM_MS : 0));
}

export {};
