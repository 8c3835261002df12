// The page that short links lead to: the long address takes its place, so that going back leads to where the link was found. One that is
// damaged leads nowhere by itself: it says from where on, and offers what is kept.
import { type State, type Unfolded, unfolded } from '../../wizards/short-links/index.ts';
import { fill } from '../words/index.ts';
import { codeBox } from './code-box.ts';

const place = document.querySelector<HTMLElement>('#short-link');
const status = place?.querySelector<HTMLElement>('[role=status]');
const onwards = place?.querySelector<HTMLElement>('[data-kept]');

const addressOf = ({ page, search }: State): string => `${place?.dataset.home}${page}/${search}${location.hash}`;

/** A sentence of the page, with its numbers. */
function tell(name: string, numbers: Readonly<Record<string, number>> = {}): void {
  const { [name]: sentence = '', locale = '' } = place?.dataset ?? {};
  if (status === null || status === undefined) return;
  status.textContent = fill(sentence, numbers, locale);
  status.classList.toggle('problem', name !== 'opening' && name !== 'code');
}

function offer(state: State): void {
  const link = document.createElement('a');
  link.className = 'button';
  link.href = addressOf(state);
  link.textContent = onwards?.dataset.kept ?? '';
  onwards?.append(link);
}

function open(read: Unfolded): void {
  switch (read.kind) {
    case 'none':
      return;
    case 'whole':
      tell('opening');
      location.replace(addressOf(read.state));
      return;
    case 'later':
      tell('later');
      return;
    case 'lost':
      tell('lost', { from: read.from, signs: read.signs });
      return;
    case 'damaged':
      tell('damaged', { from: read.from, signs: read.signs, said: read.said, kept: read.kept });
      offer(read.state);
  }
}

/** The code of a page whose link is short already. */
async function showCode(path: string): Promise<void> {
  const box = await codeBox(new URL(`${place?.dataset.home}${path}/`, location.href).href);
  tell('code');
  onwards?.before(box);
}

const given = location.search.slice(1);
const FIX = /^fixes\/[a-z0-9-]{1,60}(?=&|$)/;
const [fix] = FIX.exec(given) ?? [];
if (fix === undefined) open(unfolded(given));
else showCode(fix).catch(() => tell('unloaded'));
