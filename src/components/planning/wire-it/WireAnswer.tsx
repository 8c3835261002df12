// The answer to "How thick must the wire be?": what reaches the worst spot, whether a short there trips, what mends it, how to prove it.
import { useMemo } from 'preact/hooks';
import type { WiringCandidate } from '../../../engine/index.ts';
import type { NotKnown, Stopped, WireFound, Wiring } from '../../../wizards/wire-it/index.ts';
import { wire } from '../../../wizards/wire-it/index.ts';
import { partsOf, ShortsAlong, VoltsAlong } from '../../figures/shared/index.ts';
import { Steps, Verify } from '../../fix/index.ts';
import { MadeThen, Share } from '../../link/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { Assumed, Workings } from '../frame/index.ts';
import { MeterTable } from '../measuring/index.ts';
import { changeWords } from './change-words.ts';
import { LoadTest } from './LoadTest.tsx';

export function WireAnswer(props: WorkedOutProps) {
  const { answers, say, numbers, fixes, cautions, home, language, release } = props;
  const found = useMemo(() => wire(answers, numbers.system), [answers, numbers]);
  const fix = fixes[found.outcome];
  if (fix === undefined) return null;
  const headline = say(headlineOf(found));
  const lead = leadFor(found, say, numbers);
  return (
    <>
      <section class="part">
        <h1 class="verdict" tabIndex={-1}>
          {headline}
        </h1>
        <MadeThen release={release} verdict={found.outcome} titleOf={(id) => fixes[id]?.title} say={say} />
        <p class="lead">{lead}</p>
        {found.kind === 'wiring' && <Given {...props} wiring={found} />}
      </section>
      {found.kind === 'not-known' && <WhatIsMissing {...props} found={found} />}
      {found.kind === 'wiring' && <Pictures wiring={found} say={say} numbers={numbers} />}
      {found.kind === 'wiring' && <Candidates {...props} wiring={found} />}
      <section class="part">
        <h2>{say('steps-title')}</h2>
        <Steps fix={fix} cautions={cautions} say={say} language={language} />
        <p>
          <a href={`${home}fixes/${found.outcome}/`}>
            {say('full-page')}: {fix.title}
          </a>
        </p>
      </section>
      {found.kind === 'wiring' && <Test {...props} wiring={found} />}
      <Verify fix={fix} say={say} language={language} />
      <Share text={() => `${headline} ${lead}`} say={say} made={{ release, verdict: found.outcome }} />
    </>
  );
}

interface WithWiring {
  readonly wiring: Wiring;
  readonly say: Say;
  readonly numbers: Numbers;
}

function headlineOf(found: WireFound): string {
  if (found.kind === 'not-known') return 'wire-headline-wiring-not-known';
  if (found.kind === 'stopped') return `wire-headline-${found.outcome}`;
  if (found.kind !== 'wiring') return 'wire-headline-nothing-left';
  const bearable = found.outcome === 'wiring-good' && found.now?.verdict === 'bearable';
  return bearable ? 'wire-headline-bearable' : `wire-headline-${found.outcome}`;
}

function leadFor(found: WireFound, say: Say, numbers: Numbers): string {
  if (found.kind === 'wiring') return leadOf(found, say, numbers);
  if (found.kind === 'not-known') return say('wire-lead-not-known');
  if (found.kind === 'stopped') return stoppedLead(found, say, numbers);
  return say(`along-problem-${found.because}`, { part: partsOf(found.parts, say) });
}

function stoppedLead({ outcome, volts, trip, supply }: Stopped, say: Say, numbers: Numbers): string {
  return say(`wire-lead-${outcome}`, {
    volts: numbers.volts(volts),
    trip: numbers.amps(trip),
    most: numbers.amps(supply?.gives.to ?? 0),
    above: numbers.amps(supply?.ratingAbove ?? trip),
  });
}

function WhatIsMissing({
  found,
  say,
  numbers,
  questions,
}: Pick<WorkedOutProps, 'say' | 'numbers' | 'questions'> & { readonly found: NotKnown }) {
  const { missing, enough, volts, trainAmps, trip, tripLevel, assumptions } = found;
  return (
    <section class="part">
      <h2>{say('wire-missing-title')}</h2>
      <ol>
        {missing.map((part) => (
          <li key={part}>{say(`wire-missing-${part}`)}</li>
        ))}
      </ol>
      <h2>{say('wire-enough-title')}</h2>
      <ul>
        {enough.map((one) => (
          <li key={one.track}>{enoughWords(one, say, numbers)}</li>
        ))}
      </ul>
      <p>{say('wire-enough-how')}</p>
      {tripLevel.finding === 'above-ceiling' && (
        <p>{say('wire-enough-trip', { trip: numbers.amps(tripLevel.ceiling) })}</p>
      )}
      <details class="assumed">
        <summary>
          {say('wire-enough-given', {
            volts: numbers.volts(volts),
            amps: numbers.amps(trainAmps),
            trip: numbers.amps(trip),
          })}{' '}
          {assumptions.length === 0 ? say('assumed-none') : say('assumed-count', { n: assumptions.length })}
        </summary>
        <ul>
          <Assumed assumptions={assumptions} questions={questions} say={say} numbers={numbers} />
        </ul>
      </details>
    </section>
  );
}

function enoughWords({ track, way, least, feeder }: NotKnown['enough'][number], say: Say, numbers: Numbers): string {
  const lengths = { track: numbers.metres(track), way: numbers.metres(way) };
  if (least?.change.kind !== 'rewired') return say('wire-enough-none', lengths);
  const { bus, feeders } = least.change;
  if (bus === undefined || feeders === undefined) return say('wire-enough-none', lengths);
  return say(feeders.count === 1 ? 'wire-enough-one' : 'wire-enough', {
    ...lengths,
    wire: numbers.wire(bus.area),
    metres: numbers.metres(feeders.spacing, 'at-most'),
    n: feeders.count,
    feeder: numbers.wire(feeder.area),
    share: numbers.share(least.drop),
  });
}

function leadOf({ now, chosen, trip, outcome, pair }: Wiring, say: Say, numbers: Numbers): string {
  const facts = (one: WiringCandidate) => ({
    volts: numbers.volts(one.volts),
    share: numbers.share(one.drop),
    at: numbers.metres(one.voltsAt),
    amps: numbers.amps(one.shortAmps),
    shortAt: numbers.metres(one.shortAt),
    trip: numbers.amps(trip),
    watts: numbers.watts(one.faultHeat),
  });
  const present = now === undefined ? say('along-problem-no-operating-point') : say('wire-lead-now', facts(now));
  if (chosen === undefined) return `${present} ${say('wire-lead-nothing')}`;
  if (chosen === now) return `${present} ${say(chosen.verdict === 'good' ? 'wire-lead-good' : 'wire-lead-bearable')}`;
  const what = changeWords(chosen.change, pair, say, numbers);
  return `${present} ${say(outcome === 'lower-trip-level' ? 'wire-lead-trip' : 'wire-lead-then', { ...facts(chosen), what })}`;
}

function Given({ wiring, say, numbers, questions }: WithWiring & Pick<WorkedOutProps, 'questions'>) {
  const { plan, wire: bus, way, pair, trainAmps, trip, assumptions } = wiring;
  return (
    <details class="assumed">
      <summary>
        {say(pair ? 'wire-given-pair' : 'wire-given', {
          volts: numbers.volts(plan.source.volts),
          wire: numbers.wire(bus.area),
          length: numbers.metres(way),
          track: numbers.metres(plan.rails.length),
          feeders: plan.feeders.length,
          amps: numbers.amps(trainAmps),
          trip: numbers.amps(trip),
        })}{' '}
        {assumptions.length === 0 ? say('assumed-none') : say('assumed-count', { n: assumptions.length })}
      </summary>
      <ul>
        <Assumed assumptions={assumptions} questions={questions} say={say} numbers={numbers} />
        {pair && <li>{say('wire-assumed-pair')}</li>}
        <li>{say('wire-assumed-stage', { ohms: numbers.ohms(plan.source.ohms) })}</li>
        <li>{say('wire-assumed-rail', { rail: numbers.quantity(plan.rails.ohmsPerMetre, 'resistance-per-metre') })}</li>
      </ul>
    </details>
  );
}

function Pictures({ wiring, say, numbers }: WithWiring) {
  const { plan, train, short, trip, trainAmps, wire: bus } = wiring;
  const shared = {
    length: plan.rails.length,
    feeds: plan.feeders.map(({ at }, index) => ({ at, label: String(index + 1) })),
    say,
    numbers,
  };
  return (
    <section class="part">
      <h2>{say('wire-now-title')}</h2>
      {train !== undefined && (
        <VoltsAlong
          {...shared}
          id="wire-volts"
          caption={say('wire-caption-volts', { amps: numbers.amps(trainAmps), wire: numbers.wire(bus.area) })}
          along={train}
          volts={plan.source.volts}
          spot={train.worst}
        />
      )}
      <ShortsAlong
        {...shared}
        id="wire-amps"
        caption={say('wire-caption-short')}
        along={short}
        trip={trip}
        spot={short.weakest}
        show={(value) => numbers.amps(value)}
      />
    </section>
  );
}

const TAGS = { good: 'enough', bearable: 'tight', fails: 'short' } as const;

function Candidates({ wiring, say, numbers, home }: WithWiring & Pick<WorkedOutProps, 'home'>) {
  const { now, chosen, others, pair, loopLimit, faultHeat } = wiring;
  const candidates = [now, chosen, ...others].filter((one, i, all) => one !== undefined && all.indexOf(one) === i);
  return (
    <section class="part">
      <h2>{say('wire-candidates-title')}</h2>
      <table class="cards">
        <thead>
          <tr>
            <th scope="col">{say('wire-column-change')}</th>
            <th scope="col" class="num">
              {say('wire-column-volts')}
            </th>
            <th scope="col" class="num">
              {say('wire-column-short')}
            </th>
            <th scope="col">{say('verdict-column')}</th>
          </tr>
        </thead>
        <tbody>
          {candidates
            .flatMap((one) => one ?? [])
            .map((one) => (
              <tr key={JSON.stringify(one.change)}>
                <th scope="row">
                  {changeWords(one.change, pair, say, numbers)}
                  {one === chosen && <small> {say('remedy-chosen')}</small>}
                </th>
                <td class="num" data-label={say('wire-column-volts')}>
                  {say('wire-cell', {
                    value: numbers.volts(one.volts),
                    share: numbers.share(one.drop),
                    at: numbers.metres(one.voltsAt),
                  })}
                </td>
                <td class="num" data-label={say('wire-column-short')}>
                  {say('wire-cell-short', { value: numbers.amps(one.shortAmps), at: numbers.metres(one.shortAt) })}
                </td>
                <td data-label={say('verdict-column')}>
                  <span class={`tag ${TAGS[one.verdict]}`}>{say(`wire-verdict-${one.verdict}`)}</span>{' '}
                  {one.fails.map((rule) => say(`wire-rule-${rule}`)).join(', ')}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      <details>
        <summary>{say('working-title')}</summary>
        <p>{say('wire-how')}</p>
        <Workings working={loopLimit} say={say} numbers={numbers} home={home} />
        <Workings working={faultHeat} say={say} numbers={numbers} home={home} />
      </details>
    </section>
  );
}

function Test({ wiring, say, numbers }: WithWiring) {
  const { test, short } = wiring;
  if (test === undefined) return null;
  return (
    <section class="part">
      <h2>{say('wire-test-title')}</h2>
      <p>
        {say('wire-test', {
          ohms: numbers.ohms(test.test.ohms),
          rating: numbers.watts(test.test.rating),
          amps: numbers.amps(test.test.amps),
          seconds: test.test.seconds,
        })}
      </p>
      <ul class="notes">
        <li>{say('wire-test-open', { volts: numbers.volts(test.open) })}</li>
        <li>{say('wire-test-near', { volts: numbers.volts(test.near) })}</li>
        <li>
          {say('wire-test-far', { volts: numbers.volts(test.far), at: numbers.metres(short.weakest.at) })}{' '}
          {say('wire-test-least', { volts: numbers.volts(test.test.leastVolts) })}
        </li>
      </ul>
      <p class="small">{say('wire-test-meter')}</p>
      <details>
        <summary>{say('wire-meters-title')}</summary>
        <MeterTable
          columns={[say('wire-meters-open'), say('wire-meters-near'), say('wire-meters-far')]}
          rows={test.meters.map(({ meter, open, near, far }) => ({ meter, readings: [open, near, far] }))}
          say={say}
          numbers={numbers}
        />
      </details>
      <LoadTest ohms={test.test.ohms} trip={wiring.trip} say={say} numbers={numbers} />
    </section>
  );
}
