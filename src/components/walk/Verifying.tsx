// After "that fixed it": isolation and phase are looked at once more, since real conversions often hold two faults.

import { useCallback } from 'preact/hooks';
import type { Isolation, Phase, WalkContext } from '../../wizards/put-it-right/index.ts';
import { ISOLATION, lookLeft, PHASE } from '../../wizards/put-it-right/index.ts';
import { loadPicture } from '../check-picture/index.ts';
import { NotYet, useLoaded } from '../shared/index.ts';
import { CheckCautions } from './CheckCautions.tsx';
import type { PartProps } from './part-props.ts';

interface Props extends PartProps {
  readonly context: WalkContext;
  readonly onIsolation: (found: Isolation) => void;
  readonly onPhase: (found: Phase) => void;
}

export function Verifying({ context, say, language, cautions, pictureStyles, onIsolation, onPhase }: Props) {
  const load = useCallback(() => loadPicture(pictureStyles), [pictureStyles]);
  // Without its picture the last look is told in words all the same.
  const { value: Picture, failed, again } = useLoaded(load);
  const part = lookLeft(context) ?? 'phase';
  const answers =
    part === 'isolation'
      ? ISOLATION.map((found) => [found, () => onIsolation(found)] as const)
      : PHASE.map((found) => [found, () => onPhase(found)] as const);
  if (Picture === undefined && !failed) return <NotYet say={say} failed={failed} again={again} />;
  return (
    <section class="part asked">
      <p class="small">{say('walk-last-look')}</p>
      <h1 tabIndex={-1}>{say(`walk-${part}-title`)}</h1>
      <ol class="how">
        {(part === 'isolation' ? [1, 2, 3] : [1, 2, 3, 4]).map((n) => (
          <li key={n}>{say(`walk-${part}-how-${n}`)}</li>
        ))}
      </ol>
      {Picture !== undefined && <Picture id={part === 'isolation' ? 'jumper' : 'two-lamps'} say={say} />}
      <CheckCautions
        ids={part === 'isolation' ? ['still-fed'] : ['lamp-hot', 'rings-off', 'meter-sockets']}
        cautions={cautions}
        say={say}
        language={language}
      />
      <ul class="answers">
        {answers.map(([found, act]) => (
          <li key={found}>
            <button class={found === 'cannot' ? 'cannot' : ''} type="button" onClick={act}>
              <b>{say(`walk-${part}-${found}`)}</b>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
