// The check that is asked now, with roughly how many are to come.
import { useEffect, useState } from 'preact/hooks';
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import { questionsToGo, rowOfCheck } from '../../wizards/put-it-right/index.ts';
import type { PartProps } from './part-props.ts';
import { Question } from './Question.tsx';
import type { CheckWords } from './words.ts';

interface Props extends PartProps {
  readonly id: string;
  readonly words: CheckWords;
  readonly context: WalkContext;
  readonly onAnswer: (option: string) => void;
  readonly onCannot: () => void;
}

export function Asked({ context, ...props }: Props) {
  return <Question {...props} row={rowOfCheck(props.id)} above={<ToGo context={context} say={props.say} />} />;
}

// Reckoned after the question is on the screen: it costs more than the question itself.
function ToGo({ context, say }: Pick<Props, 'context' | 'say'>) {
  const [left, setLeft] = useState<number | undefined>(undefined);
  useEffect(() => {
    const timer = setTimeout(() => setLeft(questionsToGo(context)), 60);
    return () => clearTimeout(timer);
  }, [context]);
  return (
    <p class="small" role="status">
      {left === undefined ? '\u00a0' : say('walk-to-go', { n: left })}
    </p>
  );
}
