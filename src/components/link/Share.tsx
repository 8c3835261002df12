// Passing an answer on: as a link, as text, as a code, on paper.
import { useState } from 'preact/hooks';
import type { Made } from '../../wizards/links/index.ts';
import { withMade } from '../../wizards/links/index.ts';
import { withUnits } from '../device/index.ts';
import { Missing, useLoaded } from '../shared/index.ts';
import type { Say } from '../words/index.ts';
import { Keep } from './Keep.tsx';

const loadCode = () => import('./QrCode.tsx');

interface Props {
  /** What is copied as text; the link follows it. */
  readonly text: () => string;
  readonly say: Say;
  /** Undefined on the way to an answer. */
  readonly made: Made | undefined;
}

export function Share({ text, say, made }: Props) {
  const [told, setTold] = useState('');
  const [wanted, setWanted] = useState(false);
  const code = useLoaded(wanted ? loadCode : undefined);
  const copy = (text: string): void => {
    navigator.clipboard.writeText(text).then(
      () => setTold(say('copied')),
      () => setTold(say('copy-failed')),
    );
  };
  // Whoever gets it sees the units that are seen here.
  const link = (): string => {
    const search = made === undefined ? location.search : withMade(location.search, made);
    return location.origin + location.pathname + withUnits(search) + location.hash;
  };
  return (
    <div class="share">
      <button type="button" onClick={() => copy(link())}>
        {say('copy-link')}
      </button>
      <button type="button" onClick={() => copy(say('share-text', { text: text(), link: link() }))}>
        {say('copy-text')}
      </button>
      <button type="button" onClick={() => setWanted(true)}>
        {say('copy-code')}
      </button>
      <button type="button" onClick={() => print()}>
        {say('print')}
      </button>
      <Keep say={say} />
      <span role="status">{told}</span>
      {code.value !== undefined && <code.value.QrCode text={link()} label={say('copy-code-label')} />}
      {code.failed && <Missing say={say} again={code.again} />}
    </div>
  );
}
