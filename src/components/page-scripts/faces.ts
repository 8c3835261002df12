// The site's own faces. Where they are on the device, a page is set in them from its first paint on. Where they are not, it is set in the
// faces of the system and stays so, and they are fetched for the next page when this one is there and at rest.
import { FACES, readStored, store } from '../device/index.ts';

const CALM_MS = 1500;

const faces = document.querySelectorAll<HTMLLinkElement>('link[data-face]');

async function fetchAll(): Promise<void> {
  const answers = await Promise.all([...faces].map(({ href }) => fetch(href)));
  await Promise.all(answers.map((answer) => answer.arrayBuffer()));
  if (answers.every(({ ok }) => ok)) store(FACES, 'kept');
}

if (readStored(FACES) === undefined) {
  addEventListener('load', () => setTimeout(() => fetchAll().catch(() => undefined), CALM_MS));
} else {
  document.documentElement.dataset.faces = '';
  for (const face of faces) face.rel = 'preload';
}
