// A trial beside the answer to "Where do I divide the layout?": more or fewer trains moving at once.
import { trainCount } from '../../../engine/index.ts';
import { QUESTIONS, Reader } from '../../../wizards/planning/index.ts';
import type { ShareFound } from '../../../wizards/share-out/index.ts';
import { Slider } from '../../figures/shared/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { Trial, TrialResult, useReckoned, useSettled, useTrial } from '../frame/index.ts';
import { shareHere } from './here.ts';
import { headlineOf, partsTried, verdictOf } from './sharing-texts.ts';

/** What the trial comes to, worked out as the answer would be; nothing while a slider moves and while it is worked out. */
function Comes({ answers, say, numbers }: Pick<WorkedOutProps, 'answers' | 'say' | 'numbers'>) {
  const settled = useSettled(answers);
  const found: ShareFound | undefined = useReckoned('share', settled, shareHere);
  if (found === undefined || settled !== answers) return null;
  return (
    <TrialResult
      {...verdictOf(found, say)}
      sentence={[headlineOf(found, say), ...partsTried(found, say, numbers)].join(' ')}
    />
  );
}

export function WhatIf({ answers: own, say, numbers, onTell }: WorkedOutProps) {
  const tried = useTrial(own);
  const { answers } = tried;
  const reader = new Reader(answers);
  const fleet = reader.fleet(reader.scale());
  const trains = trainCount(fleet);
  return (
    <Trial say={say} tried={tried} result={<Comes answers={answers} say={say} numbers={numbers} />} onKeep={onTell}>
      <Slider
        field={QUESTIONS.moving.fields[0]}
        label={say('share-moving')}
        value={fleet.moving}
        text={String(fleet.moving)}
        least={0}
        most={trains}
        step={1}
        problem={say('what-if-problem', { least: numbers.plain(0, 1), most: numbers.plain(trains, 1) })}
        onValue={(value) => tried.set({ ...answers, moving: { kind: 'number', span: { from: value, to: value } } })}
      />
    </Trial>
  );
}
