// A fix: proposed with its reason, then step by step with its cautions, and "that fixed it" or "that did not help".
import type { ComponentChildren } from 'preact';
import type { WalkContext } from '../../wizards/put-it-right.ts';
import { secondFault } from '../../wizards/put-it-right.ts';
import { stepOf } from '../../wizards/walk.ts';
import { useFetched } from '../use-fetched.ts';
import { Steps } from '../wizard/parts.tsx';
import type { WalkParts } from './parts.ts';
import { readFix } from './readers.ts';
import type { FetchedFix } from './words.ts';

interface ProposingProps extends WalkParts {
  readonly fixClass: string;
  readonly context: WalkContext;
  readonly onStart: () => void;
  readonly onNotHelped: () => void;
}

export function Proposing(props: ProposingProps) {
  const { fixClass, context, say, numbers, onStart, onNotHelped } = props;
  const step = stepOf(context);
  const danger = step.kind === 'fix' && step.danger !== undefined;
  const second = context.fixed.length > 0 && secondFault(context) !== undefined;
  return (
    <WithFix {...props}>
      {({ fix, cautions }) => (
        <section class="part">
          <p class="small">{say(kicker(danger, second))}</p>
          <h1 class="verdict" tabIndex={-1}>
            {fix.title}
          </h1>
          {!(danger || second) && step.kind === 'fix' && (
            <p class="small">{say('walk-chance', { share: numbers.share(step.chance) })}</p>
          )}
          <p class="lead">{fix.lead}</p>
          <p>{fix.because}</p>
          {danger ? (
            <>
              <Steps fix={fix} cautions={cautions} say={say} language={props.language} />
              <div class="acts">
                <button class="button" type="button" onClick={onNotHelped}>
                  {say('walk-off-and-cold')}
                </button>
              </div>
            </>
          ) : (
            <>
              <dl class="brief">
                <dt>{say('walk-needs')}</dt>
                <dd>{fix.needs}</dd>
                <dt>{say('walk-effort')}</dt>
                <dd>{fix.effort}</dd>
              </dl>
              <div class="acts">
                <button class="button" type="button" onClick={onStart}>
                  {say('walk-start')}
                </button>
                <button class="button quiet" type="button" onClick={onNotHelped}>
                  {say('walk-not-it', { cause: say(`class-${fixClass}`) })}
                </button>
              </div>
            </>
          )}
        </section>
      )}
    </WithFix>
  );
}

function kicker(danger: boolean, second: boolean): string {
  if (danger) return 'walk-danger';
  return second ? 'walk-second' : 'walk-proposal';
}

interface FixingProps extends WalkParts {
  readonly fixClass: string;
  readonly onFixed: () => void;
  readonly onNotHelped: () => void;
}

export function Fixing(props: FixingProps) {
  const { fixClass, say, language, home, onFixed, onNotHelped } = props;
  return (
    <WithFix {...props}>
      {({ fix, cautions }) => (
        <section class="part">
          <h1 class="verdict" tabIndex={-1}>
            {fix.title}
          </h1>
          <p class="lead">{fix.lead}</p>
          <Steps fix={fix} cautions={cautions} say={say} language={language} />
          <p>
            <a href={`${home}fixes/${fixClass}/`}>{say('walk-full-page')}</a>
          </p>
          <h2>{say('walk-verify')}</h2>
          <p>{fix.verify}</p>
          <div class="acts">
            <button class="button" type="button" onClick={onFixed}>
              {say('walk-fixed')}
            </button>
            <button class="button quiet" type="button" onClick={onNotHelped}>
              {say('walk-not-helped')}
            </button>
          </div>
        </section>
      )}
    </WithFix>
  );
}

/** Fetches the words of a fix; says so where they cannot be had. */
export function WithFix({
  fixClass,
  home,
  say,
  children,
}: Pick<FixingProps, 'fixClass' | 'home' | 'say'> & { readonly children: (found: FetchedFix) => ComponentChildren }) {
  const { value, failed, again } = useFetched(`${home}fixes/${fixClass}.json`, readFix);
  if (value !== undefined) return <>{children(value)}</>;
  if (!failed) return <p class="small">{'\u00a0'}</p>;
  return (
    <p class="problem" role="alert">
      {say('words-missing')}{' '}
      <button class="button quiet" type="button" onClick={again}>
        {say('words-again')}
      </button>
    </p>
  );
}
