// The cautions of a check: what can kill or hurt in full, what only breaks something in one line, so that the answers stay near.
import { Caution } from '../fix/index.ts';
import type { PartProps } from './part-props.ts';

interface Props extends Pick<PartProps, 'cautions' | 'say' | 'language'> {
  readonly ids: readonly string[];
}

export function CheckCautions({ ids, cautions, say, language }: Props) {
  if (ids.length === 0) return null;
  return (
    <div>
      {ids.map((id) => {
        const words = cautions[id];
        return words !== undefined && <Caution key={id} words={words} form="line" say={say} language={language} />;
      })}
    </div>
  );
}
