// The page of an answer: one order for every wizard. Each wizard fills the places; where one has nothing to say it is left out.
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { ReadFirst } from '../../../wizards/planning/index.ts';
import { ALL_OUTDOORS } from '../../../wizards/safety/index.ts';
import { outdoors, StepByStep, Verify } from '../../fix/index.ts';
import type { Answer } from '../../link/index.ts';
import { MadeThen, partsOf, plainText, Share } from '../../link/index.ts';
import { TakeIn, type TakeInProps } from '../../taken/index.ts';
import type { FixWords } from '../../words/index.ts';
import type { AnswerProps } from './answer-props.ts';
import { useStages } from './use-stages.ts';

/** The look of a verdict; its word is the wizard's. `open`: not known yet. */
export type Tone = 'ample' | 'enough' | 'tight' | 'short' | 'stop' | 'open';

/** What is done first and costs nothing, and what it brings. */
export interface Free {
  readonly what: string;
  readonly brings: string;
}

interface AnswerPageProps extends Omit<AnswerProps, 'numbers'> {
  readonly verdict: { readonly tone: Tone; readonly word: string };
  readonly headline: string;
  /** One sentence. */
  readonly lead: string;
  /** What may not be read past, right below the verdict. */
  readonly warnings?: readonly string[];
  /** Why, where the verdict alone would not be understood. */
  readonly because?: ComponentChildren;
  /** The fix that it comes to, by id. */
  readonly outcome: string;
  /** All fixes that it comes to, where there are several, and what they are together. */
  readonly several?: { readonly fixes: readonly string[]; readonly fix: FixWords } | undefined;
  /**
   * Nothing else is shown: a stop, a layout that is out of scope, labels that must be read. Its steps stand open, but where the verdict is
   * `open`, or where the one thing to do has a name of its own.
   */
  readonly only?: boolean;
  /** Nothing of it goes into a layout sheet. */
  readonly outOfScope?: boolean;
  /** What can be run with what is there. */
  readonly tonight?: string | undefined;
  /** How many fit, what the answer rests on and leaves open: what stands as sentences on the page, for the copy as text. */
  readonly doubts?: readonly string[];
  /** What was assumed, one line each, for the copy as text. */
  readonly assumed?: readonly string[];
  /** The one thing to do, in a few words, and its price in time and money; else the title and the effort of the fix. */
  readonly toDo?: string | undefined;
  /** The headline says what the title of the fix would, so that the title is left out. */
  readonly saidAbove?: boolean;
  readonly price?: string | undefined;
  /** What costs nothing and comes before what is bought. */
  readonly free?: readonly Free[];
  /** What is to be read before anything is bought. */
  readonly readFirst?: ReadFirst | 'new' | undefined;
  /** How many trains fit. */
  readonly fits?: ComponentChildren;
  /** The assumption that decides, to be settled with one tap. */
  readonly decides?: ComponentChildren;
  readonly figure?: ComponentChildren;
  /** Other remedies, one line each. */
  readonly others?: ComponentChildren;
  /** What would make the answer surer: see Surer. */
  readonly surer?: ComponentChildren;
  /** What if: see Trial. */
  readonly trial?: ComponentChildren;
  /** Numbers and workings, folded. */
  readonly numbers?: ComponentChildren;
  /** More to the proof than the fix says. */
  readonly proof?: ComponentChildren;
  /** Numbers that go with the answer when it is copied as text, one line each. */
  readonly facts?: readonly string[];
  /** What lays these answers into a layout sheet, where they tell of its track. */
  readonly into?: TakeInProps['into'];
}

export function AnswerPage(props: AnswerPageProps) {
  const { verdict, headline, lead, because, outcome, only = false, say, fixes, cautions, release } = props;
  const unfolded = only && verdict.tone !== 'open' && props.toDo === undefined;
  const told = props.several?.fix ?? fixes[outcome];
  const fix = told !== undefined && props.inGarden ? outdoors(told, ALL_OUTDOORS) : told;
  const stage = useStages(LAST_STAGE);
  const whole = stage === LAST_STAGE;
  useEffect(() => {
    if (whole) openStep();
  }, [whole]);
  if (fix === undefined) return null;
  const first = props.readFirst === undefined ? undefined : say(`read-first-${props.readFirst}`);
  const answer = (): Answer => ({
    headline: `${verdict.word}: ${headline}`,
    lead,
    said: [
      [props.warnings ?? [], unfolded ? [] : (props.tonight ?? [])].flat(),
      [(props.free ?? []).map((one) => freeLine(one, say)), unfolded ? [] : toDoLine(props, fix), first ?? []].flat(),
      [...(props.doubts ?? [])],
    ],
    fix,
    cautions,
    facts: [...(props.facts ?? []), ...(props.assumed ?? [])],
    say,
    here: location.href,
  });
  return (
    <>
      <section class="part answer" id="answer" aria-busy={!whole}>
        <p>
          <span class={`tag ${verdict.tone}`}>{verdict.word}</span>
        </p>
        <h1 class="verdict" tabIndex={-1}>
          {headline}
        </h1>
        <MadeThen release={release} verdict={outcome} titleOf={(id) => fixes[id]?.title} say={say} />
        {props.warnings?.map((warning) => (
          <p key={warning} class="warning">
            {warning}
          </p>
        ))}
        <p class="lead">{lead}</p>
        {because !== undefined && <p>{because}</p>}
        {!unfolded && props.tonight !== undefined && <p class="tonight">{props.tonight}</p>}
        {unfolded && first !== undefined && <p>{first}</p>}
        {!unfolded && <ToDo {...props} fix={fix} first={first} />}
      </section>
      {stage > 0 && !only && <Middle {...props} />}
      {(whole || unfolded) && <Below {...props} fix={fix} unfolded={unfolded} answer={answer} />}
    </>
  );
}

const freeLine = ({ what, brings }: Free, say: AnswerProps['say']): string =>
  `${what} (${say('costs-nothing')}). ${brings}`;

const toDoLine = ({ toDo, price, say }: AnswerPageProps, fix: FixWords): string =>
  `${say('to-do-title')}: ${toDo ?? fix.title}. ${price ?? fix.effort}`;

/** The one thing to do after what is free, the ways to its steps and proof, its price, and what has to be read before anything is bought. */
function ToDo({
  fix,
  first,
  toDo,
  free = [],
  saidAbove = false,
  price,
  say,
}: AnswerPageProps & { readonly fix: FixWords; readonly first: string | undefined }) {
  const told = toDo ?? (saidAbove ? undefined : fix.title);
  return (
    <div class="to-do">
      {free.map(({ what, brings }) => (
        <p key={what}>
          {what} <span class="price">({say('costs-nothing')}).</span> {brings}
        </p>
      ))}
      <h2 class="h3">{told ?? say('to-do-title')}</h2>
      <p class="acts">
        <a class="button" href="#step-1">
          {say('to-do-start')}
        </a>
        <a href="#steps">{say('step-all', { n: fix.steps.length })}</a>
        <a href="#proof">{say('to-do-proof')}</a>
      </p>
      <p class="price">{price ?? fix.effort}</p>
      {first !== undefined && <p>{first}</p>}
    </div>
  );
}

/** After the verdict the figures, and then what one goes to from there. */
const LAST_STAGE = 2;

interface BelowProps extends AnswerPageProps {
  readonly fix: FixWords;
  readonly unfolded: boolean;
  readonly answer: () => Answer;
}

/** Steps and proof, each a page of its own, sharing, and the numbers. */
function Below({ fix, unfolded, answer, ...props }: BelowProps) {
  const { outcome, only = false, cautions, say, language, release, numbers } = props;
  return (
    <>
      <section class={unfolded ? 'part steps-here' : 'part steps-page'} id="steps" tabIndex={-1}>
        <h2>{say('how-to-title', { remedy: fix.title })}</h2>
        <StepByStep fix={fix} cautions={cautions} say={say} language={language} back="#answer" />
        {unfolded && (
          <p class="acts">
            <a href="#proof">{say('to-do-proof')}</a>
          </p>
        )}
      </section>
      <Proof {...props} fix={fix} />
      <Share
        text={() => plainText(answer())}
        told={() => partsOf(answer())}
        say={say}
        made={{ release, verdict: outcome }}
        round={(told) => say('share-text-steps', { ...told, step: fix.steps.length })}
        more={props.outOfScope !== true && <TakeIn say={say} home={props.home} into={props.into} />}
      />
      {!only && numbers !== undefined && (
        <details class="part folded">
          <summary>{say('numbers-and-workings')}</summary>
          {numbers}
        </details>
      )}
    </>
  );
}

function Middle(props: AnswerPageProps) {
  const { fits, decides, figure, others, surer, trial, say } = props;
  return (
    <>
      {(fits !== undefined || decides !== undefined) && (
        <section class="part">
          {fits}
          {decides}
        </section>
      )}
      {surer}
      {(figure !== undefined || trial !== undefined) && (
        <div class="two">
          {figure}
          {trial}
        </div>
      )}
      {others !== undefined && (
        <section class="part">
          <h2 class="h3">{say('others-title')}</h2>
          {others}
        </section>
      )}
    </>
  );
}

function Proof({
  fix,
  fixes,
  several,
  proof,
  outcome,
  home,
  say,
  language,
}: AnswerPageProps & { readonly fix: FixWords }) {
  return (
    <div class="part steps-page proof" id="proof" tabIndex={-1}>
      {proof}
      <Verify fix={fix} say={say} language={language} />
      {(several?.fixes ?? [outcome]).map((id) => (
        <p key={id}>
          <a href={`${home}fixes/${id}/`}>
            {say('full-page')}: {fixes[id]?.title}
          </a>
        </p>
      ))}
      <p>
        <a href="#answer">{say('back-to-answer')}</a>
      </p>
    </div>
  );
}

/** A link to a step came before the step was drawn: it is gone to again. */
function openStep(): void {
  const { hash } = location;
  if (/^#(?:steps|step-\d{1,2}|proof)$/.test(hash)) location.replace(hash);
}
