// The answer to "Where do I divide the layout?": where both rails are cut, what each part then draws, and the steps in order.
import { useEffect, useState } from 'preact/hooks';
import type { Answers, QuestionId } from '../../../wizards/planning/index.ts';
import type { GapPlace, PlacedWay, ShareFound } from '../../../wizards/share-out/index.ts';
import { BREAKERS, LABELS_FIRST, LOOP_DEVICE } from '../../../wizards/share-out/index.ts';
import { Missing } from '../../shared/index.ts';
import type { FixWords, Numbers, Say } from '../../words/index.ts';
import { listed } from '../../words/index.ts';
import type { WorkedOutProps } from '../frame/index.ts';
import { AnswerPage, Assumed, assumedLines, Surer, useReckoned } from '../frame/index.ts';
import { Drawn } from './Drawn.tsx';
import { shareHere, takenHere } from './here.ts';
import {
  givesHow,
  givesSaid,
  headlineOf,
  mayNotTripSaid,
  needsNone,
  unitName,
  verdictOf,
  warningsOf,
} from './sharing-texts.ts';
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
  const mayNotTrip = mayNotTripSaid(found, say, props.numbers);
  const [, ...ways] = found.ways;
  const others = ways.length === 0 ? undefined : <Others {...props} ways={ways} best={way} />;
  // Where nothing has to be divided, other ways to do it help nobody.
  const folded = needsNone(found);
  return (
    <AnswerPage
      {...shared(props)}
      lead={leadOf(way, props)}
      warnings={warningsOf(found, say, props.numbers)}
      because={fitsAbove(way) ? <Places {...props} /> : undefined}
      several={steps === undefined ? undefined : { fixes: fixesIn(found), fix: steps }}
      toDo={needsNone(found) ? say('share-to-do-alone') : undefined}
      doubts={[...mayNotTrip, ...doubtsOf(found, say)]}
      facts={factsOf(props)}
      fits={
        <>
          {mayNotTrip.map((line) => (
            <p key={line} class="warning">
              {line}
            </p>
          ))}
          <Drawn found={found} styles={props.diagramStyles} say={say} />
        </>
      }
      decides={<WhatFor {...props} />}
      figure={<Parts {...props} />}
      others={folded ? undefined : others}
      trial={<WhatIf {...props} />}
      numbers={
        <>
          <Sections {...props} />
          {folded && others}
        </>
      }
    />
  );
}

const fixesIn = ({ outcome, loops }: ShareFound): string[] => [outcome, ...(loops > 0 ? [LOOP_DEVICE] : [])];

/** What somebody may divide it for: power, or that one short does not stop everyone, which breakers do as well. */
function WhatFor({ found, answers, say, home, onTell }: WithFound) {
  const { alone, outcome, wantsShorts } = found;
  const toAim = (option: string): void => onTell({ ...answers, aim: { kind: 'choice', option } });
  if (alone === undefined || (wantsShorts && outcome !== BREAKERS)) {
    return (
      <p class="small">
        {say('share-shorts-beside')} <a href={`${home}fixes/${BREAKERS}/`}>{say('share-shorts-page')}</a>
      </p>
    );
  }
  const isBehind = outcome === BREAKERS;
  return (
    <div class="decides">
      <p>{say(isBehind ? 'share-for-power' : 'share-for-shorts')}</p>
      <p class="acts">
        <button class="button quiet" type="button" onClick={() => toAim(isBehind ? 'enough' : 'shorts')}>
          {say(isBehind ? 'share-for-power-take' : 'share-for-shorts-take')}
        </button>
      </p>
    </div>
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
function could(question: QuestionId, say: Say): string {
  if (question === 'aim') return say('share-could-aim');
  return say(LABELS.includes(question) ? 'share-could-stop' : 'share-could-shift');
}

function leadWithout({ districts, outcome, fewer }: ShareFound, fix: FixWords | undefined, say: Say): string {
  if (fewer !== undefined) return say('share-lead-fewer', fewer);
  if (outcome === 'more-districts' && districts !== undefined) return say('share-lead-more', { n: districts });
  return fix?.lead ?? '';
}

function leadOf({ asked }: PlacedWay, { found, say, numbers }: WithWay): string {
  const { alone, outcome, districts } = found;
  if (alone !== undefined) {
    const told = { often: numbers.amps(alone.often), usable: numbers.amps(alone.usable, 'at-most') };
    return say(outcome === BREAKERS ? 'share-lead-breakers' : 'share-lead-alone', told);
  }
  if (outcome === 'more-districts') return say('share-lead-more', { n: districts ?? asked.length });
  const [station, booster] = asked.map(({ share }) => numbers.share(share));
  return say('share-lead', { station: station ?? '', booster: booster ?? '' });
}

const doubtsOf = ({ exchanged, wantsShorts, alone }: ShareFound, say: Say): string[] => [
  ...(wantsShorts && alone === undefined ? [say('share-shorts-no-power')] : []),
  ...(exchanged ? [say('share-exchanged')] : []),
];

/** So many places stand right below the verdict; more would push the first act off the screen of a phone. */
const MOST_ABOVE = 3;
const fitsAbove = ({ gaps }: PlacedWay): boolean => gaps.length <= MOST_ABOVE;

function gapWords({ from, to, end }: GapPlace, say: Say): string {
  const gap = say('share-gap', { from: say(`part-${from}`), to: say(`part-${to}`) });
  return end === undefined ? gap : say(`share-gap-end-${end}`, { gap });
}

interface GapsProps {
  readonly gaps: readonly GapPlace[];
  readonly say: Say;
}

function Gaps({ gaps, say }: GapsProps) {
  return (
    <ol>
      {gaps.map((gap) => (
        <li key={gapWords(gap, say)}>{gapWords(gap, say)}</li>
      ))}
    </ol>
  );
}

/** Where nothing has to be divided, the places are those of whoever divides all the same. */
function Places({ way: { gaps }, found, say }: WithWay) {
  return (
    <>
      {needsNone(found) && say('share-places-alone', { n: gaps.length })}
      <Gaps gaps={gaps} say={say} />
    </>
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
          <Gaps gaps={way.gaps} say={say} />
        </>
      )}
      {found.loopGaps.length > 0 && (
        <>
          <h2 class="h3">{say('share-loop-places', { loops: found.loops })}</h2>
          <Gaps gaps={found.loopGaps} say={say} />
        </>
      )}
      {found.loops > 0 && <p>{say('share-loop-device', { loops: found.loops })}</p>}
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
              <th scope="row">{unitName(at, found, say)}</th>
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

/** Which stretches belong to which part, and where what a unit can give comes from. */
function Sections({ way, found, say, ...props }: WithWay) {
  return (
    <ul>
      {way.districts.map(({ stage, sections }, at) => (
        <li key={stage}>
          {say('share-holds', {
            part: unitName(at, found, say),
            sections: listed(
              sections.map((section) => say(`part-${section}`)),
              props.language,
            ),
          })}
        </li>
      ))}
      {givesHow(found, say, props.numbers).map((line) => (
        <li key={line}>{line}</li>
      ))}
      {found.units.some(({ limitAssumed }) => limitAssumed) && <li>{say('share-limit-tell')}</li>}
    </ul>
  );
}

const partCells = (asked: PlacedWay['asked'][number], say: Say, numbers: Numbers) =>
  [
    ['share', numbers.share(asked.share)],
    ['draws', numbers.amps(asked.often)],
    ['gives', givesSaid(asked, say, numbers)],
  ] as const;

const factsOf = ({ way, found, say, numbers }: WithWay): string[] => [
  ...[...way.gaps, ...found.loopGaps].map((gap) => gapWords(gap, say)),
  ...way.asked.map((asked, at) =>
    say('share-fact', {
      part: unitName(at, found, say),
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
            <Gaps gaps={way.gaps} say={say} />
          </details>
        </li>
      ))}
    </ul>
  );
}

/** Of each fix: the step that gaps, the one after which a loop gets its device, and the one that connects the booster. */
const STEPS = {
  'divide-the-track': { gap: 2, loop: 4, connect: 4, says: 'share-step-gaps' },
  [BREAKERS]: { gap: 2, loop: 3, connect: undefined, says: 'share-step-breakers' },
  'more-districts': { gap: 0, loop: 2, connect: undefined, says: 'share-step-parts' },
} as const;
const hasSteps = (outcome: string): outcome is keyof typeof STEPS => Object.hasOwn(STEPS, outcome);

/** The steps of the fix with the places of the gaps and what a loop needs; what is not read comes first. */
function stepsOf(found: ShareFound, way: PlacedWay, props: WorkedOutProps): FixWords | undefined {
  const { say, fixes, home, language } = props;
  const [fix, labels] = [fixes[found.outcome], fixes[LABELS_FIRST]];
  if (fix === undefined || !hasSteps(found.outcome)) return undefined;
  const at = STEPS[found.outcome];
  const places = (gaps: readonly GapPlace[]): string =>
    listed(
      gaps.map((gap) => gapWords(gap, say)),
      language,
    );
  const cut = say(at.says, { n: way.districts.length, gaps: places(way.gaps) });
  const cutLoop =
    found.loopGaps.length > 0
      ? ` ${say('share-step-loop-gaps', { gaps: places(found.loopGaps), loops: found.loops })}`
      : '';
  const steps = fix.steps.flatMap((step, i) => [
    {
      ...step,
      ...(i === at.gap ? { do: cut + cutLoop } : {}),
      ...(i === at.connect && found.exchanged ? { more: say('share-exchanged') } : {}),
    },
    ...(i === at.loop && found.loops > 0
      ? jobSteps(say('share-step-loop', { loops: found.loops }), LOOP_DEVICE, fixes, home)
      : []),
  ]);
  // More than two parts have a step of their own that reads the labels.
  if (found.labelsRead || labels === undefined || found.outcome === 'more-districts') return { ...fix, steps };
  return { ...fix, steps: [...jobSteps(labels.lead, LABELS_FIRST, fixes, home), ...steps] };
}

/** A step that is a whole fix of its own, with the cautions of all its steps. */
function jobSteps(text: string, id: string, fixes: WorkedOutProps['fixes'], home: string): FixWords['steps'] {
  const fix = fixes[id];
  if (fix === undefined) return [];
  const cautions = [...new Set(fix.steps.flatMap((step) => step.cautions))];
  return [{ do: text, cautions, job: { title: fix.short, href: `${home}fixes/${id}/` } }];
}
