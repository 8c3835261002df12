// Why a layout cannot be divided so: each reason by the part of the sheet that it lies in.
import type { Reason } from '../../wizards/division/index.ts';
import { jointNamed } from '../diagram/index.ts';
import { joined, type Numbers, type Say } from '../words/index.ts';
import type { DivisionProps } from './given.ts';

interface BecauseProps extends Pick<DivisionProps, 'sheet' | 'say' | 'numbers' | 'language' | 'nameOf'> {
  readonly because: readonly Reason[];
}

export function Because({ because, sheet, say, numbers, language, nameOf }: BecauseProps) {
  const sections = (ids: readonly string[]): string => joined(ids.map(nameOf), language);
  const pair = (id: string): string => jointNamed(id, { sheet, say, nameOf });
  const joints = (ids: readonly string[]): string => joined(ids.map(pair), language);
  const lines = new Set(because.map((reason) => reasonSaid(reason, say, numbers, { sections, joints })));
  return (
    <>
      <p>{say(because.length === 0 ? 'division-impossible' : 'division-because')}</p>
      <ul class="list">
        {[...lines].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

interface Named {
  readonly sections: (ids: readonly string[]) => string;
  readonly joints: (ids: readonly string[]) => string;
}

function reasonSaid(reason: Reason, say: Say, numbers: Numbers, { sections, joints }: Named): string {
  switch (reason.kind) {
    case 'too-much':
      return say('division-reason-too-much', { share: numbers.share(reason.bearable) });
    case 'one-section':
    case 'islands':
    case 'feeds':
      return say(`division-reason-${reason.kind}`, { sections: sections(reason.sections) });
    case 'kept':
    case 'near':
      return say(`division-reason-${reason.kind}`, { joints: joints(reason.joints) });
    default:
      return say(`division-reason-${reason.kind}`);
  }
}
