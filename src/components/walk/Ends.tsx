// The two ends: solved, or handed on with what speaks for each cause that is left.
import type { Seen } from '../../engine/index.ts';
import type { Made } from '../../wizards/links/index.ts';
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import { handedOn } from '../../wizards/put-it-right/index.ts';
import { Share } from '../link/index.ts';
import { WithFix } from './Fix.tsx';
import type { PartProps } from './part-props.ts';
import type { WalkWords } from './words.ts';

export function Solved(props: PartProps & { readonly context: WalkContext; readonly made: Made | undefined }) {
  const { context, say, home, made } = props;
  const fixClass = context.fixed.at(-1) ?? '';
  return (
    <WithFix {...props} fixClass={fixClass}>
      {({ fix }) => (
        <section class="part">
          <p>
            <span class="tag ample">{say('walk-solved')}</span>
          </p>
          <h1 class="verdict" tabIndex={-1}>
            {say('walk-solved-title')}
          </h1>
          <p class="lead">
            {say('walk-solved-lead', { cause: context.fixed.map((one) => say(`class-${one}`)).join(say('and-then')) })}
          </p>
          <p>{fix.verify}</p>
          {(context.isolation === 'cannot' || context.phase === 'cannot') && <p>{say('walk-solved-unproven')}</p>}
          <p>
            <a href={`${home}fixes/${fixClass}/`}>{fix.title}</a>
          </p>
          <Share text={() => `${say('walk-solved-title')} ${fix.lead}`} say={say} made={made} />
        </section>
      )}
    </WithFix>
  );
}

export function HandedOn({
  context,
  checks,
  say,
  numbers,
  home,
  made,
  onStart,
}: PartProps & {
  readonly context: WalkContext;
  readonly made: Made | undefined;
  readonly checks: WalkWords['checks'];
  readonly onStart: (fixClass: string) => void;
}) {
  const { next } = context;
  const left = handedOn(context);
  const because = next?.kind === 'hand-on' ? next.because : 'nothing-separates';
  const told = (answers: readonly Seen[]): string =>
    answers
      .map(({ check, option }) => `${checks[check]?.known}: ${checks[check]?.options[option]?.label}`)
      .join(say('and-then'));
  const card = say('walk-card', {
    complaint: say(`complaint-${context.complaint}`),
    seen: told(context.answers),
    tried: context.tried.map((one) => say(`class-${one}`)).join(say('and-then')) || '–',
    left: left.map((one) => `${say(`fault-${one.fault}`)} (${numbers.share(one.chance)})`).join(say('and-then')),
  });
  return (
    <section class="part">
      <p>
        <span class="tag tight">{say('walk-handed-on')}</span>
      </p>
      <h1 class="verdict" tabIndex={-1}>
        {say(`walk-hand-on-${because}`)}
      </h1>
      <p class="lead">{say('walk-hand-on-lead')}</p>
      <ul class="list causes">
        {left.map((one) => (
          <li key={one.fault}>
            <b>{say(`fault-${one.fault}`)}</b> <span class="num small">{numbers.share(one.chance)}</span>
            {one.speaksFor.length > 0 && <p class="small">{say('walk-speaks-for', { what: told(one.speaksFor) })}</p>}
            {one.speaksAgainst.length > 0 && (
              <p class="small">{say('walk-speaks-against', { what: told(one.speaksAgainst) })}</p>
            )}
            {one.fixClass !== 'something-else' && (
              <p class="acts">
                <button class="button quiet" type="button" onClick={() => onStart(one.fixClass)}>
                  {say('walk-try-this')}
                </button>
                <a href={`${home}fixes/${one.fixClass}/`}>{say('walk-full-page')}</a>
              </p>
            )}
          </li>
        ))}
      </ul>
      <p>{say('walk-hand-on-card')}</p>
      <p>
        <a href={`${home}fixes/something-else/`}>{say('walk-hand-on-page')}</a>
      </p>
      <Share text={() => `${say(`walk-hand-on-${because}`)} ${card}`} say={say} made={made} />
    </section>
  );
}
