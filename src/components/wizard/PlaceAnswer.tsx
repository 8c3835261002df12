// The answer to "Which supply goes on which unit?": the arrangements side by side, volts and amperes kept apart.
import { useMemo } from 'preact/hooks';
import type { Arrangement, NamedSupply } from '../../engine/index.ts';
import { atLeast, STEP_LIMIT, stepSize } from '../../engine/index.ts';
import type { Answers } from '../../wizards/answers.ts';
import { placeSupplies } from '../../wizards/which-supply-where-result.ts';
import type { AnswerProps } from './parts.tsx';
import { Share, Steps, Verify, Workings } from './parts.tsx';

interface Props extends AnswerProps {
  readonly answers: Answers;
}

export function PlaceAnswer(props: Props) {
  const { answers, say, numbers, fixes, cautions, home, language } = props;
  const placement = useMemo(() => placeSupplies(answers), [answers]);
  const fix = fixes[placement.outcome];
  if (fix === undefined) return null;
  const best = placement.arrangements[0];
  const short = best?.permitted === true && best.stages.some((one) => !atLeast(one.judgement.verdict, 'tight'));
  const headline = say(`place-headline-${placement.outcome}`);
  return (
    <>
      <section class="part">
        <h1 class="verdict" tabIndex={-1}>
          {headline}
        </h1>
        <p class="lead">{fix.lead}</p>
        <p>{fix.because}</p>
        {short && (
          <p>
            {say('place-still-short')} <a href={`${home}work-it-out/enough-current/`}>{say('enough-current-title')}</a>
          </p>
        )}
      </section>
      {placement.arrangements.length > 0 && (
        <section class="part">
          <h2>{say('place-title')}</h2>
          <p class="small">{say('place-share', { share: numbers.share(placement.stationShare) })}</p>
          <div class="two even">
            {placement.arrangements.map((arrangement, index) => (
              <ArrangementCard
                key={arrangement.stages.map((one) => one.supply).join()}
                {...props}
                arrangement={arrangement}
                supplies={placement.supplies}
                railsKnown={placement.railsKnown}
                best={index === 0}
              />
            ))}
          </div>
        </section>
      )}
      <section class="part">
        <h2>{say('steps-title')}</h2>
        <Steps fix={fix} cautions={cautions} say={say} language={language} />
        <p>
          <a href={`${home}fixes/${placement.outcome}/`}>
            {say('full-page')}: {fix.title}
          </a>
        </p>
      </section>
      <Verify fix={fix} say={say} />
      <Share headline={headline} lead={fix.lead} say={say} />
    </>
  );
}

interface CardProps extends Props {
  readonly arrangement: Arrangement;
  readonly supplies: readonly NamedSupply[];
  readonly railsKnown: boolean;
  readonly best: boolean;
}

function ArrangementCard({ arrangement, supplies, railsKnown, best, say, numbers, home }: CardProps) {
  return (
    <div class="sheet part">
      <h3>{say(best ? 'place-best' : 'place-other')}</h3>
      <ul class="places">
        {arrangement.stages.map((placed, index) => {
          const supply = supplies[placed.supply];
          if (supply === undefined) return null;
          const { idle, loaded } = placed.rails;
          return (
            <li key={placed.supply}>
              <p>
                <b>{say(index === 0 ? 'place-station' : 'place-booster')}</b> <span class="sign">←</span>{' '}
                {say('place-supply', {
                  n: placed.supply + 1,
                  volts: numbers.volts(supply.volts),
                  kind: say(`kind-${supply.kind}`),
                  amps: numbers.amps(supply.amps),
                })}
              </p>
              {placed.label.kind === 'not-permitted' ? (
                <p>
                  <span class="tag short">{say('place-not-permitted')}</span>{' '}
                  {say(`because-not-permitted-${placed.label.because}`)}
                </p>
              ) : (
                <p class="num">
                  {railsKnown &&
                    `${idle.to - loaded.from < 0.05 ? say('place-rails-one', { idle: numbers.volts(idle.to) }) : say('place-rails', { loaded: numbers.volts(loaded.from), idle: numbers.volts(idle.to) })} · `}
                  {say('place-usable', { amps: numbers.ampsExactly(placed.capacity.usable) })} ·{' '}
                  {say('place-strain', { share: numbers.share(placed.judgement.aboveUsable) })}{' '}
                  <span class={`tag ${placed.judgement.verdict}`}>{say(`verdict-${placed.judgement.verdict}`)}</span>
                </p>
              )}
              <details>
                <summary>{say('working-title')}</summary>
                <Workings working={placed.capacity.working} say={say} numbers={numbers} home={home} />
              </details>
            </li>
          );
        })}
      </ul>
      <p>{stepSentence(arrangement, railsKnown, { say, numbers })}</p>
      {arrangement.cascade && <p>{say('place-cascade')}</p>}
    </div>
  );
}

function stepSentence(
  arrangement: Arrangement,
  railsKnown: boolean,
  { say, numbers }: Pick<Props, 'say' | 'numbers'>,
): string {
  if (!railsKnown) return say('place-step-unknown');
  const { step } = arrangement;
  if (stepSize(step) <= STEP_LIMIT + 1e-9) return say('place-step-level', { volts: numbers.volts(STEP_LIMIT) });
  const boosterHigher = step.to >= -step.from;
  return say(boosterHigher ? 'place-step-booster' : 'place-step-station', { volts: numbers.volts(stepSize(step)) });
}
