// The work of a plan, step by step. A danger stands in full where it first bites; where it bites again, its harm in one line with the way
// up to what to do.
import { Caution } from '../fix/index.ts';
import { firstSentence, Measured, type StepWords } from '../words/index.ts';
import type { PartProps } from './props.ts';
import { partOfStep, stepSaid } from './said.ts';
import { To } from './To.tsx';

export function Work(told: PartProps) {
  const { plan, say, language, cautions } = told;
  const steps = plan.steps.map((step) => stepSaid(step, plan, told));
  const first = firstAt(steps);
  return (
    <>
      {!plan.steps.some(({ id }) => id === 'each-alone') && <p>{say('plan-steps-wait')}</p>}
      <ol class="steps">
        {steps.map((step, at) => {
          const [head, rest] = firstSentence(step.do, language);
          const see = partOfStep(plan.steps[at]?.id);
          return (
            <li key={step.do}>
              <Again {...told} ids={step.cautions.filter((id) => first.get(id) !== at)} first={first} />
              <p>
                <b>
                  <Measured text={head} language={language} />
                </b>{' '}
                <Measured text={[rest, step.more ?? ''].join(' ')} language={language} />
                {see !== undefined && (
                  <>
                    {' '}
                    <To to={`plan-${see}`}>{say('plan-see', { part: say(`plan-part-${see}`) })}</To>
                  </>
                )}
                {step.job !== undefined && (
                  <>
                    {' '}
                    <a href={step.job.href}>{step.job.title}</a>.
                  </>
                )}
              </p>
              {step.cautions.map((id) => {
                const words = cautions[id];
                return (
                  words !== undefined &&
                  first.get(id) === at && (
                    <div key={id} id={`plan-danger-${id}`} tabIndex={-1}>
                      <Caution words={words} say={say} language={language} />
                    </div>
                  )
                );
              })}
            </li>
          );
        })}
      </ol>
    </>
  );
}

/** By caution, the step that brings it first. */
function firstAt(steps: readonly Pick<StepWords, 'cautions'>[]): ReadonlyMap<string, number> {
  const first = new Map<string, number>();
  for (const [at, { cautions }] of steps.entries()) for (const id of cautions) if (!first.has(id)) first.set(id, at);
  return first;
}

interface AgainProps extends PartProps {
  /** The worst first. */
  readonly ids: readonly string[];
  readonly first: ReadonlyMap<string, number>;
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
            <To to={`plan-danger-${id}`}>{say('plan-as-at-step', { n: (first.get(id) ?? 0) + 1 })}</To>{' '}
          </span>
        ))}
      </p>
    </div>
  );
}
