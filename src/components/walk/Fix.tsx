// A fix: proposed with its reason, then step by step with its cautions, and "that fixed it" or "that did not help".
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import { isRead, secondFault } from '../../wizards/put-it-right/index.ts';
import { Steps } from '../fix/index.ts';
import { NotYet } from '../shared/index.ts';
import { inMeasures } from '../words/index.ts';
import { useFix } from './fetched.ts';
import { likely } from './likely.ts';
import type { PartProps } from './part-props.ts';
import type { FetchedFix } from './words.ts';

interface ProposingProps extends PartProps {
  readonly fixClass: string;
  readonly context: WalkContext;
  readonly onStart: () => void;
  readonly onNotHelped: () => void;
}

export function Proposing(props: ProposingProps) {
  const { fixClass, context, say, numbers, onStart, onNotHelped } = props;
  const { next } = context;
  const second = context.fixed.length > 0 && secondFault(context) !== undefined;
  return (
    <WithFix {...props}>
      {({ fix, lang }) => (
        <section class="part" lang={lang}>
          <p class="small">{say(second ? 'walk-second' : 'walk-proposal')}</p>
          <h1 class="verdict" tabIndex={-1}>
            {isUnsure(next, context, fixClass) ? say('walk-may-be', { title: fix.title }) : fix.title}
          </h1>
          {!second && next?.kind === 'fix' && (
            <p class="small">
              {isRead(context, fixClass)
                ? say('walk-read')
                : say('walk-chance', { share: likely(next.chance, say, numbers) })}
            </p>
          )}
          <p class="lead">{fix.lead}</p>
          <p>{fix.because}</p>
          <dl class="brief">
            <dt>{say('walk-needs')}</dt>
            <dd>{fix.needs}</dd>
            {context.tools !== undefined && context.tools.length > 0 && (
              <>
                <dt>{say('walk-at-hand')}</dt>
                <dd>{context.tools.map((tool) => say(`tool-${tool}`)).join(say('and-then'))}</dd>
              </>
            )}
            {fix.without !== undefined && (
              <>
                <dt>{say('walk-without')}</dt>
                <dd>{fix.without}</dd>
              </>
            )}
            <dt>{say('walk-effort')}</dt>
            <dd>{fix.effort}</dd>
          </dl>
          <div class="acts">
            <button class="button" type="button" onClick={onStart}>
              {say('walk-start')}
            </button>
            <button class="button quiet" type="button" onClick={onNotHelped}>
              {say('walk-not-it')}
            </button>
          </div>
        </section>
      )}
    </WithFix>
  );
}

/** Below this a title that says "it is" would promise too much. From memory (judgement). */
const SAYS_IT_IS = 0.6;

const isUnsure = (next: WalkContext['next'], context: WalkContext, fixClass: string): boolean =>
  next?.kind === 'fix' && context.fixed.length === 0 && next.chance < SAYS_IT_IS && !isRead(context, fixClass);

interface FixingProps extends PartProps {
  readonly fixClass: string;
  readonly onFixed: () => void;
  readonly onNotHelped: () => void;
}

export function Fixing(props: FixingProps) {
  const { fixClass, say, language, home, onFixed, onNotHelped } = props;
  return (
    <WithFix {...props}>
      {({ fix, cautions, lang }) => (
        <section class="part" lang={lang}>
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
  numbers,
  children,
}: Pick<FixingProps, 'fixClass' | 'home' | 'say' | 'numbers'> & {
  readonly children: (found: FetchedFix) => ComponentChildren;
}) {
  const { value, failed, again } = useFix(home, fixClass);
  const words = useMemo(() => inMeasures(value, numbers), [value, numbers]);
  return words === undefined ? <NotYet say={say} failed={failed} again={again} /> : children(words);
}
