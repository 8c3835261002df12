// The answer for a layout that is divided already: district by district, and what helps the one nearest to its limit.
import type { DistrictAdvice, DistrictFinding, DividedLayout } from '../../../engine/index.ts';
import { districtsAlike } from '../../../engine/index.ts';
import {
  type Conclusion,
  type Divided,
  isDone,
  type Planned,
  type Reckoning,
} from '../../../wizards/enough-current/index.ts';
import type { FixWords, Numbers, Say } from '../../words/index.ts';
import { listed } from '../../words/index.ts';
import type { Free, Tone, WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, costWords, Surer, Workings } from '../frame/index.ts';
import { quietFirst, type ToDo, testedFirst, testThen, tonightOf } from './answer-texts.ts';
import { Assumptions, assumptionLines, Rules } from './Details.tsx';

interface Props extends WorkedOutProps {
  readonly reckoning: Reckoning;
  readonly conclusion: Conclusion;
  readonly divided: Divided;
}

export function DividedAnswer({ reckoning, conclusion, divided, ...props }: Props) {
  const { say, numbers, answers } = props;
  const { layout } = divided;
  const texts = textsOf(divided, props);
  const told = quietFirst(props.fixes[conclusion.outcome], divided.onceQuiet, props);
  const proved = provedFirst(divided, conclusion, told, props);
  const several = proved ?? told;
  const doubts = doubtsOf(divided, conclusion, say, numbers);
  return (
    <AnswerPage
      {...props}
      outcome={conclusion.outcome}
      verdict={verdictOf(divided, conclusion, say)}
      several={several === undefined ? undefined : { fixes: [conclusion.outcome], fix: several }}
      {...toDoOf(divided, conclusion, props, proved !== undefined)}
      warnings={warningsHere(divided, { ...props, reckoning, conclusion })}
      free={freeHere(divided, say)}
      tonight={tonightHere(divided, { ...props, reckoning, conclusion })}
      readFirst={conclusion.readFirst === undefined ? undefined : 'new'}
      numbers={layout === undefined ? undefined : <DistrictNumbers {...props} {...{ reckoning, divided, layout }} />}
      headline={texts.headline}
      lead={otherPlan(divided) === undefined ? texts.lead : say('plan-too-small-lead')}
      doubts={doubts}
      assumed={assumptionLines({ ...props, reckoning })}
      {...(doubts.length === 0
        ? {}
        : {
            fits: doubts.map((doubt) => <p key={doubt}>{doubt}</p>),
          })}
      {...(layout === undefined
        ? {}
        : { figure: <Districts divided={divided} layout={layout} say={say} numbers={numbers} /> })}
      {...(otherPlan(divided) === undefined
        ? {}
        : { others: <LargerPlan divided={divided} say={say} numbers={numbers} /> })}
      surer={
        <Surer
          items={props.left.map((question) => ({ question, could: say(`could-${question}`) }))}
          answers={answers}
          questions={props.questions}
          say={say}
          onAsk={props.onAsk}
        />
      }
      facts={
        layout === undefined
          ? []
          : [
              ...layout.districts.map((one, at) => factOf(one, divided.letters[at] ?? '', say, numbers)),
              ...keptAs(divided, say),
            ]
      }
    />
  );
}

type Speaks = Pick<Props, 'fixes' | 'say' | 'numbers'>;

/** What of it is only planned, what has to be tested, and what it depends on. */
function doubtsOf(divided: Divided, { kind }: Conclusion, say: Say, numbers: Numbers): string[] {
  return [
    ...(divided.planned === undefined ? [] : [planText(divided, divided.planned, say, numbers)]),
    ...(divided.planned === undefined || divided.layout === undefined
      ? []
      : brokenIn(divided, divided.layout, say, numbers)),
    ...(kind === 'depends' ? [dependsOn(divided, say, numbers)] : []),
  ];
}

/** Which rule the district of a plan nearest to its limit breaks: the busy moments alone may stay below what there is. */
function brokenIn({ letters }: Divided, { districts, worst }: DividedLayout, say: Say, numbers: Numbers): string[] {
  const near = districts[worst];
  if (near?.judgement.verdict !== 'short') return [];
  const { aboveUsable, aboveHard } = near.judgement;
  return [
    say('divided-too-often', {
      worst: letters[worst] ?? '',
      usable: numbers.amps(near.capacity.usable),
      above: numbers.share(aboveUsable),
      hard: numbers.amps(near.capacity.hard),
      'hard-share': numbers.share(aboveHard),
    }),
  ];
}

/** Traffic is told in tenths. Source: own-choice. */
const TEN = 10;

/** What nobody has told, where that alone leaves it open; else the traffic and the draws. */
function dependsOn({ layout, letters, untold }: Divided, say: Say, numbers: Numbers): string {
  if (untold !== undefined && layout?.kind === 'surely') return say(`decides-${untold}`);
  const worst = letters[layout?.worst ?? 0] ?? '';
  if (layout?.verdict !== 'short') return say('divided-depends', { worst });
  const most = layout.districts[layout.worst]?.mostOfTen ?? 0;
  // With less there the others have more, and they must bear it.
  const shared = layout.districts.reduce((sum, { mostOfTen }) => sum + mostOfTen, 0);
  return most > 0 && shared >= TEN
    ? say('divided-depends-short', { worst, most: numbers.plain(most, 1) })
    : say('divided-depends-draws');
}

/** A short there may not switch off: that is tested before anything else is done. */
function provedFirst(
  { toProve, planned }: Divided,
  { outcome }: Conclusion,
  fix: FixWords | undefined,
  { fixes, say, language }: Speaks & Pick<Props, 'language'>,
): FixWords | undefined {
  if (fix === undefined || toProve.length === 0 || BEFORE.has(outcome)) return;
  const there = say('step-prove-districts', { districts: listed(toProve, language) });
  return testedFirst(
    fix,
    fixes,
    isFirstOfPlan({ toProve, planned }) ? say('step-prove-trip') : `${there} ${say('step-prove-trip')}`,
  );
}

/** Of a plan only the first district is there. */
const isFirstOfPlan = ({ toProve, planned }: Pick<Divided, 'toProve' | 'planned'>): boolean =>
  planned !== undefined && toProve.length === 1 && toProve[0] === 'A';

/** A supply that may be too small to trip its unit, in this district or in those. */
function warningsHere(divided: Divided, { conclusion, say, language }: Parameters<typeof tonightOf>[0]): string[] {
  const { toProve } = divided;
  if (toProve.length === 0 || BEFORE.has(conclusion.outcome)) return [];
  // Of a plan only the first is there, and tonight says to stay beside it.
  if (isFirstOfPlan(divided)) return [];
  return [say('trip-perhaps-districts', { districts: listed(toProve, language) })];
}

const freeHere = ({ onceQuiet, planned }: Divided, say: Say): Free[] =>
  onceQuiet === undefined
    ? []
    : [{ what: say(`free-${onceQuiet}`), brings: say(planned === undefined ? 'then-divided' : 'then-plan') }];

const BEFORE: ReadonlySet<string> = new Set(['supply-cannot-trip', 'lower-trip-level', 'read-both-labels']);

function tonightHere({ planned, toProve }: Divided, found: Parameters<typeof tonightOf>[0]): string | undefined {
  if (planned !== undefined) return tonightOf(found);
  return toProve.length === 0 ? undefined : found.say('tonight-beside');
}

/** A plan in which every district has enough is what to do; else what helps. */
function toDoOf(divided: Divided, conclusion: Conclusion, speaks: Speaks, testFirst: boolean): ToDo {
  const then = remedyToDo(divided, conclusion, speaks);
  return testFirst ? testThen(then, { ...speaks, conclusion }) : then;
}

function remedyToDo(
  { planned, layout, letters, onceQuiet }: Divided,
  { outcome }: Conclusion,
  { fixes, say, numbers }: Speaks,
): ToDo {
  const does = (layout !== undefined && isDone(layout.advice.kind)) || onceQuiet !== undefined;
  const told = does && planned !== undefined ? { ...planned, districts: letters.length } : planned?.larger;
  if (planned === undefined || told === undefined) return { toDo: fixes[outcome]?.short ?? '' };
  return { toDo: boostersOf(planned, told, say, numbers), price: costWords(told.cost, say, numbers) };
}

/** So many districts of a plan beyond the first, by what each takes. */
function boostersOf(
  { limit, buyAmps }: Planned,
  { districts, boosters }: Pick<NonNullable<Planned['larger']>, 'districts' | 'boosters'>,
  say: Say,
  numbers: Numbers,
): string {
  const values = { count: districts - 1, limit: numbers.amps(limit), amps: numbers.amps(buyAmps) };
  const many = districts === 2 ? 'plan-to-do-one' : 'plan-to-do-many';
  return say(boosters === 0 ? 'plan-to-do-there' : many, values);
}

/** The plan that would do without what is free, where that comes first. */
const otherPlan = ({ planned, onceQuiet }: Divided): Planned['larger'] =>
  onceQuiet === undefined ? undefined : planned?.larger;

function LargerPlan({ divided, say, numbers }: Pick<TableProps, 'divided' | 'say' | 'numbers'>) {
  const [larger, { planned }] = [otherPlan(divided), divided];
  if (larger === undefined || planned === undefined) return null;
  const what = boostersOf(planned, larger, say, numbers);
  return (
    <p>
      {say('plan-larger', { count: larger.districts, what })}{' '}
      <span class="price">{costWords(larger.cost, say, numbers)}</span>
    </p>
  );
}

/** What of the plan is there, what was taken, and whether it is wanted for the trains at all. */
function planText({ letters, layout, evenly }: Divided, planned: Planned, say: Say, numbers: Numbers): string {
  const { limit, amps, buyAmps, unitTold, supplyTold, spare, fewer } = planned;
  const values = { count: letters.length - 1, limit: numbers.amps(limit), amps: numbers.amps(amps) };
  const parts: readonly (readonly [string, boolean])[] = [
    [say('plan-only', values), true],
    [say('plan-supply-larger', { ...values, larger: numbers.amps(buyAmps) }), buyAmps !== amps],
    [say('plan-like-a'), !(unitTold && supplyTold)],
    [say('plan-busiest'), !evenly],
    [say('plan-spare'), spare && layout?.advice.kind === 'nothing'],
    [fewer === undefined ? '' : say('plan-fewer', { count: fewer }), fewer !== undefined],
  ];
  return parts.flatMap(([text, told]) => (told ? [text] : [])).join(' ');
}

function verdictOf(
  { layout, above }: Divided,
  { kind }: Conclusion,
  say: Say,
): { readonly tone: Tone; readonly word: string } {
  if (above.length > 0) return { tone: 'short', word: say('verdict-of-lower-trip-level') };
  if (layout === undefined) return { tone: 'open', word: say('verdict-unknown') };
  const { verdict, advice } = layout;
  if (advice.kind === 'cannot-trip') return { tone: 'short', word: say('verdict-of-supply-cannot-trip') };
  // It has too little, and what is not known could only lift that.
  if (kind === 'depends' && verdict === 'short') return { tone: 'short', word: say('verdict-short') };
  if (kind === 'depends') return { tone: 'open', word: say('verdict-depends') };
  return { tone: verdict, word: say(verdict === 'tight' ? 'verdict-tight' : `verdict-surely-${verdict}`) };
}

interface Texts {
  readonly headline: string;
  readonly lead: string;
}

interface Speaking {
  readonly say: Say;
  readonly numbers: Numbers;
  readonly language: string;
}

function textsOf(divided: Divided, speaking: Speaking): Texts {
  const { layout, planned } = divided;
  const { headline, lead } =
    layout === undefined ? beforeTheTrains(divided, speaking) : ofLayout(divided, layout, speaking);
  // What is free comes before what divides it further.
  if (planned !== undefined && divided.onceQuiet !== undefined)
    return { headline: speaking.say(`plan-${divided.onceQuiet}-headline`), lead };
  // What a plan that will do says names it already.
  const named = planned === undefined || layout?.advice.kind === 'nothing';
  return { headline: named ? headline : speaking.say('plan-headline', { headline }), lead };
}

function beforeTheTrains({ letters, unread, above, bears }: Divided, { say, numbers, language }: Speaking): Texts {
  if (above.length > 0) {
    const values = { districts: listed(above, language), below: numbers.amps(bears) };
    return { headline: say('divided-above-headline', values), lead: say('divided-above-lead', values) };
  }
  const places = letters.filter((letter) => unread.some((id) => id.endsWith(`-${letter.toLowerCase()}`)));
  const districts = listed(places, language);
  return { headline: say('divided-unread-headline'), lead: say('divided-unread-lead', { districts }) };
}

function ofLayout({ letters, planned }: Divided, layout: DividedLayout, { say, numbers, language }: Speaking): Texts {
  const { advice, districts, worst } = layout;
  const near = districts[worst];
  const values = {
    n: districts.length,
    worst: letters[worst] ?? '',
    often: numbers.amps(near?.often ?? 0),
    usable: numbers.amps(near?.capacity.usable ?? 0),
    ...adviceValues(advice, letters, numbers, language),
  };
  const isPlan = planned !== undefined;
  if (advice.kind === 'share-out') {
    const lead = say(isPlan ? 'plan-share-out-lead' : 'lead-lopsided-split', values);
    return { headline: say('divided-share-out-headline', values), lead };
  }
  // What may move until then is told for tonight.
  if (isPlan && advice.kind === 'another')
    return { headline: say('divided-another-headline', values), lead: say('plan-another-lead', values) };
  const words = isPlan && advice.kind === 'nothing' ? 'plan' : 'divided';
  return {
    headline: say(`${words}-${advice.kind}-headline`, values),
    lead: say(`${words}-${advice.kind}-${leadWanted(layout)}`, values),
  };
}

/** Which lead an advice has: the one of districts in which even what only stands is too much, or whose trains have too little besides. */
function leadWanted({ advice, verdict }: DividedLayout): 'none' | 'short' | 'lead' {
  if ('moving' in advice && advice.moving === undefined) return 'none';
  return advice.kind === 'cannot-trip' && verdict === 'short' ? 'short' : 'lead';
}

function adviceValues(advice: DistrictAdvice, letters: readonly string[], numbers: Numbers, language: string) {
  const shares = advice.kind === 'share-out' ? advice.ofTen : [];
  const failing = advice.kind === 'cannot-trip' ? advice.districts : [];
  return {
    limit: numbers.amps(advice.kind === 'larger-supply' ? advice.amps : 0),
    moving: 'moving' in advice ? (advice.moving ?? 0) : 0,
    count: advice.kind === 'another' ? advice.districts : 0,
    districts: listed(
      failing.map((at) => letters[at] ?? ''),
      language,
    ),
    shares: listed(
      shares.map((count, at) => `${letters[at]} ${numbers.plain(count, 1)}`),
      language,
    ),
  };
}

interface TableProps {
  readonly divided: Divided;
  readonly layout: DividedLayout;
  readonly say: Say;
  readonly numbers: Numbers;
}

function Districts({ divided, layout, say, numbers }: TableProps) {
  return (
    <section class="part">
      <h2 class="h3">{say('divided-title')}</h2>
      <table class="cards">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {say(column)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {runsOf(layout).map(({ one, first, last }) => (
            <tr key={first}>
              <th scope="row">{runName(divided.letters, first, last, say)}</th>
              <td data-label={say('divided-share')}>{numbers.plain(one.ofTen, 1)}</td>
              <td data-label={say('divided-often')}>{numbers.amps(one.often)}</td>
              <td data-label={say('divided-usable')}>{numbers.amps(one.capacity.usable)}</td>
              <td data-label={say('divided-short')}>{say(`divided-trips-${one.trip.kind}`)}</td>
              <td data-label={say('divided-verdict')}>
                <span class={`tag ${one.judgement.verdict}`}>{say(`verdict-${one.judgement.verdict}`)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">{keptAs(divided, say).join(' ')}</p>
    </section>
  );
}

/** Neighbours in the list that are alike in everything that is told of them. */
interface Run {
  readonly one: DistrictFinding;
  readonly first: number;
  readonly last: number;
}

function runsOf({ districts }: DividedLayout): Run[] {
  const runs: Run[] = [];
  for (const [at, one] of districts.entries()) {
    const before = runs.at(-1);
    if (before !== undefined && districtsAlike(before.one, one)) runs.splice(-1, 1, { ...before, last: at });
    else runs.push({ one, first: at, last: at });
  }
  return runs;
}

function runName(letters: readonly string[], first: number, last: number, say: Say): string {
  const [one, other] = [letters[first] ?? '', letters[last] ?? ''];
  return first === last ? one : say('divided-alike', { first: one, last: other });
}

/** The rules district by district, and how what each can give came about. */
function DistrictNumbers({
  divided,
  layout,
  ...props
}: WorkedOutProps & { readonly reckoning: Reckoning; readonly divided: Divided; readonly layout: DividedLayout }) {
  const { say, numbers, home } = props;
  return (
    <section class="part">
      <Assumptions {...props} />
      {runsOf(layout).map(({ one, first, last }) => {
        const values = { letter: divided.letters[first] ?? '', first: divided.letters[first] ?? '' };
        const name = first === last ? 'divided-numbers' : 'divided-numbers-alike';
        return (
          <section key={first}>
            <h2 class="h3">{say(name, { ...values, last: divided.letters[last] ?? '' })}</h2>
            <Rules {...{ say, numbers, home }} judgement={one.judgement} capacity={one.capacity} />
            <details>
              <summary>{say('number-usable')}</summary>
              <Workings working={one.capacity.working} say={say} numbers={numbers} home={home} />
            </details>
          </section>
        );
      })}
    </section>
  );
}

/** What was taken of the districts. */
const keptAs = ({ evenly, planned }: Divided, say: Say): string[] => [
  ...(evenly ? [say(planned?.busiestTold === true ? 'divided-evenly-told' : 'divided-evenly')] : []),
  say('divided-kept-kind'),
];

const COLUMNS = [
  'divided-district',
  'divided-share',
  'divided-often',
  'divided-usable',
  'divided-short',
  'divided-verdict',
] as const;

/** One line for the copy as text. */
const factOf = (one: DistrictFinding, letter: string, say: Say, numbers: Numbers): string =>
  `${say('divided-district')} ${letter}: ${numbers.amps(one.often)} / ${numbers.amps(one.capacity.usable)}, ${say(`verdict-${one.judgement.verdict}`)}; ${say('divided-short')}: ${say(`divided-trips-${one.trip.kind}`)}`;
