// Keeps the address of an answer saying what it leads to, and tells what a link that was made before said then.
import { useEffect, useState } from 'preact/hooks';
import type { Made } from '../../wizards/links/index.ts';
import { madeIn, madeText, readMade, sinceThen, withMade } from '../../wizards/links/index.ts';
import type { Say } from '../words/index.ts';

interface Props {
  readonly release: string;
  /** Undefined while it is being reckoned. */
  readonly verdict: string | undefined;
  /** How a verdict is called; undefined for one that is not given any more. */
  readonly titleOf: (verdict: string) => string | undefined;
  readonly say: Say;
}

export function MadeThen({ release, verdict, titleOf, say }: Props) {
  const [then, setThen] = useState('');
  // After each drawing: an answer that follows a slider writes its address anew.
  useEffect(() => {
    if (verdict === undefined) return;
    const now = { release, verdict };
    const before = rememberedHere() ?? madeIn(location.search);
    const worth = before !== undefined && sinceThen(before, now) !== 'nothing' ? madeText(before) : '';
    setThen(worth);
    const search = withMade(location.search, now);
    if (search !== location.search) history.replaceState(worth, '', location.pathname + search + location.hash);
  });
  const made = readMade(then);
  if (made === undefined || verdict === undefined) return null;
  const told = sentence(made, { release, verdict }, titleOf(made.verdict), say);
  return told === undefined ? null : <p class="small made-then">{told}</p>;
}

/** What the link said with which a person came to this place, kept when the page is opened anew or gone back to. */
function rememberedHere(): Made | undefined {
  const state: unknown = history.state;
  return typeof state === 'string' ? readMade(state) : undefined;
}

/** Nothing for a verdict that this release does not know though it should have given it: nobody has said it. */
function sentence(made: Made, now: Made, said: string | undefined, say: Say): string | undefined {
  const what = sinceThen(made, now);
  if (what === 'the-same') return say('made-the-same');
  if (said === undefined) return what === 'earlier' ? say('made-unsaid') : undefined;
  return say(what === 'earlier' ? 'made-earlier' : 'made-otherwise', { said });
}
