// The two ends: solved, or handed on with what speaks for each cause that is left.
import { useMemo, useState } from 'preact/hooks';
import type { Evidence, Seen } from '../../engine/index.ts';
import type { Made } from '../../wizards/links/index.ts';
import type { WalkContext } from '../../wizards/put-it-right/index.ts';
import {
  chancesOfRepairs,
  checkThatTells,
  handedOn,
  isUnproven,
  rowOfCheck,
} from '../../wizards/put-it-right/index.ts';
import { Share } from '../link/index.ts';
import { Asked } from './Asked.tsx';
import type { Card } from './card.ts';
import { WithFix } from './Fix.tsx';
import { likely } from './likely.ts';
import type { PartProps } from './part-props.ts';
import type { WalkWords } from './words.ts';

interface SolvedProps extends PartProps {
  readonly context: WalkContext;
  /** The check that put it right by being done, where one did. */
  readonly by: string | undefined;
  readonly made: Made | undefined;
  readonly card: Card;
}

export function Solved(props: SolvedProps) {
  const { context, by, say, home, made, card } = props;
  const fixClass = context.fixed.at(-1) ?? '';
  const [what, perhaps] = whatItWas(context, by, say);
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
          <p class="lead">{what}</p>
          {perhaps !== undefined && <p>{perhaps}</p>}
          <p>
            <b>{say('walk-verify')}</b> {fix.verify}
          </p>
          {isUnproven(context) && <p>{say('walk-solved-unproven')}</p>}
          <p>
            <a href={`${home}fixes/${fixClass}/`}>{fix.title}</a>
          </p>
          <p class="acts">
            <a href={`${home}put-it-right/how-well/`}>{say('walk-how-well')}</a>
          </p>
          <Share text={() => card(fix.short).join('\n')} told={() => card(fix.short)} say={say} made={made} />
        </section>
      )}
    </WithFix>
  );
}

/** What it was, by the names of what was mended; where a check put it right by being done, that one first. */
export function whatItWas({ fixed }: WalkContext, by: string | undefined, say: PartProps['say']): readonly string[] {
  const cause = fixed.map((one) => say(`class-${one}`)).join(say('and-then'));
  return by === undefined
    ? [say('walk-solved-lead', { cause })]
    : [say('walk-solved-by', { what: by }), say('walk-solved-perhaps', { cause })];
}

interface HandedOnProps extends PartProps {
  readonly context: WalkContext;
  readonly made: Made | undefined;
  readonly checks: WalkWords['checks'];
  readonly card: Card;
  readonly onStart: (fixClass: string) => void;
  readonly onSee: (check: string, option: string) => void;
}

/** So many are set side by side. */
const SIDE_BY_SIDE = 3;

export function HandedOn(props: HandedOnProps) {
  const { context, say, home, made, card } = props;
  const { next } = context;
  const left = useMemo(() => oneOfEach(handedOn(context)), [context]);
  const shown = sideBySide(left);
  const others = left.filter((one) => !shown.includes(one));
  const chances = useMemo(() => chancesOfRepairs(context), [context]);
  const because = next?.kind === 'hand-on' ? next.because : 'nothing-separates';
  return (
    <section class="part">
      <p>
        <span class="tag tight">{say('walk-handed-on')}</span>
      </p>
      <h1 class="verdict" tabIndex={-1}>
        {say(`walk-hand-on-${because}`)}
      </h1>
      <p class="lead">{say('walk-hand-on-lead')}</p>
      <ul class="side-by-side">
        {shown.map((one, at) => (
          <li key={one.fault}>
            {at === SIDE_BY_SIDE && <p class="small">{say('walk-after-the-others')}</p>}
            <Left {...props} one={one} chance={chances.get(one.fixClass) ?? one.chance} />
          </li>
        ))}
      </ul>
      <TellsApart {...props} left={shown} />
      {others.length > 0 && (
        <details>
          <summary>{say('walk-rest', { n: others.length })}</summary>
          <ul class="list causes">
            {others.map((one) => (
              <li key={one.fault}>
                <Left {...props} one={one} chance={chances.get(one.fixClass) ?? one.chance} />
              </li>
            ))}
          </ul>
        </details>
      )}
      <p>{say('walk-hand-on-card')}</p>
      <p>
        <a href={`${home}fixes/something-else/`}>{say('walk-hand-on-page')}</a>
      </p>
      <p class="acts">
        <a href={`${home}put-it-right/how-well/`}>{say('walk-how-well')}</a>
      </p>
      <Share text={() => card().join('\n')} told={card} say={say} made={made} />
    </section>
  );
}

/** The first few; the likeliest of all stands behind them, where it is none of them because its repair could harm. */
function sideBySide(left: readonly Evidence[]): readonly Evidence[] {
  const first = left.slice(0, SIDE_BY_SIDE);
  const likeliest = left.find((one) => left.every(({ chance }) => chance <= one.chance));
  return likeliest === undefined || first.includes(likeliest) ? first : [...first, likeliest];
}

/** Nothing is known of it, so there is nothing to do for it. */
const isElse = ({ fixClass }: Evidence): boolean => fixClass === 'something-else';

/** The likeliest cause of each repair: two with the same repair are one to try. What has none stands last: nothing can be done for it. */
function oneOfEach(left: readonly Evidence[]): readonly Evidence[] {
  const each = left.filter(({ fixClass }, at) => left.findIndex((one) => one.fixClass === fixClass) === at);
  return [...each.filter((one) => !isElse(one)), ...each.filter(isElse)];
}

interface LeftProps extends HandedOnProps {
  readonly one: Evidence;
  /** Of its repair. */
  readonly chance: number;
}

/** One repair that is left, with what speaks for and against its likeliest cause. */
function Left({ one, chance, checks, say, numbers, home, onStart }: LeftProps) {
  const told = (answers: readonly Seen[]): string =>
    answers
      .map(({ check, option }) => `${checks[check]?.known}: ${checks[check]?.options[option]?.label}`)
      .join(say('and-then'));
  return (
    <>
      <b>{say(isElse(one) ? `fault-${one.fault}` : `class-${one.fixClass}`)}</b>{' '}
      <span class="num small">{likely(chance, say, numbers)}</span>
      {one.speaksFor.length > 0 && <p class="small">{say('walk-speaks-for', { what: told(one.speaksFor) })}</p>}
      {one.speaksAgainst.length > 0 && (
        <p class="small">{say('walk-speaks-against', { what: told(one.speaksAgainst) })}</p>
      )}
      {!isElse(one) && (
        <p class="acts">
          <button class="button quiet" type="button" onClick={() => onStart(one.fixClass)}>
            {say('walk-try-this')}
          </button>
          <a href={`${home}fixes/${one.fixClass}/`}>{say('walk-full-page')}</a>
        </p>
      )}
    </>
  );
}

/** The one check that tells apart what is left, though its tool may have to be got first: it is fetched when it is opened. */
function TellsApart({ left, onSee, ...props }: HandedOnProps & { readonly left: readonly Evidence[] }) {
  const { context, checks, say } = props;
  const [open, setOpen] = useState(false);
  const check = useMemo(
    () =>
      checkThatTells(
        context,
        left.map(({ fixClass }) => fixClass),
      ),
    [context, left],
  );
  if (check === undefined) return null;
  const { tool = 'eyes', also = [] } = rowOfCheck(check) ?? {};
  const missing = [tool, ...also].filter((one) => one !== 'eyes' && context.tools?.includes(one) !== true);
  return (
    <details class="tells-apart" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{say('walk-tells-apart', { check: checks[check]?.known ?? check })}</summary>
      {missing.map((one) => (
        <p key={one}>{say('walk-tells-apart-tool', { tool: say(`tool-${one}`) })}</p>
      ))}
      {open && <Asked {...props} id={check} onAnswer={(option) => onSee(check, option)} />}
    </details>
  );
}
