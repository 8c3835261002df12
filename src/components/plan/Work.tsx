// The work of a plan, step by step, in its phases. A danger stands in full where it first bites; where it bites again, its harm in one line
// with the way up to what to do. On a phone one phase is open at first.
import type { PlanStep } from '../../wizards/plan/index.ts';
import { Caution } from '../fix/index.ts';
import { firstSentence, Measured, type StepWords } from '../words/index.ts';
import type { PartProps } from './props.ts';
import { partOfStep, stepSaid } from './said.ts';
import { To } from './To.tsx';

interface Said {
  readonly step: PlanStep;
  readonly words: StepWords;
  /** Counted from 1 through all phases. */
  readonly number: number;
}

/** By caution, the number of the step that brings it first. */
type First = ReadonlyMap<string, number>;

/** Whether all phases have room to stand open at once. */
const isWide = (): boolean => typeof matchMedia !== 'function' || matchMedia('(width >= 42rem)').matches;

export function Work(told: PartProps) {
  const { plan, say } = told;
  const all = plan.steps.map((step, at): Said => ({ step, words: stepSaid(step, plan, told), number: at + 1 }));
  const first = firstOf(all);
  const phases = [...new Set(plan.steps.map(({ phase }) => phase))];
  const wide = isWide();
  return (
    <div class="plan-work">
      {!plan.steps.some(({ id }) => id === 'each-alone') && <p>{say('plan-steps-wait')}</p>}
      {phases.map((phase, at) => {
        const steps = all.filter(({ step }) => step.phase === phase);
        const [from = 0, to = 0] = [steps.at(0)?.number, steps.at(-1)?.number];
        return (
          <details key={phase} open={wide || at === 0}>
            <summary>
              {say(from === to ? 'plan-phase-one' : 'plan-phase', { phase: say(`plan-phase-${phase}`), from, to })}
            </summary>
            <ol class="steps">
              {steps.map((said) => (
                <Step key={said.step.id} {...told} {...said} first={first} />
              ))}
            </ol>
          </details>
        );
      })}
    </div>
  );
}

function firstOf(all: readonly Said[]): First {
  const first = new Map<string, number>();
  for (const { words, number } of all) for (const id of words.cautions) if (!first.has(id)) first.set(id, number);
  return first;
}

function Step({ step, words, number, first, ...told }: PartProps & Said & { readonly first: First }) {
  const { say, language, cautions } = told;
  const [head, rest] = firstSentence(words.do, language);
  const see = partOfStep(step.id, told.plan);
  return (
    <li>
      <Again {...told} ids={words.cautions.filter((id) => first.get(id) !== number)} first={first} />
      <p>
        <b>
          <Measured text={head} language={language} />
        </b>{' '}
        <Measured text={[rest, words.more ?? ''].join(' ')} language={language} />
        {see !== undefined && (
          <>
            {' '}
            <To to={`plan-${see}`}>{say('plan-see', { part: say(`plan-part-${see}`) })}</To>
          </>
        )}
        {words.job !== undefined && (
          <>
            {' '}
            <a href={words.job.href}>{words.job.title}</a>
          </>
        )}
      </p>
      {words.cautions.map((id) => {
        const caution = cautions[id];
        return (
          caution !== undefined &&
          first.get(id) === number && (
            <div key={id} class="bites" id={`plan-danger-${id}`} tabIndex={-1}>
              <Caution words={caution} say={say} language={language} />
            </div>
          )
        );
      })}
    </li>
  );
}

interface AgainProps extends PartProps {
  /** The worst first. */
  readonly ids: readonly string[];
  readonly first: First;
}

/** Read before the hand moves. */
function Again({ ids, first, cautions, say }: AgainProps) {
  const told = ids.flatMap((id) => {
    const words = cautions[id];
    return words === undefined ? [] : [{ id, words }];
  });
  const [worst] = told;
  if (worst === undefined) return null;
  return (
    <div class={`caution ${worst.words.rank} again`}>
      <p>
        {told.map(({ id, words: { rank, harm, line } }) => (
          <span key={id}>
            {rank === 'damage' && line !== undefined ? line : `${say(`rank-${rank}`)} ${harm}`}{' '}
            <To to={`plan-danger-${id}`}>{say('plan-as-at-step', { n: first.get(id) ?? 0 })}</To>{' '}
          </span>
        ))}
      </p>
    </div>
  );
}
