// "What if" beside the answer, which stays: nothing of a trial is in the address before it is kept.
import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Answers } from '../../../wizards/planning/index.ts';
import type { Say } from '../../words/index.ts';
import type { Tone } from './AnswerPage.tsx';

/** Answers that are tried; they fall back to the person's own whenever these change. */
export interface Tried {
  /** The person's own while nothing is tried. */
  readonly answers: Answers;
  readonly on: boolean;
  readonly set: (answers: Answers) => void;
  readonly back: () => void;
}

export function useTrial(own: Answers): Tried {
  const [tried, setTried] = useState<{ readonly of: Answers; readonly answers: Answers } | undefined>(undefined);
  return useMemo(() => {
    const on = tried?.of === own;
    return {
      answers: on ? tried.answers : own,
      on,
      set: (answers) => setTried({ of: own, answers }),
      back: () => setTried(undefined),
    };
  }, [own, tried]);
}

interface Props {
  readonly say: Say;
  readonly tried: Tried;
  /** What the trial comes to: see TrialResult. Read out when it changes. */
  readonly result: ComponentChildren;
  readonly onKeep: (answers: Answers) => void;
  /** The sliders. */
  readonly children: ComponentChildren;
}

export function Trial({ say, tried, result, onKeep, children }: Props) {
  const { on, answers, back } = tried;
  return (
    <aside class={on ? 'part trial on' : 'part trial'} aria-label={say('trial-title')}>
      <h2 class="h3">{say('trial-title')}</h2>
      {children}
      <div role="status">
        {on && (
          <>
            <p class="small">{say('trial-only')}</p>
            {result}
          </>
        )}
      </div>
      {on && (
        <p class="acts">
          <button class="button quiet" type="button" onClick={back}>
            {say('trial-back')}
          </button>
          <button class="button quiet" type="button" onClick={() => onKeep(answers)}>
            {say('trial-keep')}
          </button>
        </p>
      )}
    </aside>
  );
}

export const TrialResult = ({
  tone,
  word,
  sentence,
}: {
  readonly tone: Tone;
  readonly word: string;
  readonly sentence: string;
}) => (
  <p>
    <span class={`tag ${tone}`}>{word}</span> {sentence}
  </p>
);

/** So long a slider rests before what it stands at is worked out, milliseconds. */
const REST_MS = 200;

/** The answers that were tried last, once nothing has moved for a moment. */
export function useSettled(answers: Answers): Answers {
  const [settled, setSettled] = useState(answers);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(answers), REST_MS);
    return () => clearTimeout(timer);
  }, [answers]);
  return settled;
}
