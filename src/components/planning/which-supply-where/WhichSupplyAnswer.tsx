// The answer to "Which supply goes on which unit?": the arrangements side by side, volts and amperes kept apart.
import type { Arrangement, NamedSupply, Placed, Span } from '../../../engine/index.ts';
import { STEP_LIMIT, sags, stepFinding, stepSize } from '../../../engine/index.ts';
import type { CrossingRow, Placement } from '../../../wizards/which-supply-where/index.ts';
import {
  crossingAdvice,
  crossingRows,
  otherWayFails,
  placeSupplies,
} from '../../../wizards/which-supply-where/index.ts';
import type { Say } from '../../words/index.ts';
import { CROSSING_TAGS } from '../../words/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, assumedLines, Surer, useReckoned, Workings } from '../frame/index.ts';
import { GapMeasured } from './GapMeasured.tsx';
import { headlineOf, leadOf, stepsOf, supplyValues, toDoOf, verdictOf, warningsOf } from './placing-texts.ts';

type Props = WorkedOutProps;

export function WhichSupplyAnswer(props: Props) {
  const { answers, say, numbers, fixes, home } = props;
  const placement = useReckoned('place', answers, placeSupplies);
  if (placement === undefined) return <p role="status">{say('reckoning-now')}</p>;
  const fix = fixes[placement.outcome];
  if (fix === undefined) return null;
  const [best] = placement.arrangements;
  const steps = stepsOf(placement, props);
  return (
    <AnswerPage
      {...props}
      outcome={placement.outcome}
      only={placement.only}
      readFirst={placement.readFirst}
      verdict={verdictOf(placement, say)}
      headline={headlineOf(placement, say)}
      saidAbove={true}
      lead={leadOf(placement, say, numbers) ?? fix.lead}
      warnings={warningsOf(placement, say, numbers)}
      tonight={tonightOf(placement, say)}
      {...toDoOf(placement, say, numbers)}
      several={steps === undefined ? undefined : { fixes: [placement.outcome], fix: steps }}
      doubts={doubtsOf(placement, say, numbers)}
      facts={best === undefined ? [] : arrangementLines(best, placement, props)}
      assumed={assumedLines({ ...props, assumptions: placement.assumptions })}
      because={
        placement.stillShort && !placement.only ? (
          <>
            {say('place-still-short', { share: numbers.share(placement.eitherShort) })}{' '}
            <a href={`${home}work-it-out/enough-current/`}>{say('place-enough')}</a>
          </>
        ) : undefined
      }
      decides={dependsOnTrains(placement) ? <p>{say('place-depends-trains')}</p> : undefined}
      figure={best === undefined ? undefined : <Card {...props} placement={placement} arrangement={best} best={true} />}
      others={hasAdvice(placement) ? <Advice {...props} placement={placement} /> : undefined}
      surer={
        <Surer
          {...props}
          items={props.left.map((question) => ({
            question,
            could: say(dependsOnTrains(placement) ? 'place-could-turn' : 'place-could-sharpen'),
          }))}
        />
      }
      numbers={
        <div class="part">
          <OtherWay {...props} placement={placement} />
          <Crossing {...props} placement={placement} />
        </div>
      }
    />
  );
}

/** Only where the rails are level do the amperes, and so the trains, decide. */
const dependsOnTrains = ({ trainsUntold, only, because }: Placement): boolean =>
  trainsUntold && !only && (because === 'enough' || because === 'amperes' || because === 'traffic');

/** What runs on alone may not switch off in a short either. */
function tonightOf({ outcome, toProve, alike, arrangements }: Placement, say: Say): string | undefined {
  // The supply of the command station stays in tonight, though it may be the one that is exchanged.
  const runsOn = outcome === 'two-supplies-alike' && arrangements[0]?.stages[0]?.trip === 'perhaps';
  const doubts = toProve.length > 0 || alike?.kept?.proves === true || runsOn ? [say('tonight-beside')] : [];
  if (outcome === 'two-supplies-alike') return [say('place-tonight-unplug'), ...doubts].join(' ');
  return doubts[0];
}

/** That a part has too little all the same, and what hangs on trains that nobody has told. */
function doubtsOf(placement: Placement, say: Say, numbers: Props['numbers']): string[] {
  const { stillShort, only, eitherShort } = placement;
  return [
    ...(stillShort && !only ? [say('place-still-short', { share: numbers.share(eitherShort) })] : []),
    ...(dependsOnTrains(placement) ? [say('place-depends-trains')] : []),
  ];
}

const hasAdvice = (placement: Placement): boolean => adviceFor(placement).advice.length > 0;

/** Beside what it comes to anyway. */
function adviceFor(placement: Placement) {
  const {
    crossings: [crossing],
    supplies,
    outcome,
  } = placement;
  if (crossing === undefined) return { advice: [], withheld: [] };
  const { advice, withheld } = crossingAdvice(crossing, supplies, otherWayFails(placement));
  return { advice: advice.filter((id) => id !== outcome), withheld };
}

interface WithPlacement extends Props {
  readonly placement: Placement;
}

function Card(props: WithPlacement & { readonly arrangement: Arrangement; readonly best: boolean }) {
  const { placement, say, numbers } = props;
  return (
    <div class="part">
      <ArrangementCard {...props} supplies={placement.supplies} railsKnown={placement.railsKnown} />
      {!placement.trainsUntold && (
        <p class="small">{say('place-share', { share: numbers.share(placement.stationShare) })}</p>
      )}
    </div>
  );
}

function OtherWay(props: WithPlacement) {
  const [, other] = props.placement.arrangements;
  return other === undefined ? null : <Card {...props} arrangement={other} best={false} />;
}

/** What to do about a train across the gap, in the order in which to try it. */
function Advice({ placement, say, home, fixes }: WithPlacement) {
  const { advice, withheld } = adviceFor(placement);
  return (
    <>
      <p>{say('crossing-advice')}</p>
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
  );
}

/** What happens while a train spans the gap, in the best arrangement. */
function Crossing({ placement, say, numbers, home, cautions, language }: WithPlacement) {
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

interface CardProps extends WithPlacement {
  readonly arrangement: Arrangement;
  readonly supplies: readonly NamedSupply[];
  readonly railsKnown: boolean;
  readonly best: boolean;
}

/** Nothing is the best way before the volts are alike, or measured; and where a short may not trip, not before that is tested. */
function bestTitle(placement: Placement): string {
  const { outcome, toProve } = placement;
  if (outcome === 'measure-rail-volts-first') return 'place-so-far';
  // What is there is not what it comes to: one of the two is exchanged.
  if (placement.alike !== undefined) return 'place-not-yet-alike';
  if (outcome === 'two-supplies-alike' || outcome === 'set-both-outputs-equal') {
    const fails = otherWayFails(placement);
    return fails === undefined ? 'place-not-yet' : `place-not-yet-${fails}`;
  }
  return toProve.length > 0 ? 'place-best-to-prove' : 'place-best';
}

function ArrangementCard({ placement, arrangement, supplies, railsKnown, best, say, numbers, home }: CardProps) {
  return (
    <div class="sheet part">
      <h3>{say(best ? bestTitle(placement) : 'place-other')}</h3>
      <ul class="places">
        {arrangement.stages.map((placed, index) => {
          const supply = supplies[placed.supply];
          if (supply === undefined) return null;
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
                  {railsLine(placed, railsKnown, say, numbers)}
                  {!placement.trainsUntold && (
                    <>
                      {' '}
                      · {say('place-strain', { share: numbers.share(placed.judgement.aboveUsable) })}{' '}
                      <span class={`tag ${placed.judgement.verdict}`}>
                        {say(`verdict-${placed.judgement.verdict}`)}
                      </span>
                    </>
                  )}
                </p>
              )}
              {placed.label.kind !== 'not-permitted' && placed.trip !== 'reached' && (
                <p>
                  <span class={`tag ${placed.trip === 'perhaps' ? 'tight' : 'short'}`}>
                    {say(`place-trip-${placed.trip}`)}
                  </span>
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
      <p>{stepSentence(arrangement, placement, best, { say, numbers })}</p>
      {arrangement.cascade && <p>{say('place-cascade')}</p>}
    </div>
  );
}

/** What its rails have and what can be planned with. */
function railsLine({ rails, capacity }: Placed, railsKnown: boolean, say: Say, numbers: Props['numbers']): string {
  const plan = say('place-usable', { amps: numbers.ampsExactly(capacity.usable) });
  if (!railsKnown) return plan;
  const idle = numbers.volts(rails.idle.to);
  const told = sags(rails)
    ? say('place-rails', { loaded: numbers.volts(rails.loaded.from), idle })
    : say('place-rails-one', { idle });
  return `${told} · ${plan}`;
}

/** Which supply feeds which unit, and what that brings, for the copy as text. */
function arrangementLines(
  best: Arrangement,
  placement: Placement,
  { say, numbers }: Pick<Props, 'say' | 'numbers'>,
): string[] {
  const { supplies, railsKnown } = placement;
  const lines = best.stages.flatMap((placed, index) => {
    const supply = supplies[placed.supply];
    if (supply === undefined || placed.label.kind === 'not-permitted') return [];
    const named = say('place-supply', { ...supplyValues(supply, say, numbers), n: placed.supply + 1 });
    const trip = placed.trip === 'reached' ? [] : [say(`place-trip-${placed.trip}`)];
    const what = [railsLine(placed, railsKnown, say, numbers), ...trip].join('; ');
    return [`${say(index === 0 ? 'place-station' : 'place-booster')}: ${named}: ${what}`];
  });
  return [`${say(bestTitle(placement))}:`, ...lines, stepSentence(best, placement, true, { say, numbers })];
}

function stepSentence(
  arrangement: Arrangement,
  placement: Placement,
  best: boolean,
  { say, numbers }: Pick<Props, 'say' | 'numbers'>,
): string {
  if (!placement.railsKnown) return say('place-step-unknown');
  const { step } = arrangement;
  const finding = stepFinding(step);
  if (finding === 'level') return say('place-step-level', { volts: numbers.volts(STEP_LIMIT) });
  const volts = numbers.volts(stepSize(step));
  if (finding === 'booster-higher') return say('place-step-booster', { volts });
  // Better as far as the volts go: where something else counts for more, the other way round is not praised, and that is named.
  const fails = best ? undefined : otherWayFails(placement);
  return say(fails === undefined ? 'place-step-station' : `place-step-station-${fails}`, { volts });
}
