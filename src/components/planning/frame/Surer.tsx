// After the quick answer: which questions are left, and what each could change. Each opens by itself and leads back here.
import type { Answers, QuestionId } from '../../../wizards/planning/index.ts';
import { toAddress } from '../../../wizards/planning/index.ts';
import { withUnits } from '../../device/index.ts';
import type { QuestionWords, Say } from '../../words/index.ts';

interface Props {
  /** The one that could change the answer most first. */
  readonly items: readonly { readonly question: QuestionId; readonly could: string }[];
  readonly answers: Answers;
  readonly questions: Readonly<Record<string, QuestionWords>>;
  readonly say: Say;
  readonly onAsk: (question: QuestionId) => void;
}

export function Surer({ items, answers, questions, say, onAsk }: Props) {
  if (items.length === 0) return null;
  return (
    <details class="part surer">
      <summary>{say('surer-title', { n: items.length })}</summary>
      <ul>
        {items.map(({ question, could }) => (
          <li key={question}>
            <a
              href={withUnits(toAddress(answers, question))}
              onClick={(event) => {
                if (event.metaKey || event.ctrlKey || event.shiftKey) return;
                event.preventDefault();
                onAsk(question);
              }}
            >
              {questions[question]?.title}
            </a>{' '}
            <span class="small">{could}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
