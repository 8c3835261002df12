// The entry leads on to the first language that the reader's browser asks for and the site has. Nothing is stored or sent.

const links = [...document.querySelectorAll<HTMLAnchorElement>('[data-choose] a')];
const chosen = navigator.languages
  .map((wanted) => links.find(({ hreflang }) => wanted === hreflang || wanted.startsWith(`${hreflang}-`)))
  .find((link) => link !== undefined);
if (chosen !== undefined) location.replace(chosen.href);
