// The site's own faces. Where they are on the device, a page is set in them from its first paint on. Where they are not, it is set in the
// faces of the system and stays so, and they are fetched for the next page when this one is there and at rest.
import { areFacesKept, keepFaces } from '../device/index.ts';

const CALM_MS = 1500;

if (areFacesKept()) {
  document.documentElement.dataset.faces = '';
  for (const face of document.querySelectorAll<HTMLLinkElement>('link[as=font]')) face.rel = 'preload';
} else {
  addEventListener('load', () =>
    setTimeout(
      () => Promise.all([...document.fonts].map((face) => face.load())).then(keepFaces, () => undefined),
      CALM_MS,
    ),
  );
}
