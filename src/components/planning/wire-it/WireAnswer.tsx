// The answer to "How thick must the wire be?": what reaches the worst spot, whether a short there trips, what mends it, how to prove it.
import type { SupplyTrip, WiringCandidate } from '../../../engine/index.ts';
import { byMoneyThenTime, isAboveUsual, ROUNDING_VOLTS, SCALE_RANGE } from '../../../engine/index.ts';
import type { QuestionId } from '../../../wizards/planning/index.ts';
import type { Missing, NotKnown, Stopped, Untold, WireFound, Wiring } from '../../../wizards/wire-it/index.ts';
import { inOrderOfWork, isTripSure, partsOf, shortDrawn, wire } from '../../../wizards/wire-it/index.ts';
import { partsOf as blamed, ShortsAlong, VoltsAlong } from '../../figures/shared/index.ts';
import { Caution, together } from '../../fix/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { joined } from '../../words/index.ts';
import type { Tone, WorkedOutProps } from '../frame/index.ts';
import {
  AnswerPage,
  Assumed,
  assumedLines,
  costWords,
  outOfReachSaid,
  Surer,
  useReckoned,
  Workings,
} from '../frame/index.ts';
import { MeterTable } from '../measuring/index.ts';
import { changeWords } from './change-words.ts';
import { LoadTest } from './LoadTest.tsx';

export function WireAnswer(props: WorkedOutProps) {
  const { answers, say, numbers } = props;
  const { wires: system } = numbers;
  const found = useReckoned('wire', answers, (of) => wire(of, system), { system });
  if (found === undefined) return <p role="status">{say('wire-reckoning')}</p>;
  return <Found {...props} found={found} />;
}

function Found({ found, ...props }: WorkedOutProps & { readonly found: WireFound }) {
  const { say, numbers } = props;
  const page = {
    ...props,
    outcome: found.outcome,
    verdict: chipOf(found, say),
    headline: headlineOf(found, say, props.language),
    lead: leadFor(found, say, numbers),
    numbers: undefined,
  };
  // What the input of the unit asks for is not asked here.
  if (found.kind === 'stopped')
    return <AnswerPage {...page} only={true} readFirst={found.buys ? 'input' : undefined} />;
  if (found.kind === 'not-known') {
    const missing = <WhatIsMissing {...props} found={found} />;
    const { uncounted } = found;
    return (
      <AnswerPage
        {...page}
        several={toFindOut(found, props)}
        warnings={uncounted === undefined ? reachSaid(found, say, numbers) : warningsOf(uncounted, say, numbers)}
        tonight={say('wire-tonight-watch')}
        {...(uncounted === undefined
          ? {}
          : {
              decides: <Tell {...props} id="feeder-count" />,
              surer: <MakeSurer {...props} wiring={uncounted} />,
            })}
        figure={missing}
        doubts={missingLines(found, say, numbers)}
        assumed={assumedFor(found, props)}
      />
    );
  }
  if (found.kind === 'no-solution') return <AnswerPage {...page} />;
  const wiring = found;
  return (
    <AnswerPage
      {...page}
      readFirst={isUnit(wiring.chosen) ? 'input' : undefined}
      several={severalOf(wiring, props)}
      warnings={warningsOf(wiring, say, numbers)}
      tonight={tonightOf(wiring, say, numbers)}
      toDo={toDoOf(wiring, say, numbers)}
      saidAbove={wiring.outcome === 'wiring-good'}
      price={priceOf(wiring.chosen, say, numbers)}
      fits={afterwardsLines(wiring, say, numbers).map((line) => <p key={line}>{line}</p>)}
      decides={<Decides {...props} wiring={wiring} />}
      figure={<Pictures wiring={wiring} say={say} numbers={numbers} />}
      others={wiring.others.length === 0 ? undefined : <Others wiring={wiring} say={say} numbers={numbers} />}
      surer={<MakeSurer {...props} wiring={wiring} />}
      proof={<Test {...props} wiring={wiring} />}
      numbers={<Figures {...props} wiring={wiring} />}
      doubts={[...afterwardsLines(wiring, say, numbers), ...decidesLines(wiring, say)]}
      facts={[givenWords(wiring, say, numbers)]}
      assumed={[...assumedFor(wiring, props), ...takenLines(wiring, say, numbers)]}
    />
  );
}

function chipOf(found: WireFound, say: Say): { readonly tone: Tone; readonly word: string } {
  const chip = (tone: Tone, word: string) => ({ tone, word: say(`wire-chip-${word}`) });
  if (found.kind === 'stopped') return chip('stop', 'stop');
  if (found.kind === 'not-known') return chip('open', 'open');
  if (found.kind !== 'wiring' || found.now === undefined || found.now.verdict === 'fails')
    return chip('short', 'fails');
  if (found.outcome === 'lower-trip-level') return chip('short', 'fails');
  if (isHigh(found)) return chip('short', 'volts');
  if (found.supply?.kind !== 'surely' || found.sure.kind === 'depends') return chip('open', 'depends');
  return found.now.verdict === 'good' ? chip('enough', 'good') : chip('tight', 'bearable');
}

/** So many changes are named in the headline; of more it says how many. */
const MOST_NAMED = 2;

function headlineOf(found: WireFound, say: Say, language: string): string {
  if (found.kind === 'not-known')
    return say(found.uncounted === undefined ? 'wire-headline-wiring-not-known' : 'wire-headline-uncounted');
  if (found.kind === 'stopped') return say(`wire-headline-${found.outcome}`);
  if (found.kind !== 'wiring') return say('wire-headline-nothing-left');
  const { outcome, supply, sure, now } = found;
  if (outcome === 'wiring-good') {
    if (isHigh(found)) return say('wire-headline-volts-above');
    if (supply?.kind !== 'surely') return say('wire-headline-supply-unread');
    if (sure.kind === 'depends') return say('wire-headline-depends');
    return say(now?.verdict === 'bearable' ? 'wire-headline-bearable' : 'wire-headline-wiring-good');
  }
  return changeHeadline(found, say, language);
}

/** What the wiring needs, part by part; or what makes it good where it will do. */
function changeHeadline(wiring: Wiring, say: Say, language: string): string {
  const named = partsNamed(wiring, say);
  const what = { what: joined(named, language), n: named.length };
  if (isBettered(wiring) && named.length > 0) return say('wire-headline-better', what);
  if (named.length < 2) return say(`wire-headline-${wiring.outcome}`);
  return say(named.length > MOST_NAMED ? 'wire-headline-many' : 'wire-headline-several', what);
}

/** It will do as it is, and what is told makes it good. */
const isBettered = ({ now, chosen }: Wiring): boolean => now?.verdict === 'bearable' && chosen?.verdict === 'good';

/** The parts of what is changed, each by its name. Where there is one pair only, its feeders bring the bus. */
function partsNamed({ chosen, pair }: Wiring, say: Say): string[] {
  const parts = chosen?.change.kind === 'rewired' ? partsOf(chosen.change, pair) : [];
  const laysBus = pair && parts.includes('more-feeders');
  const named = laysBus ? parts.filter((part) => part !== 'thicker-bus') : parts;
  return named.map((part) =>
    say(laysBus && part === 'more-feeders' && named[0] === part ? 'wire-part-pair-feeders' : `wire-part-${part}`),
  );
}

function leadFor(found: WireFound, say: Say, numbers: Numbers): string {
  if (found.kind === 'wiring') return leadOf(found, say, numbers);
  if (found.kind === 'not-known' && found.uncounted !== undefined)
    return `${presentOf(found.uncounted, say, numbers)} ${say('wire-lead-uncounted', { n: found.uncounted.plan.feeders.length })}`;
  if (found.kind === 'not-known')
    return say(isUntold(found) ? 'wire-lead-not-known-trip' : 'wire-lead-not-known', {
      trip: numbers.amps(found.trip),
    });
  if (found.kind === 'stopped') return stoppedLead(found, say, numbers);
  return say(`along-problem-${found.because}`, { part: blamed(found.parts, say) });
}

/** What each step of finding out tells; the first is for all of them. */
const FOUND_BY: readonly (Missing | undefined)[] = [undefined, 'wire', 'wire', 'way', 'track', 'feeders'];

/** Only the steps that find what is missing. */
function toFindOut({ missing, outcome }: NotKnown, { fixes }: Pick<WorkedOutProps, 'fixes'>) {
  const fix = fixes[outcome];
  if (fix === undefined) return;
  const steps = fix.steps.filter((_, at) => {
    const part = FOUND_BY[at];
    return part === undefined || missing.includes(part);
  });
  return { fixes: [outcome], fix: { ...fix, steps } };
}

/** What there is to buy rests on a trip current or a supply that nobody has read. */
const isUntold = ({ missing }: NotKnown): boolean => missing.includes('trip') || missing.includes('supply');

const isHigh = ({ plan, scale }: Wiring): boolean => isAboveUsual(plan.source.volts, scale);

const reachSaid = ({ outOfReach }: Wiring | NotKnown, say: Say, numbers: Numbers): string[] =>
  outOfReach === undefined ? [] : [outOfReachSaid(outOfReach, say, numbers)];

/** What no wire mends: volts that the supply does not reach, volts above what is usual, and a supply that may not trip its unit, or whose label nobody has read. */
function warningsOf(wiring: Wiring, say: Say, numbers: Numbers): string[] {
  const { plan, scale, supply } = wiring;
  const { volts } = plan.source;
  const { from, to } = SCALE_RANGE[scale];
  const usual = { volts: numbers.volts(volts), from: numbers.plain(from, 0), to: numbers.volts(to) };
  return [
    ...reachSaid(wiring, say, numbers),
    ...(volts > to + ROUNDING_VOLTS ? [say('wire-volts-above', usual)] : []),
    ...(supply === undefined ? [say('wire-supply-unread')] : []),
    ...(supply?.kind === 'perhaps' ? [say('wire-supply-perhaps')] : []),
  ];
}

/** All that a change of several parts takes, each step once and in the order of the work; undefined where it is but one. */
function severalOf({ chosen, pair }: Wiring, { fixes, say, numbers }: WorkedOutProps) {
  if (chosen?.change.kind !== 'rewired') return;
  const parts = partsOf(chosen.change, pair);
  if (parts.length < 2) return;
  const order = inOrderOfWork(parts, pair);
  const fix = together(
    order.flatMap((part) => fixes[part] ?? []),
    {
      title: say('wire-together-title'),
      effort: costWords(chosen.cost, say, numbers),
      next: say('wire-together-next'),
    },
  );
  return fix === undefined ? undefined : { fixes: parts, fix };
}

/** Faults of the wires or of the setting with which a short may not switch off. */
const MAY_NOT_TRIP = ['trip-above-scale', 'short-circuit', 'feeder-heat', 'bus-heat'] as const;

function tonightOf({ now, tonight, supply }: Wiring, say: Say, numbers: Numbers): string | undefined {
  if (now === undefined) return say('wire-tonight-nothing');
  const weak = MAY_NOT_TRIP.some((rule) => now.fails.includes(rule));
  const told = [
    ...(tonight === undefined ? [] : [say('wire-tonight-amps', { amps: numbers.amps(tonight, 'at-most') })]),
    ...(weak ? [say(tonight === undefined ? 'wire-tonight-watch' : 'wire-tonight-also')] : []),
    // Why is said above already.
    ...(!weak && supply?.kind === 'perhaps'
      ? [say(tonight === undefined ? 'wire-tonight-beside' : 'wire-tonight-also-beside')]
      : []),
  ];
  return told.length === 0 ? undefined : told.join(' ');
}

function toDoOf(wiring: Wiring, say: Say, numbers: Numbers): string | undefined {
  const { chosen, pair, outcome } = wiring;
  if (outcome === 'wiring-good' || chosen === undefined) return undefined;
  return say(isBettered(wiring) ? 'wire-to-do-better' : 'wire-to-do', {
    what: changeWords(chosen.change, pair, say, numbers),
  });
}

function priceOf(one: WiringCandidate | undefined, say: Say, numbers: Numbers): string | undefined {
  return one === undefined || one.change.kind === 'as-it-is' ? undefined : costWords(one.cost, say, numbers);
}

/** Which question tells it, of those beyond the quick answer. */
const TOLD_BY: Partial<Readonly<Record<Untold, QuestionId>>> = {
  'bus-shape': 'bus-shape',
  'bus-way': 'bus-shape',
  'feeder-count': 'feeders',
  'feeder-wire': 'feeders',
  'rail-kind': 'rail-kind',
  joints: 'rail-kind',
};

function Decides({ wiring, say, onAsk }: WithWiring & Pick<WorkedOutProps, 'onAsk'>) {
  const { kind, on } = wiring.sure;
  const [first] = on;
  return kind !== 'depends' || first === undefined ? null : <Tell id={first} say={say} onAsk={onAsk} />;
}

function Tell({ id, say, onAsk }: Pick<WorkedOutProps, 'say' | 'onAsk'> & { readonly id: Untold }) {
  const question = TOLD_BY[id];
  return (
    <p>
      <b>{say('wire-decides')}</b> {say(`wire-untold-${id}`)}{' '}
      {question !== undefined && (
        <button class="button quiet" type="button" onClick={() => onAsk(question)}>
          {say('wire-tell')}
        </button>
      )}
    </p>
  );
}

function decidesLines({ sure }: Wiring, say: Say): string[] {
  const [first] = sure.on;
  return sure.kind === 'depends' && first !== undefined
    ? [`${say('wire-decides')} ${say(`wire-untold-${first}`)}`]
    : [];
}

function MakeSurer({ wiring, ...props }: WorkedOutProps & { readonly wiring: Wiring }) {
  const { left, say } = props;
  const could = new Set(wiring.sure.on.flatMap((id) => TOLD_BY[id] ?? []));
  const asked = left.filter((id) => !wiring.pair || id === 'rail-kind');
  const items = [...asked.filter((id) => could.has(id)), ...asked.filter((id) => !could.has(id))].map((question) => ({
    question,
    could: say(could.has(question) ? 'wire-could-turn' : 'wire-could-sharpen'),
  }));
  return <Surer {...props} items={items} />;
}

const isRing = (one: WiringCandidate | undefined): boolean =>
  one?.change.kind === 'rewired' && one.change.ring === true;

/** Wire laid anew that needs no bus that comes round again. */
const isStraight = (one: WiringCandidate): boolean => one.change.kind === 'rewired' && !isRing(one);

/** A second unit, whose input nobody has read here. */
const isUnit = (one: WiringCandidate | undefined): boolean => one?.change.kind === 'second-stage';

function Others({ wiring, say, numbers }: WithWiring) {
  const { chosen, others } = wiring;
  return (
    <>
      {others.some(isUnit) && !isUnit(chosen) && <p class="small">{say('read-first-input')}</p>}
      <ul class="plain-list">
        {wiring.others.map((one) => (
          <li key={JSON.stringify(one.change)}>
            {changeWords(one.change, wiring.pair, say, numbers)}{' '}
            <span class="price small">{priceOf(one, say, numbers)}</span>{' '}
            <Tag one={one} supply={wiring.supply} say={say} />
          </li>
        ))}
      </ul>
    </>
  );
}

interface WithWiring {
  readonly wiring: Wiring;
  readonly say: Say;
  readonly numbers: Numbers;
}

function stoppedLead({ outcome, volts, outOfReach, trip, supply }: Stopped, say: Say, numbers: Numbers): string {
  if (outcome === 'volts-too-low' && outOfReach !== undefined)
    return say('wire-lead-out-of-reach', {
      set: numbers.volts(outOfReach.set),
      high: numbers.volts(outOfReach.highest),
    });
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
      {isUntold(found) && <p>{say('wire-enough-untold', { trip: numbers.amps(trip) })}</p>}
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

/** What is missing and what would surely do until it is told, for the copy as text. */
function missingLines(found: NotKnown, say: Say, numbers: Numbers): string[] {
  const { missing, enough, trip } = found;
  return [
    `${say('wire-missing-title')}: ${missing.map((part) => say(`wire-missing-${part}`)).join(' ')}`,
    `${say('wire-enough-title')}:`,
    ...enough.map((one) => enoughWords(one, say, numbers)),
    say('wire-enough-how'),
    ...(isUntold(found) ? [say('wire-enough-untold', { trip: numbers.amps(trip) })] : []),
  ];
}

const assumedFor = (
  { assumptions }: Pick<NotKnown, 'assumptions'>,
  { questions, say, numbers }: Pick<WorkedOutProps, 'questions' | 'say' | 'numbers'>,
): string[] => assumedLines({ assumptions, questions, say, numbers });

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

const presentOf = ({ now, ...wiring }: Wiring, say: Say, numbers: Numbers): string =>
  now === undefined
    ? say('along-problem-no-operating-point')
    : say('wire-lead-now', factsOf(wiring, say, numbers)(now));

function leadOf(wiring: Wiring, say: Say, numbers: Numbers): string {
  const { now, chosen, others, supply } = wiring;
  const present = presentOf(wiring, say, numbers);
  if (chosen === undefined) return `${present} ${say('wire-lead-nothing')}`;
  if (chosen !== now) return present;
  const noticed = supply?.kind === 'surely' ? ` ${say('wire-lead-noticed')}` : '';
  if (chosen.verdict === 'good') return `${present}${noticed}`;
  const better = others.some(({ verdict }) => verdict === 'good') ? 'wire-lead-bearable-better' : 'wire-lead-bearable';
  return `${present}${noticed} ${say(better)}`;
}

/** What the one thing to do brings, and what else there is where it asks for a bus that comes round again. */
function afterwardsLines(wiring: Wiring, say: Say, numbers: Numbers): string[] {
  const { now, chosen, outcome, supply, others } = wiring;
  const ring = isRing(chosen) && others.some(isStraight) ? [say('wire-ring-else')] : [];
  if (chosen === undefined || chosen === now) return ring;
  const sentence = say(
    outcome === 'lower-trip-level' ? 'wire-lead-trip' : 'wire-lead-then',
    factsOf(wiring, say, numbers)(chosen),
  );
  const unsure = supply?.kind === 'perhaps' && !isTripSure(chosen, supply);
  return [unsure ? `${sentence} ${say('wire-then-supply')}` : sentence, ...ring];
}

/** A supply is known to give a band only. */
function drawnWords(one: WiringCandidate, supply: SupplyTrip | undefined, say: Say, numbers: Numbers): string {
  const { from, to } = shortDrawn(one, supply);
  const [least, most] = [numbers.amps(from), numbers.amps(to)];
  return least === most ? least : say('wire-drawn', { least, most });
}

const factsOf =
  ({ trip, plan, supply }: Pick<Wiring, 'trip' | 'plan' | 'supply'>, say: Say, numbers: Numbers) =>
  (one: WiringCandidate) => ({
    volts: numbers.volts(one.volts),
    source: numbers.volts(plan.source.volts),
    share: numbers.share(one.drop),
    at: numbers.metres(one.voltsAt),
    amps: drawnWords(one, supply, say, numbers),
    shortAt: numbers.metres(one.shortAt),
    trip: numbers.amps(trip),
  });

function givenWords(wiring: Wiring, say: Say, numbers: Numbers): string {
  const { plan, wire: bus, way, pair, trainAmps, trip, assumptions } = wiring;
  const read = !assumptions.some(({ field }) => field === 'wire-trip');
  return say(pair ? 'wire-given-pair' : 'wire-given', {
    volts: numbers.volts(plan.source.volts),
    wire: numbers.wire(bus.area),
    length: numbers.metres(way),
    track: numbers.metres(plan.rails.length),
    feeders: plan.feeders.length,
    amps: numbers.amps(trainAmps),
    trip: read ? numbers.amps(trip) : say('wire-trip-not-read', { trip: numbers.amps(trip) }),
  });
}

/** What unit and rails were taken as. */
function takenLines({ plan, pair }: Wiring, say: Say, numbers: Numbers): string[] {
  return [
    ...(pair ? [say('wire-assumed-pair')] : []),
    say('wire-assumed-stage', { ohms: numbers.ohms(plan.source.ohms) }),
    say('wire-assumed-rail', { rail: numbers.quantity(plan.rails.ohmsPerMetre, 'resistance-per-metre') }),
  ];
}

function Given({ wiring, say, numbers, questions }: WithWiring & Pick<WorkedOutProps, 'questions'>) {
  const { assumptions } = wiring;
  return (
    <details class="assumed">
      <summary>
        {givenWords(wiring, say, numbers)}{' '}
        {assumptions.length === 0 ? say('assumed-none') : say('assumed-count', { n: assumptions.length })}
      </summary>
      <ul>
        <Assumed assumptions={assumptions} questions={questions} say={say} numbers={numbers} />
        {takenLines(wiring, say, numbers).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}

/** Whether the picture that is shown first is that of a short: what may not switch off comes before what runs slow. */
const showsShort = ({ now }: Wiring): boolean => now?.fails.includes('short-circuit') === true;

/** The picture of what fails: what a short draws, or volts at a train. The other stands with the numbers. */
function Pictures(props: WithWiring) {
  return (
    <section class="part">
      <h2 class="h3">{props.say('wire-now-title')}</h2>
      {showsShort(props.wiring) ? <Shorts {...props} /> : <Volts {...props} />}
    </section>
  );
}

const onTrack = ({ plan, feedersTold }: Wiring) => ({
  length: plan.rails.length,
  feeds: plan.feeders.map(({ at }, index) => ({
    at,
    label: feedersTold ? String(index + 1) : '?',
    assumed: !feedersTold,
  })),
});

/** What stands below a picture; that its feeders are assumed, where nobody has counted them. */
const captioned = (caption: string, { feedersTold }: Wiring, say: Say): string =>
  feedersTold ? caption : `${caption} ${say('wire-caption-assumed')}`;

function Volts({ wiring, say, numbers }: WithWiring) {
  const { plan, train, trainAmps, wire: bus } = wiring;
  if (train === undefined) return null;
  return (
    <VoltsAlong
      {...onTrack(wiring)}
      id="wire-volts"
      caption={captioned(
        say('wire-caption-volts', { amps: numbers.amps(trainAmps), wire: numbers.wire(bus.area) }),
        wiring,
        say,
      )}
      along={train}
      volts={plan.source.volts}
      spot={train.worst}
      say={say}
      numbers={numbers}
    />
  );
}

function Shorts({ wiring, say, numbers }: WithWiring) {
  const { short, trip } = wiring;
  return (
    <ShortsAlong
      {...onTrack(wiring)}
      id="wire-amps"
      caption={captioned(say('wire-caption-short'), wiring, say)}
      along={short}
      trip={trip}
      spot={short.weakest}
      show={(value) => numbers.amps(value)}
      say={say}
      numbers={numbers}
    />
  );
}

/** What wires alone bring is not called good while the supply may give way before the unit trips. */
function Tag({
  one,
  supply,
  say,
}: {
  readonly one: WiringCandidate;
  readonly supply: SupplyTrip | undefined;
  readonly say: Say;
}) {
  if (one.verdict === 'fails' || isTripSure(one, supply))
    return <span class={`tag ${TAGS[one.verdict]}`}>{say(`wire-verdict-${one.verdict}`)}</span>;
  return <span class="tag tight">{say(`wire-verdict-${one.verdict}-unsure`)}</span>;
}

const TAGS = { good: 'enough', bearable: 'tight', fails: 'short' } as const;

function Figures(props: WorkedOutProps & { readonly wiring: Wiring }) {
  const { wiring, say, numbers, home } = props;
  const { now, chosen, others, pair, plan, supply, loopLimit, faultHeat } = wiring;
  const candidates = [now, chosen, ...others]
    .flatMap((one, i, all) => (one === undefined || all.indexOf(one) !== i ? [] : [one]))
    .sort((a, b) => byMoneyThenTime(a.cost, b.cost));
  return (
    <section class="part">
      <Given {...props} />
      {showsShort(wiring) ? <Volts {...props} /> : <Shorts {...props} />}
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
          {candidates.map((one) => (
            <tr key={JSON.stringify(one.change)}>
              <th scope="row">
                {changeWords(one.change, pair, say, numbers)}
                {one === chosen && <small> {say('remedy-chosen')}</small>}
              </th>
              <td class="num" data-label={say('wire-column-volts')}>
                {say('wire-cell', {
                  value: numbers.volts(one.volts),
                  source: numbers.volts(plan.source.volts),
                  share: numbers.share(one.drop),
                  at: numbers.metres(one.voltsAt),
                })}
              </td>
              <td class="num" data-label={say('wire-column-short')}>
                {say('wire-cell-short', {
                  value: drawnWords(one, supply, say, numbers),
                  at: numbers.metres(one.shortAt),
                })}
              </td>
              <td data-label={say('verdict-column')}>
                <Tag one={one} supply={supply} say={say} />{' '}
                {one.fails.map((rule) => say(`wire-rule-${rule}`)).join(', ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{say('wire-how')}</p>
      <Workings working={loopLimit} say={say} numbers={numbers} home={home} />
      <Workings working={faultHeat} say={say} numbers={numbers} home={home} />
    </section>
  );
}

/** What can hurt while the resistor is across the rails and a meter is clipped to them. */
const TEST_CAUTIONS = ['resistor-hot', 'meter-sockets'] as const;

function Test({
  wiring,
  say,
  numbers,
  cautions,
  language,
}: WithWiring & Pick<WorkedOutProps, 'cautions' | 'language'>) {
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
      <div>
        {TEST_CAUTIONS.map((id) => {
          const words = cautions[id];
          return words !== undefined && <Caution key={id} words={words} form="line" say={say} language={language} />;
        })}
      </div>
      <ul class="notes">
        <li>{say('wire-test-open', { volts: numbers.volts(test.open) })}</li>
        <li>{say('wire-test-near', { volts: numbers.volts(test.near) })}</li>
        <li>
          {say('wire-test-far', { volts: numbers.volts(test.far), at: numbers.metres(short.weakest.at) })}{' '}
          {say('wire-test-least', { volts: numbers.volts(test.test.leastVolts, 'at-least') })}
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
