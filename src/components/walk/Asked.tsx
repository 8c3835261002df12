// The check that is asked now. Its words are fetched: most of them are never asked for in one walk.
import { useMemo } from 'preact/hooks';
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import { isOnePart, optionsFor, rowOfCheck } from '../../wizards/put-it-right/index.ts';
import { NotYet } from '../shared/index.ts';
import { inMeasures } from '../words/index.ts';
import { useQuestion } from './fetched.ts';
import type { PartProps } from './part-props.ts';
import { Question } from './Question.tsx';
import type { AskedWords, CheckNames, CheckWords, WalkWords } from './words.ts';

interface Props extends PartProps {
  readonly id: string;
  readonly context: WalkContext;
  readonly checks: WalkWords['checks'];
  readonly onAnswer: (option: string) => void;
  /** Left out where it stands beside something else and need not be answered. */
  readonly onCannot?: () => void;
}

export function Asked({ context, checks, ...props }: Props) {
  const { id, say, numbers } = props;
  const { value, failed, again } = useQuestion(props, id);
  const words = useMemo(() => inMeasures(value?.asked, numbers), [value, numbers]);
  const names = checks[id];
  if (words === undefined || names === undefined) return <NotYet say={say} failed={failed} again={again} />;
  const row = rowOfCheck(id);
  const lesser = props.onCannot === undefined;
  return (
    <Question
      {...props}
      row={row}
      words={wholeOf(words.check, names)}
      Picture={value?.Picture}
      cautions={words.cautions}
      lesser={lesser}
      options={optionsFor(id, row?.options ?? [], isOnePart(context.answers))}
    />
  );
}

/** What was fetched with the names of its answers. */
function wholeOf({ hints, ...words }: AskedWords, { known, options }: CheckNames): CheckWords {
  const hinted = Object.entries(options).map(([option, { label }]) => [option, { label, hint: hints[option] }]);
  return { ...words, known, options: Object.fromEntries(hinted) };
}
