// The answer to "Where do I divide the layout?": where both rails are cut, what each part then draws, and the steps in order.
import { useEffect, useState } from 'preact/hooks';
import type { Answers, QuestionId } from '../../../wizards/planning/index.ts';
import type { GapPlace, PlacedWay, ShareFound } from '../../../wizards/share-out/index.ts';
import { LABELS_FIRST } from '../../../wizards/share-out/index.ts';
import { Missing } from '../../shared/index.ts';
import type { FixWords, Numbers, Say } from '../../words/index.ts';
import { listed } from '../../words/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, Assumed, assumedLines, Surer, useReckoned } from '../frame/index.ts';
import { Drawn } from './Drawn.tsx';
import { shareHere, takenHere } from './here.ts';
import { givesSaid, headlineOf, unitName, verdictOf, warningsOf } from './sharing-texts.ts';
import { WhatIf } from './WhatIf.tsx';

interface ShareOutAnswerProps extends WorkedOutProps {
  /** The address of the styles of the diagram. */
  readonly diagramStyles: string;
}

export function ShareOutAnswer(props: ShareOutAnswerProps) {
  const [tries, setTries] = useState(0);
  return <Attempt key={tries} {...props} onAgain={() => setTries(tries + 1)} />;
}

interface AttemptProps extends ShareOutAnswerProps {
  readonly onAgain: () => void;
}

function Attempt({ onAgain, ...props }: AttemptProps) {
  const { answers, say } = props;
  const [failed, setFailed] = useState(false);
  const here = (given: Answers): Promise<ShareFound> => shareHere(given, () => setFailed(true));
  const found = useReckoned('share', answers, here);
  if (found === undefined) return failed ? <Missing say={say} again={onAgain} /> : <Reckoning say={say} />;
  if (found.outcome === 'power-is-enough') return <NoTrains {...props} found={found} />;
  const [way] = found.ways;
  return way === undefined ? <Undivided {...props} found={found} /> : <Divided {...props} found={found} way={way} />;
}

/** So long nobody waits without a word, milliseconds. Source: own-choice. */
const LATE_MS = 8000;

/** Says after a while what takes so long, and what to do if nothing comes. */
function Reckoning({ say }: { readonly say: Say }) {
  const [late, setLate] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), LATE_MS);
    return () => clearTimeout(timer);
  }, []);
  return <p role="status">{say(late ? 'share-late' : 'reckoning-now')}</p>;
}

interface WithFound extends ShareOutAnswerProps {
  readonly found: ShareFound;
}

interface WithWay extends WithFound {
  readonly way: PlacedWay;
}

const shared = ({ found, ...props }: WithFound) => ({
  ...props,
  outcome: found.outcome,
  verdict: verdictOf(found, props.say),
  headline: headlineOf(found, props.say),
  assumed: assumedLines({ ...props, assumptions: found.assumptions }),
  surer: <Surer {...props} items={props.left.map((question) => ({ question, could: could(question, props.say) }))} />,
  into: async (...[open, told]: Parameters<typeof takenHere>) => withPartNames(await takenHere(open, told), props.say),
});

/** No division of the shape carries the trains, or something has to be put right before any gap. */
function Undivided(props: WithFound) {
  const { found, say, fixes } = props;
  return (
    <AnswerPage
      {...shared(props)}
      only={found.stop !== undefined}
      saidAbove={true}
      lead={leadWithout(found, fixes[found.outcome], say)}
    />
  );
}

function Divided(props: WithWay) {
  const { found, way, say } = props;
  const steps = stepsOf(found, way, props);
  const [, ...others] = found.ways;
  return (
    <AnswerPage
      {...shared(props)}
      lead={leadOf(way, props)}
      warnings={warningsOf(found, say, props.numbers)}
      because={fitsAbove(way) ? <Gaps way={way} say={say} /> : undefined}
      several={steps === undefined ? undefined : { fixes: [found.outcome], fix: steps }}
      doubts={doubtsOf(found, say)}
      facts={factsOf(way, props)}
      fits={<Drawn found={found} styles={props.diagramStyles} say={say} />}
      figure={<Parts {...props} />}
      others={others.length === 0 ? undefined : <Others {...props} ways={others} best={way} />}
      trial={<WhatIf {...props} />}
      numbers={<Sections {...props} />}
    />
  );
}

/** There is nothing to divide for until somebody counts the trains. */
function NoTrains({ found, say, onAsk }: WithFound) {
  const { tone, word } = verdictOf(found, say);
  return (
    <section class="part answer" id="answer">
      <p>
        <span class={`tag ${tone}`}>{word}</span>
      </p>
      <h1 class="verdict" tabIndex={-1}>
        {headlineOf(found, say)}
      </h1>
      <p class="acts">
        <button class="button" type="button" onClick={() => onAsk('fleet')}>
          {say('share-count')}
        </button>
      </p>
    </section>
  );
}

type Taken = Awaited<ReturnType<typeof takenHere>>;

/** The sections of a shape, by the names that the answer has called them; a sheet without a name is called by its shape. */
const withPartNames = ({ sheet, ...taken }: Taken, say: Say): Taken => ({
  ...taken,
  sheet: {
    ...sheet,
    name: sheet.name === '' ? say(`share-sheet-${taken.shape}`) : sheet.name,
    sections: sheet.sections.map((one) => ({ ...one, name: say(`part-${one.id}`) })),
  },
});

const LABELS: readonly QuestionId[] = ['station-label', 'booster-label', 'supply-one', 'supply-two'];
const could = (question: QuestionId, say: Say): string =>
  say(LABELS.includes(question) ? 'share-could-stop' : 'share-could-shift');

function leadWithout({ districts, outcome }: ShareFound, fix: FixWords | undefined, say: Say): string {
  if (outcome === 'more-districts' && districts !== undefined) return say('share-lead-more', { n: districts });
  return fix?.lead ?? '';
}

function leadOf({ asked }: PlacedWay, { say, numbers }: WorkedOutProps): string {
  const [station, booster] = asked.map(({ share }) => numbers.share(share));
  return say('share-lead', { station: station ?? '', booster: booster ?? '' });
}

const doubtsOf = ({ enoughAlone, exchanged }: ShareFound, say: Say): string[] => [
  ...(enoughAlone ? [say('share-enough-alone')] : []),
  ...(exchanged ? [say('share-exchanged')] : []),
];

/** So many places stand right below the verdict; more would push the first act off the screen of a phone. */
const MOST_ABOVE = 3;
const fitsAbove = ({ gaps }: PlacedWay): boolean => gaps.length <= MOST_ABOVE;

function gapWords({ from, to, end }: GapPlace, say: Say): string {
  const gap = say('share-gap', { from: say(`part-${from}`), to: say(`part-${to}`) });
  return end === undefined ? gap : say(`share-gap-end-${end}`, { gap });
}

function Gaps({ way, say }: { readonly way: PlacedWay; readonly say: Say }) {
  return (
    <ol>
      {way.gaps.map((gap) => (
        <li key={gapWords(gap, say)}>{gapWords(gap, say)}</li>
      ))}
    </ol>
  );
}

/** What each part holds, draws and can have. */
function Parts({ way, found, ...props }: WithWay) {
  const { say, numbers } = props;
  return (
    <div class="part">
      {!fitsAbove(way) && (
        <>
          <h2 class="h3">{say('share-places')}</h2>
          <Gaps way={way} say={say} />
        </>
      )}
      <table class="cards">
        <thead>
          <tr>
            <th scope="col">{say('share-part')}</th>
            {['share', 'draws', 'gives'].map((id) => (
              <th key={id} scope="col" class="num">
                {say(`share-${id}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {way.asked.map((asked, at) => (
            <tr key={asked.stage}>
              <th scope="row">{unitName(at, say)}</th>
              {partCells(asked, say, numbers).map(([id, text]) => (
                <td key={id} class="num" data-label={say(`share-${id}`)}>
                  {text}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {doubtsOf(found, say).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <ul class="small">
        <Assumed {...props} assumptions={found.assumptions} />
      </ul>
    </div>
  );
}

/** Which stretches belong to which part. */
function Sections({ way, say, ...props }: Omit<WithWay, 'found'>) {
  return (
    <ul>
      {way.districts.map(({ stage, sections }, at) => (
        <li key={stage}>
          {say('share-holds', {
            part: unitName(at, say),
            sections: listed(
              sections.map((section) => say(`part-${section}`)),
              props.language,
            ),
          })}
        </li>
      ))}
    </ul>
  );
}

const partCells = (asked: PlacedWay['asked'][number], say: Say, numbers: Numbers) =>
  [
    ['share', numbers.share(asked.share)],
    ['draws', numbers.amps(asked.often)],
    ['gives', givesSaid(asked, say, numbers)],
  ] as const;

const factsOf = (way: PlacedWay, { say, numbers }: WorkedOutProps): string[] => [
  ...way.gaps.map((gap) => gapWords(gap, say)),
  ...way.asked.map((asked, at) =>
    say('share-fact', {
      part: unitName(at, say),
      share: numbers.share(asked.share),
      draws: numbers.amps(asked.often),
      gives: givesSaid(asked, say, numbers),
    }),
  ),
];

interface OthersProps extends WorkedOutProps {
  readonly ways: readonly PlacedWay[];
  readonly best: PlacedWay;
}

/** More gaps and more even use, or fewer and less even. */
function Others({ ways, best, say, numbers }: OthersProps) {
  const isFewer = ({ gaps }: PlacedWay): boolean => gaps.length < best.gaps.length;
  return (
    <ul>
      {ways.map((way) => (
        <li key={way.gaps.map(({ from, to }) => `${from} ${to}`).join()}>
          <details>
            <summary>
              {say(isFewer(way) ? 'share-other-fewer' : 'share-other', {
                n: way.gaps.length,
                shares: way.asked.map(({ share }) => numbers.share(share)).join(' / '),
              })}
            </summary>
            <Gaps way={way} say={say} />
          </details>
        </li>
      ))}
    </ul>
  );
}

/** Where the fix gaps, and where it connects the booster. */
const GAP = 2;
const CONNECT = 4;

/** The steps of the fix with the places of the gaps; what is not read comes first. */
function stepsOf(found: ShareFound, way: PlacedWay, props: WorkedOutProps): FixWords | undefined {
  const { say, fixes, home, language } = props;
  const [fix, labels] = [fixes[found.outcome], fixes[LABELS_FIRST]];
  if (fix === undefined) return undefined;
  const gaps = listed(
    way.gaps.map((gap) => gapWords(gap, say)),
    language,
  );
  const steps = fix.steps.map((step, at) => {
    if (at === GAP) return { ...step, do: say('share-step-gaps', { gaps }) };
    return at === CONNECT && found.exchanged ? { ...step, more: say('share-exchanged') } : step;
  });
  if (found.labelsRead || labels === undefined) return { ...fix, steps };
  const read = {
    do: labels.lead,
    cautions: [...new Set(labels.steps.flatMap(({ cautions }) => cautions))],
    job: { title: labels.short, href: `${home}fixes/${LABELS_FIRST}/` },
  };
  return { ...fix, steps: [read, ...steps] };
}
