// Passing an answer on: as a link, as text, as a code, on paper.
import { useState } from 'preact/hooks';
import { Missing, useLoaded } from '../../shared/index.ts';
import type { Say } from '../../words/index.ts';

const loadCode = () => import('./QrCode.tsx');

export function Share({ headline, lead, say }: { headline: string; lead: string; say: Say }) {
  const [told, setTold] = useState('');
  const [wanted, setWanted] = useState(false);
  const code = useLoaded(wanted ? loadCode : undefined);
  const copy = (text: string): void => {
    navigator.clipboard.writeText(text).then(
      () => setTold(say('copied')),
      () => setTold(say('copy-failed')),
    );
  };
  return (
    <div class="share">
      <button type="button" onClick={() => copy(location.href)}>
        {say('copy-link')}
      </button>
      <button type="button" onClick={() => copy(say('share-text', { headline, lead, link: location.href }))}>
        {say('copy-text')}
      </button>
      <button type="button" onClick={() => setWanted(true)}>
        {say('copy-code')}
      </button>
      <button type="button" onClick={() => print()}>
        {say('print')}
      </button>
      <span role="status">{told}</span>
      {code.value !== undefined && <code.value.QrCode text={location.href} label={say('copy-code-label')} />}
      {code.failed && <Missing say={say} again={code.again} />}
    </div>
  );
}
