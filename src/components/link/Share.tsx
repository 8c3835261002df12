// Passing on where one is: as a short link or the long one, as text, as Markdown, as a code, on paper.
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Made } from '../../wizards/links/index.ts';
import { withMade } from '../../wizards/links/index.ts';
import { toClipboard, withUnits } from '../device/index.ts';
import { Missing, onPrintKey, useLoaded } from '../shared/index.ts';
import type { Say } from '../words/index.ts';
import { Keep } from './Keep.tsx';
import type { Told } from './markdown.ts';

const loadPassOn = () => import('./pass-on.ts');
const loadCode = async () => ({ ...(await import('./QrCode.tsx')), ...(await loadPassOn()) });

interface Props {
  /** What is copied as text; the link follows it. */
  readonly text: () => string;
  /** The same, to be written as Markdown. */
  readonly told: () => Told;
  readonly say: Say;
  /** Undefined on the way to an answer. */
  readonly made: Made | undefined;
  /** What is copied round that text, where it says more than the link. */
  readonly round?: (told: { readonly text: string; readonly link: string }) => string;
  /** What else can be done with it. */
  readonly more?: ComponentChildren;
  /** What the link says, where the address of the page does not say it yet; the notebook keeps addresses of pages, so it is not offered then. */
  readonly ahead?: string;
}

export function Share({ text, told, say, made, round = (told) => say('share-text', told), more, ahead }: Props) {
  const [status, setStatus] = useState('');
  // What was copied was the page as it stood then.
  const here = ahead ?? location.search;
  useEffect(() => setStatus(''), [here]);
  const [shown, setShown] = useState(false);
  const [wanted, setWanted] = useState(false);
  const code = useLoaded(wanted ? loadCode : undefined);
  const [printing, setPrinting] = useState(false);
  // Whoever gets it sees the units that are seen here.
  const search = (): string => {
    const said = ahead ?? location.search;
    return withUnits(made === undefined ? said : withMade(said, made));
  };
  const long = (): string => location.origin + location.pathname + search() + location.hash;
  const copy = (write: () => string | Promise<string>): void => {
    toClipboard(write()).then(
      () => setStatus(say('copied')),
      () => setStatus(say('copy-failed')),
    );
  };
  // Where it cannot be had, the long one says the same.
  const short = (): Promise<string> =>
    loadPassOn().then(
      ({ shortLink }) => shortLink(search()) ?? long(),
      () => long(),
    );
  const print = (): void => {
    setWanted(true);
    setPrinting(true);
  };
  // The code goes on paper too.
  useEffect(() => onPrintKey(print), []);
  useEffect(() => {
    if (!printing || (code.value === undefined && !code.failed)) return;
    setPrinting(false);
    globalThis.print();
  }, [printing, code.value, code.failed]);
  const link = code.value?.shortLink(search()) ?? long();
  const getReady = (): void => {
    loadPassOn().catch(() => undefined);
  };
  return (
    <>
      <div class="share" onPointerEnter={getReady} onFocusCapture={getReady}>
        <button type="button" onClick={() => copy(short)}>
          {say('copy-link')}
        </button>
        <button type="button" onClick={() => copy(async () => round({ text: text(), link: await short() }))}>
          {say('copy-text')}
        </button>
        <button
          type="button"
          onClick={() =>
            copy(async () => (await loadPassOn()).markdown(told(), { name: say('share-open'), address: await short() }))
          }
        >
          {say('copy-markdown')}
        </button>
        <button type="button" onClick={() => copy(long)}>
          {say('copy-long-link')}
        </button>
        <button
          type="button"
          onClick={() => {
            setWanted(true);
            setShown(true);
          }}
        >
          {say('copy-code')}
        </button>
        <button type="button" onClick={print}>
          {say('print')}
        </button>
        {ahead === undefined && <Keep say={say} />}
        {more}
        <span role="status">{status}</span>
        {code.failed && shown && <Missing say={say} again={code.again} />}
      </div>
      <div class={shown ? 'paper-link shown' : 'paper-link'}>
        {code.value !== undefined && <code.value.QrCode text={link} label={say('copy-code-label')} />}
        {(!shown || code.value !== undefined) && <p>{link}</p>}
      </div>
    </>
  );
}
