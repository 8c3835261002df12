// The answer to "Which supply goes on which unit?": the arrangements side by side, volts and amperes kept apart.
import type { Arrangement, NamedSupply, Span } from '../../../engine/index.ts';
import { STEP_LIMIT, sags, stepFinding, stepSize } from '../../../engine/index.ts';
import type { Answers } from '../../../wizards/planning/index.ts';
import type { CrossingRow, Placement } from '../../../wizards/which-supply-where/index.ts';
import { crossingAdvice, crossingRows, placeSupplies } from '../../../wizards/which-supply-where/index.ts';
import { CROSSING_TAGS } from '../../words/index.ts';
import type { AnswerProps, Tone } from '../frame/index.ts';
import { AnswerPage, useReckoned, Workings } from '../frame/index.ts';
import { GapMeasured } from './GapMeasured.tsx';

interface Props extends AnswerProps {
  readonly answers: Answers;
}

export function WhichSupplyAnswer(props: Props) {
  const { answers, say, fixes, home } = props;
  const found = useReckoned('place', answers, placeSupplies);
  if (found === undefined) return <p role="status">{say('reckoning-now')}</p>;
  const { result: placement } = found;
  const fix = fixes[placement.outcome];
  if (fix === undefined) return null;
  return (
    <AnswerPage
      {...props}
      outcome={placement.outcome}
      settled={found.answers === answers ? placement.outcome : undefined}
      verdict={verdictOf(placement, say)}
      headline={say(`place-headline-${placement.outcome}`)}
      lead={fix.lead}
      because={
        placement.stillShort ? (
          <>
            {say('place-still-short')} <a href={`${home}work-it-out/enough-current/`}>{say('place-enough')}</a>
          </>
        ) : undefined
      }
      figure={
        <div>
          <Places {...props} placement={placement} />
          <Crossing {...props} placement={placement} />
        </div>
      }
    />
  );
}

function verdictOf({ outcome, stillShort, arrangements }: Placement, say: Props['say']): { tone: Tone; word: string } {
  if (outcome === 'wrong-supply' || outcome === 'rail-voltage-too-high')
    return { tone: 'stop', word: say('verdict-stop') };
  if (arrangements.length === 0) return { tone: 'open', word: say('verdict-unknown') };
  return stillShort ? { tone: 'short', word: say('verdict-short') } : { tone: 'enough', word: say('verdict-enough') };
}

function Places(props: Props & { readonly placement: Placement }) {
  const { placement, say, numbers } = props;
  if (placement.arrangements.length === 0) return null;
  return (
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
  );
}

/** What happens while a train spans the gap, in the best arrangement, and what to do about it in order. */
function Crossing({
  placement,
  say,
  numbers,
  home,
  fixes,
  cautions,
  language,
}: Props & { readonly placement: Placement }) {
  const [crossing] = placement.crossings;
  if (crossing === undefined) {
    return placement.arrangements.length === 0 ? null : (
      <section class="part">
        <h2>{say('crossing-title')}</h2>
        <p>{say('crossing-unknown')}</p>
      </section>
    );
  }
  const worst = crossing.moments[crossing.worst];
  const { advice, withheld } = crossingAdvice(crossing, placement.supplies);
  return (
    <section class="part">
      <h2>{say('crossing-title')}</h2>
      <table class="cards">
        <thead>
          <tr>
            {['moment', 'step', 'pulse', 'over', 'carries'].map((id) => (
              <th key={id} scope="col" class={id === 'moment' ? '' : 'num'}>
                {say(`crossing-${id}`)}
              </th>
            ))}
            <th scope="col">{say('verdict-column')}</th>
          </tr>
        </thead>
        <tbody>
          {crossingRows(crossing).map((row) => (
            <MomentRow key={row.moment} {...row} say={say} numbers={numbers} />
          ))}
        </tbody>
      </table>
      <p class="small">{say('crossing-ohms')}</p>
      {crossing.signFlips && <p>{say('crossing-flips')}</p>}
      {advice.length > 0 && (
        <>
          <h3>{say('crossing-advice')}</h3>
          <ol>
            {advice.map((id) => (
              <li key={id}>
                <a href={`${home}fixes/${id}/`}>{fixes[id]?.short ?? id}</a>
              </li>
            ))}
          </ol>
          {withheld.map(({ id, because }) => (
            <p key={id} class="small">
              {fixes[id]?.short}: {say(`crossing-withheld-${because}`)}
            </p>
          ))}
        </>
      )}
      {placement.expected !== undefined && (
        <GapMeasured expected={placement.expected} {...{ say, numbers, home, cautions, language }} />
      )}
      {worst.kind === 'crossing' && worst.workings.length > 0 && (
        <details>
          <summary>{say('working-title')}</summary>
          {worst.workings.map((working) => (
            <Workings key={working.formula} working={working} say={say} numbers={numbers} home={home} />
          ))}
        </details>
      )}
    </section>
  );
}

function MomentRow({ moment, verdict, reasons, push, say, numbers }: CrossingRow & Pick<Props, 'say' | 'numbers'>) {
  const range = (span: Span | undefined): string => {
    if (span === undefined) return numbers.ampsExactly(0);
    const [from, to] = [numbers.amps(span.from), numbers.amps(span.to)];
    return from === to ? from : say('table-range', { from, to });
  };
  const cells = [
    ['step', numbers.volts(push?.step ?? 0)],
    ['pulse', range(push?.pulse)],
    ['over', range(push?.takeOver)],
    [
      'carries',
      push === undefined ? '' : say('crossing-of', { value: range(push.carries), limit: numbers.amps(push.limit) }),
    ],
  ] as const;
  return (
    <tr>
      <th scope="row">{say(`crossing-moment-${moment}`)}</th>
      {cells.map(([id, text]) => (
        <td key={id} class="num" data-label={say(`crossing-${id}`)}>
          {text}
        </td>
      ))}
      <td data-label={say('verdict-column')}>
        <span class={`tag ${CROSSING_TAGS[verdict]}`}>{say(`across-verdict-${verdict}`)}</span>{' '}
        {reasons.map((reason) => say(`across-reason-${reason}`)).join(' ')}
      </td>
    </tr>
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
                    `${sags(placed.rails) ? say('place-rails', { loaded: numbers.volts(loaded.from), idle: numbers.volts(idle.to) }) : say('place-rails-one', { idle: numbers.volts(idle.to) })} · `}
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
  const finding = stepFinding(step);
  if (finding === 'level') return say('place-step-level', { volts: numbers.volts(STEP_LIMIT) });
  return say(finding === 'booster-higher' ? 'place-step-booster' : 'place-step-station', {
    volts: numbers.volts(stepSize(step)),
  });
}
