// The answer to "Which supply goes on which unit?": the arrangements side by side, volts and amperes kept apart.
import type { Arrangement, NamedSupply, Span } from '../../../engine/index.ts';
import { SCALE_RANGE, STEP_LIMIT, sags, stepFinding, stepSize } from '../../../engine/index.ts';
import type { CrossingRow, Placement } from '../../../wizards/which-supply-where/index.ts';
import { crossingAdvice, crossingRows, forbiddenIn, placeSupplies } from '../../../wizards/which-supply-where/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { CROSSING_TAGS } from '../../words/index.ts';
import type { Tone, WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, Surer, useReckoned, Workings } from '../frame/index.ts';
import { GapMeasured } from './GapMeasured.tsx';

type Props = WorkedOutProps;

export function WhichSupplyAnswer(props: Props) {
  const { answers, say, numbers, fixes, home } = props;
  const placement = useReckoned('place', answers, placeSupplies);
  if (placement === undefined) return <p role="status">{say('reckoning-now')}</p>;
  const fix = fixes[placement.outcome];
  if (fix === undefined) return null;
  const [best] = placement.arrangements;
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
      tonight={placement.outcome === 'two-supplies-alike' ? say('place-tonight-unplug') : undefined}
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

const STOPS: readonly string[] = [
  'wrong-supply',
  'rail-voltage-too-high',
  'regulated-supply',
  'volts-too-low',
  'supply-cannot-trip',
  'lower-trip-level',
];

/** Nothing is placed before this is done. */
const FIRST: readonly string[] = ['two-supplies-alike', 'set-both-outputs-equal'];

function verdictOf({ outcome, because, stillShort }: Placement, say: Say): { tone: Tone; word: string } {
  if (because === 'above-usual') return { tone: 'short', word: say('place-chip-volts') };
  if (STOPS.includes(outcome)) return { tone: 'stop', word: say('place-chip-stop') };
  if (outcome === 'read-both-labels') return { tone: 'open', word: say('place-chip-labels') };
  if (outcome === 'measure-rail-volts-first') return { tone: 'open', word: say('place-chip-measure') };
  if (stillShort) return { tone: 'short', word: say('place-chip-too-little') };
  if (outcome === 'supplies-either-way') return { tone: 'enough', word: say('place-chip-either') };
  return { tone: 'tight', word: say(FIRST.includes(outcome) ? 'place-chip-first' : 'place-chip-matters') };
}

function headlineOf({ outcome, because, unit }: Placement, say: Say): string {
  if (because === 'one-follows' || because === 'above-usual') return say(`place-headline-${because}`);
  return say(`place-headline-${outcome}`, { unit: unit === undefined ? '' : say(`place-${unit.unit}`) });
}

/** What may not be read past, right below the verdict. */
function warningsOf(placement: Placement, say: Say, numbers: Numbers): string[] {
  const { outcome, aboveRange, scale } = placement;
  if (outcome === 'wrong-supply') return mustNotGo(placement, say, numbers);
  if (aboveRange === undefined) return [];
  const values = { volts: numbers.volts(aboveRange.volts), usual: usualVolts(scale, say, numbers) };
  return [say(aboveRange.known ? 'place-rails-above' : 'place-rails-perhaps-above', values)];
}

const usualVolts = (scale: Placement['scale'], say: Say, numbers: Numbers): string =>
  say('place-usual', { from: numbers.plain(SCALE_RANGE[scale].from, 0), to: numbers.volts(SCALE_RANGE[scale].to) });

/** Which supply must not go into which unit, and why. */
function mustNotGo({ arrangements, supplies }: Placement, say: Say, numbers: Numbers): string[] {
  return forbiddenIn(arrangements).flatMap(({ supply, units, because }) => {
    const named = supplies[supply];
    if (named === undefined) return [];
    const [unit] = units;
    const into = units.length === 1 && unit !== undefined ? say(`place-${unit}`) : say('place-either-unit');
    const values = { n: supply + 1, volts: numbers.volts(named.volts), kind: say(`kind-${named.kind}`), unit: into };
    return [`${say('place-forbidden', values)} ${say(`because-not-permitted-${because}`)}`];
  });
}

/** Why it comes to this, where the fix alone would say more than is so. */
function leadOf(
  { outcome, because, unit, railVolts, scale }: Placement,
  say: Say,
  numbers: Numbers,
): string | undefined {
  if (unit !== undefined) {
    return say(`place-lead-${outcome}`, {
      unit: say(`place-${unit.unit}`),
      limit: numbers.amps(unit.limit),
      ceiling: numbers.amps(unit.ceiling),
      above: numbers.amps(unit.ratingAbove),
    });
  }
  if (railVolts !== undefined) {
    const volts = { from: numbers.volts(railVolts.from), to: numbers.volts(railVolts.to) };
    if (because === 'alternating') return say('place-lead-alternating', volts);
    if (because === 'above-usual')
      return say('place-lead-above-usual', { ...volts, usual: usualVolts(scale, say, numbers) });
    return say(because === 'too-low' ? 'place-lead-volts-too-low' : 'place-lead-too-high', volts);
  }
  if (because === undefined || because === 'both-set') return undefined;
  return say(`place-lead-${because}`);
}

/** Only where the rails are level do the amperes, and so the trains, decide. */
const dependsOnTrains = ({ trainsUntold, only, because }: Placement): boolean =>
  trainsUntold && !only && (because === 'enough' || because === 'amperes' || because === 'traffic');

const hasAdvice = (placement: Placement): boolean => adviceFor(placement).advice.length > 0;

/** Beside what it comes to anyway. */
function adviceFor({ crossings: [crossing], supplies, outcome }: Placement) {
  if (crossing === undefined) return { advice: [], withheld: [] };
  const { advice, withheld } = crossingAdvice(crossing, supplies);
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

/** Nothing is the best way before the volts are alike, or measured. */
function bestTitle({ outcome }: Placement): string {
  if (outcome === 'measure-rail-volts-first') return 'place-so-far';
  return outcome === 'two-supplies-alike' || outcome === 'set-both-outputs-equal' ? 'place-not-yet' : 'place-best';
}

function ArrangementCard({ placement, arrangement, supplies, railsKnown, best, say, numbers, home }: CardProps) {
  return (
    <div class="sheet part">
      <h3>{say(best ? bestTitle(placement) : 'place-other')}</h3>
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
                  {say('place-usable', { amps: numbers.ampsExactly(placed.capacity.usable) })}
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
              <details>
                <summary>{say('working-title')}</summary>
                <Workings working={placed.capacity.working} say={say} numbers={numbers} home={home} />
              </details>
            </li>
          );
        })}
      </ul>
      <p>{stepSentence(arrangement, railsKnown, best, { say, numbers })}</p>
      {arrangement.cascade && <p>{say('place-cascade')}</p>}
    </div>
  );
}

function stepSentence(
  arrangement: Arrangement,
  railsKnown: boolean,
  best: boolean,
  { say, numbers }: Pick<Props, 'say' | 'numbers'>,
): string {
  if (!railsKnown) return say('place-step-unknown');
  const { step } = arrangement;
  const finding = stepFinding(step);
  if (finding === 'level') return say('place-step-level', { volts: numbers.volts(STEP_LIMIT) });
  // Better as far as the volts go: where something else counts for more, the other way round is not praised.
  const station = best ? 'place-step-station' : 'place-step-station-other';
  return say(finding === 'booster-higher' ? 'place-step-booster' : station, { volts: numbers.volts(stepSize(step)) });
}
