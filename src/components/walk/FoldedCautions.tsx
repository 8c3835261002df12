// The cautions of a check, folded: the answers below stay near.
import { Caution } from '../fix/index.ts';
import type { PartProps } from './part-props.ts';

interface Props extends Pick<PartProps, 'cautions' | 'say' | 'language'> {
  readonly ids: readonly string[];
}

export function FoldedCautions({ ids, cautions, say, language }: Props) {
  if (ids.length === 0) return null;
  return (
    <div>
      {ids.map((id) => {
        const words = cautions[id];
        return words !== undefined && <Caution key={id} words={words} form="folded" say={say} language={language} />;
      })}
    </div>
  );
}
