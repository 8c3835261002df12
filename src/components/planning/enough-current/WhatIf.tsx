// A trial beside the answer to "Is my power enough?": other trains moving, another supply, other coaches.
import { useMemo } from 'preact/hooks';
import type { Reckoning } from '../../../wizards/enough-current/index.ts';
import { concluded, reckon } from '../../../wizards/enough-current/index.ts';
import { QUESTIONS } from '../../../wizards/planning/index.ts';
import { Slider } from '../../figures/shared/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { Trial, TrialResult, useReckoned, useSettled, useTrial } from '../frame/index.ts';
import { triedOf } from './answer-texts.ts';

interface Props extends WorkedOutProps {
  /** Of the person's own answers. */
  readonly reckoning: Reckoning;
}

/** What the trial comes to, worked out as the answer would be; nothing while a slider moves and while it is worked out. */
function Comes({ answers, ...words }: Pick<Props, 'answers' | 'say' | 'numbers' | 'fixes' | 'language'>) {
  const settled = useSettled(answers);
  const worked = useReckoned('conclude', settled, concluded);
  if (worked === undefined || settled !== answers) return null;
  return <TrialResult {...triedOf({ ...words, ...worked, answers })} />;
}

export function WhatIf({ answers: own, reckoning: ofOwn, say, numbers, onTell, ...rest }: Props) {
  const tried = useTrial(own);
  const { answers, on } = tried;
  const reckoning = useMemo(() => (on ? reckon(answers) : ofOwn), [on, answers, ofOwn]);
  const { fleet, trains, power } = reckoning;
  const set = (id: string, value: number): void =>
    tried.set({ ...answers, [id]: { kind: 'number', span: { from: value, to: value } } });
  const moving = QUESTIONS.moving.fields[0];
  const supply = QUESTIONS['supply-label'].fields.find((field) => field.id === 'supply-amps');
  const coaches = QUESTIONS.coaches.fields[0];
  const problem = (least: number, most: number): string =>
    say('what-if-problem', { least: numbers.plain(least, 1), most: numbers.plain(most, 1) });
  const mostCoaches = Math.max(20, fleet.coaches);
  const mostAmps = Math.max(10, power?.supply.amps ?? 0);
  return (
    <Trial
      say={say}
      tried={tried}
      result={<Comes answers={answers} say={say} numbers={numbers} fixes={rest.fixes} language={rest.language} />}
      onKeep={onTell}
    >
      {trains > 0 && (
        <Slider
          field={moving}
          label={say('what-if-moving')}
          value={fleet.moving}
          text={String(fleet.moving)}
          least={0}
          most={trains}
          step={1}
          problem={problem(0, trains)}
          onValue={(value) => set('moving', value)}
        />
      )}
      {power !== undefined && supply?.kind === 'number' && (
        <Slider
          field={supply}
          label={say('what-if-supply')}
          value={power.supply.amps}
          text={numbers.ampsExactly(power.supply.amps)}
          least={0.5}
          most={mostAmps}
          step={0.5}
          problem={problem(supply.least, mostAmps)}
          onValue={(value) => set('supply-amps', value)}
        />
      )}
      <Slider
        field={coaches}
        label={say('what-if-coaches')}
        value={fleet.coaches}
        text={String(fleet.coaches)}
        least={0}
        most={mostCoaches}
        step={1}
        problem={problem(0, mostCoaches)}
        onValue={(value) =>
          tried.set({
            ...answers,
            coaches: { kind: 'number', span: { from: value, to: value } },
            ...(answers['lamps'] === undefined && value > 0 ? { lamps: { kind: 'choice', option: fleet.lamps } } : {}),
          })
        }
      />
    </Trial>
  );
}
