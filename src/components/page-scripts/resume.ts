// While a page that asks questions is not alive yet: the first question waits where the address holds answers, a tap is kept until it
// can be heard, and where nothing comes alive the page says so.

import './faces.ts';

const LATE_MS = 6000;

const marks = document.documentElement.dataset;
if (location.search !== '') marks.resume = '';
setTimeout(() => {
  marks.late = '';
}, LATE_MS);

// A browser reads its tables of numbers when the first number is written: here, while what asks is still on its way, and not as it comes alive.
addEventListener('load', () => setTimeout(() => (1).toLocaleString()));

let tapped: HTMLButtonElement | undefined | null;
addEventListener('click', ({ target }) => {
  tapped = target instanceof Element ? target.closest<HTMLButtonElement>('astro-island[ssr] button') : undefined;
});
addEventListener(
  'astro:hydrate',
  () =>
    setTimeout(() => {
      tapped?.click();
      tapped = undefined;
    }),
  true,
);
