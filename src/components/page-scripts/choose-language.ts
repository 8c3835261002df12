// The entry leads on to the first language that the reader's browser asks for and the site has; to the only one, where there is no other. Nothing is
// stored or sent.

const links = [...document.querySelectorAll<HTMLAnchorElement>('[data-choose] a')];
const chosen = navigator.languages
  .map((wanted) => links.find(({ hreflang }) => wanted === hreflang || wanted.startsWith(`${hreflang}-`)))
  .find((link) => link !== undefined);
const next = chosen ?? (links.length === 1 ? links[0] : undefined);
if (next !== undefined) location.replace(next.href);
