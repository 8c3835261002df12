// The switch of languages keeps what the address tells: the answers of a wizard or a walk, words searched for, a spot on the page.

for (const link of document.querySelectorAll<HTMLAnchorElement>('[data-languages] a')) {
  const follow = (): void => {
    link.search = location.search;
    link.hash = location.hash;
  };
  for (const event of ['pointerdown', 'focus', 'click'] as const) link.addEventListener(event, follow);
}
