// npm run cautions: how many words of caution stand beside how many words of steps, and which pages tell the most in full.
import { assertNode } from './machine.mjs';

assertNode();

const { cautionsTold } = await import('./check/cautions.mjs');
const { steps, cautions, ratio, pages } = cautionsTold();
console.log(`${cautions} words of caution beside ${steps} words of steps: ${ratio.toFixed(2)} (aim 0.40)`);
console.log(`most cautions in full on a page: ${pages[0].full} (aim 5)`);
for (const { id, full, cautions: told, steps: words } of pages.slice(0, 15))
  console.log(`  ${id}: ${full} in full, ${told} words beside ${words}`);
