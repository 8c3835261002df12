// The answer to "Is my power enough?": what each place of the page of an answer says.
import type { Conclusion, Deciding, Likely, Reckoning } from '../../../wizards/enough-current/index.ts';
import { concluded, helpful, howLikely, surerOf } from '../../../wizards/enough-current/index.ts';
import { Histogram } from '../../figures/shared/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, costWords, Surer, useReckoned } from '../frame/index.ts';
import {
  fitsOf,
  freeOf,
  headlineOf,
  leadOf,
  levelsOf,
  remedyName,
  severalOf,
  toDoOf,
  tonightOf,
  trainsLine,
  verdictOf,
  warningsOf,
} from './answer-texts.ts';
import { assumptionLines, Details, leastInput } from './Details.tsx';
import { DividedAnswer } from './DividedAnswer.tsx';
import { WhatIf } from './WhatIf.tsx';

type Props = WorkedOutProps;

interface Found extends Props {
  readonly reckoning: Reckoning;
  readonly conclusion: Conclusion;
}

export function EnoughAnswer(props: Props) {
  const { answers, say } = props;
  const worked = useReckoned('conclude', answers, concluded);
  if (worked === undefined) return <p role="status">{say('reckoning-now')}</p>;
  const { reckoning, conclusion } = worked;
  const { outcome, kind, deciding } = conclusion;
  const found: Found = { ...props, reckoning, conclusion };
  if (conclusion.divided !== undefined)
    return <DividedAnswer {...props} reckoning={reckoning} conclusion={conclusion} divided={conclusion.divided} />;
  const headline = headlineOf(found);
  // Where nothing stands on the track there is nothing to help.
  const others = reckoning.trains === 0 ? [] : helpful(conclusion);
  const { power } = reckoning;
  // What was asked is answered beside what comes before it.
  const beside =
    power !== undefined && kind !== 'labels-first' && TRAINS_BESIDE.has(outcome) && power.rails.tooHigh === 'no'
      ? trainsLine(reckoning, power, say)
      : undefined;
  return (
    <AnswerPage
      {...props}
      outcome={outcome}
      several={severalOf(found)}
      verdict={verdictOf(found)}
      headline={headline}
      lead={leadOf(found)}
      only={kind === 'stop'}
      warnings={warningsOf(found)}
      tonight={tonightOf(found)}
      doubts={doubtsOf(found, beside)}
      assumed={assumptionLines(found)}
      {...toDoOf(found)}
      free={freeOf(found)}
      saidAbove={SAID_ABOVE.has(outcome) || headline === props.fixes[outcome]?.title}
      readFirst={buysToDo(conclusion) ? conclusion.readFirst : undefined}
      {...(beside === undefined && conclusion.mayMove === undefined
        ? {}
        : { fits: <Fits {...found} beside={beside} /> })}
      {...(deciding === undefined ? {} : { decides: <Decides {...found} deciding={deciding} /> })}
      {...(power === undefined && reckoning.trainsAssumed ? {} : { figure: <Draw {...found} /> })}
      {...(others.length === 0 ? {} : { others: <Others {...found} /> })}
      {...(props.left.length === 0 ? {} : { surer: <SurerFirst {...props} /> })}
      trial={<WhatIf {...props} reckoning={reckoning} />}
      numbers={<Details {...found} />}
      facts={factsOf(found)}
    />
  );
}

/** Whether the one thing to do is to get something; what else would help may be that as well. */
const buysToDo = ({ chosen, toBuy }: Conclusion): boolean => toBuy !== undefined || (chosen?.ratings.length ?? 0) > 0;

/** Their headlines say what the titles of their fixes would. */
const SAID_ABOVE: ReadonlySet<string> = new Set([
  'power-is-enough',
  'read-both-labels',
  'supply-cannot-trip',
  'lower-trip-level',
]);

const TRAINS_BESIDE: ReadonlySet<string> = new Set(['supply-cannot-trip', 'lower-trip-level', 'rail-voltage-too-high']);

/** The verdict on the trains where something comes before it, and how many fit. */
const fitsBeside = (found: Found, beside: string | undefined): string[] => [
  ...(beside === undefined ? [] : [beside]),
  ...fitsOf(found),
];

function doubtsOf(found: Found, beside: string | undefined): string[] {
  const { deciding } = found.conclusion;
  return [...fitsBeside(found, beside), ...(deciding === undefined ? [] : [decidesText(deciding, found.say)])];
}

function Fits({ beside, ...found }: Found & { readonly beside: string | undefined }) {
  const told = fitsBeside(found, beside);
  return told.length === 0 ? null : <p>{told.join(' ')}</p>;
}

/** What is left to tell, the one that is likeliest to change something first; in the order of the chart until that is worked out. */
function SurerFirst({ answers, left, questions, say, onAsk }: Props) {
  const found = useReckoned('surer', answers, (of) => surerOf(of, left), { left });
  const order = found ?? left.map((question) => ({ question, chance: 0 }));
  const could = ({ question, chance }: Likely): string => {
    const how = howLikely(chance);
    return how === 'hardly' ? say(`could-${question}`) : `${say(`could-${question}`)} ${say(HOW_LIKELY[how])}`;
  };
  return (
    <Surer
      items={order.map((one) => ({ question: one.question, could: could(one) }))}
      answers={answers}
      questions={questions}
      say={say}
      onAsk={onAsk}
    />
  );
}

const HOW_LIKELY = { likely: 'could-likely', perhaps: 'could-perhaps', seldom: 'could-seldom' } as const;

const decidesText = ({ unknown, holdsTo }: Deciding, say: Found['say']): string =>
  [say(`decides-${unknown}`), ...(holdsTo === undefined ? [] : [say('decides-holds', { n: holdsTo })])].join(' ');

/** The assumption that decides; what settles it is one tap away. */
function Decides({ deciding, answers, say, onTell }: Found & { readonly deciding: Deciding }) {
  const { unknown, choices } = deciding;
  return (
    <div class="decides">
      <h2 class="h3">{say('decides-title')}</h2>
      <p>{decidesText(deciding, say)}</p>
      {choices.length > 0 && (
        <p class="acts">
          {choices.map((choice) => (
            <button
              key={choice.id}
              class="button quiet"
              type="button"
              onClick={() => onTell({ ...answers, ...choice.answers })}
            >
              {say(`decides-${unknown}-${choice.id}`)}: {say(`verdict-${choice.verdict}`)}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}

function Draw(found: Found) {
  const { reckoning, say, numbers } = found;
  const { fleet, trains, trainsAssumed, bars } = reckoning;
  const levels = levelsOf(reckoning);
  const values = { trains, moving: fleet.moving };
  const caption = say(levels === undefined ? 'figure-caption-plain' : 'figure-caption', values);
  const assumed = trainsAssumed ? `${say('figure-assumed', values)} ` : '';
  return (
    <div class="part">
      <Histogram
        id="draw"
        bars={bars}
        usable={levels?.usable}
        hard={levels?.hard}
        title={`${assumed}${say('figure-title')}`}
        caption={`${assumed}${caption}`}
        say={say}
        numbers={numbers}
      />
      <Notes {...found} />
    </div>
  );
}

function Notes(found: Omit<Found, 'conclusion'>) {
  const { reckoning, say, numbers } = found;
  const { power } = reckoning;
  if (power === undefined) return null;
  const { rails, coldLamps } = power;
  return (
    <ul class="notes">
      {rails.slowAtBest &&
        [say('rails-slow-at-best', { volts: numbers.volts(rails.highest) }), ...leastInput(found)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      {rails.known && rails.finding !== 'in-range' && rails.finding !== 'above-range' && (
        <li>{say(`rails-${rails.finding}`, { volts: numbers.volts(rails.volts) })}</li>
      )}
      {coldLamps !== undefined && (
        <li>{say('cold-lamps', { least: numbers.amps(coldLamps.from), most: numbers.amps(coldLamps.to) })}</li>
      )}
    </ul>
  );
}

/** The other remedies, one line each. */
function Others({ conclusion, home, ...found }: Found) {
  const { say, numbers } = found;
  const others = helpful(conclusion);
  return (
    <>
      {conclusion.toBuy !== undefined && <p class="small">{say('others-on-it')}</p>}
      {conclusion.readFirst !== undefined && !buysToDo(conclusion) && (
        <p class="small">{say(`read-first-${conclusion.readFirst}`)}</p>
      )}
      <ul class="others">
        {others.map((remedy) => (
          <li key={`${remedy.id} ${remedy.usable.length}`}>
            <a href={`${home}fixes/${remedy.id}/`}>{remedyName(remedy, found)}</a>{' '}
            <span class="price">{costWords(remedy.cost, say, numbers)}</span>{' '}
            <span class={`tag ${remedy.verdict}`}>{say(`verdict-${remedy.verdict}`)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Numbers that go with the answer when it is copied as text. */
function factsOf({ reckoning, say, numbers }: Found): string[] {
  const { summary } = reckoning;
  const levels = levelsOf(reckoning);
  const line = (key: string, amps: number): string => `${say(key)}: ${numbers.ampsExactly(amps)}`;
  const given = levels === undefined ? [] : [line('number-usable', levels.usable), line('number-hard', levels.hard)];
  return [line('number-mean', summary.mean), line('number-p95', summary.p95), ...given];
}
