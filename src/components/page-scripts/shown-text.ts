// What a page shows, as text.

/** Of what is written for both systems of units, the one that is not shown. */
const notShown = (): string => (document.documentElement.dataset.units === 'feet' ? '.in-metric' : '.in-feet');

export function textOf(element: Element | null): string {
  const copy = document.createElement('p');
  copy.append(...[...(element?.childNodes ?? [])].map((node) => node.cloneNode(true)));
  for (const other of copy.querySelectorAll(notShown())) other.remove();
  return (copy.textContent ?? '').replace(/\s+/g, ' ').trim();
}
