// What has been told: every answer can be changed; two that hardly go together are pointed out; other complaints keep all of it.
import type { Made } from '../../wizards/links/index.ts';
import type { ComplaintId, Told, Walk } from '../../wizards/put-it-right/index.ts';
import {
  CANNOT,
  COMPLAINT_IDS,
  conflictIn,
  fitsOnePart,
  isOnePart,
  isRepair,
  NOTHING_TOLD,
  walkAddress,
} from '../../wizards/put-it-right/index.ts';
import { Share } from '../link/index.ts';
import type { PartProps } from './part-props.ts';
import type { WalkWords } from './words.ts';

interface Props extends PartProps {
  readonly complaint: ComplaintId;
  readonly told: Told;
  readonly walk: Walk;
  readonly checks: WalkWords['checks'];
  readonly onForget: (check: string) => void;
  readonly onTools: () => void;
  /** Opens the screen on which everything can be told at once. */
  readonly onTellMore: () => void;
  /** At an end the link stands above already. */
  readonly ended: boolean;
  readonly made: Made | undefined;
  /** The walk as text. */
  readonly card: readonly string[];
}

export function Seen(props: Props) {
  const { complaint, told, walk, checks, say, home, onForget, onTools, onTellMore, ended, made, card } = props;
  const { trail } = walk;
  const conflict = conflictIn(walk.context);
  const name = (check: string): string => checks[check]?.known ?? check;
  const { seen, toldFirst, tools, tried, left } = told;
  const elsewhere = walkAddress({ ...NOTHING_TOLD, seen, toldFirst, tools, tried, left });
  const onePart = isOnePart(walk.context.answers);
  const mended = tried.filter(isRepair);
  const triedAs = (fixClass: string): string => {
    const cause = say(`class-${fixClass}`);
    return left.includes(fixClass) ? say('walk-left-as-changed', { name: cause }) : cause;
  };
  return (
    <section class="part said">
      {conflict !== undefined && (
        <div class="caution" role="status">
          <p>
            <b>{say('walk-conflict')}</b>{' '}
            {say('walk-conflict-pair', { again: name(conflict.again.check), against: name(conflict.against.check) })}{' '}
            <button class="link" type="button" onClick={() => onForget(conflict.again.check)}>
              {say('walk-conflict-again')}
            </button>
          </p>
        </div>
      )}
      {trail.length > 0 && (
        <details>
          <summary>
            <h2 class="h3">{say('walk-told', { n: trail.length })}</h2>
          </summary>
          <ul class="known">
            {trail.map((check) => {
              const option = seen[check] ?? CANNOT;
              const label = option === CANNOT ? say('walk-not-checked') : checks[check]?.options[option]?.label;
              return (
                <li key={check}>
                  <button type="button" onClick={() => onForget(check)}>
                    <b>{name(check)}</b> <span>{label}</span>
                  </button>
                </li>
              );
            })}
            {tools !== undefined && (
              <li>
                <button type="button" onClick={onTools}>
                  <b>{say('walk-at-hand')}</b>{' '}
                  <span>
                    {tools.length === 0
                      ? say('walk-tools-none')
                      : tools.map((tool) => say(`tool-${tool}`)).join(say('and-then'))}
                  </span>
                </button>
              </li>
            )}
          </ul>
        </details>
      )}
      <p>
        <button class="link" type="button" onClick={onTellMore}>
          {say('walk-tell-more')}
        </button>
      </p>
      {mended.length > 0 && (
        <p class="small">{say('walk-tried', { causes: mended.map(triedAs).join(say('and-then')) })}</p>
      )}
      <div class="on-paper">
        {card.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <details class="not-on-paper">
        <summary>{say('walk-elsewhere')}</summary>
        <ul class="list">
          {COMPLAINT_IDS.filter((id) => id !== complaint && (fitsOnePart(id) || !onePart)).map((id) => (
            <li key={id}>
              <a href={`${home}put-it-right/${id}/${elsewhere}`}>{say(`complaint-${id}`)}</a>
            </li>
          ))}
        </ul>
      </details>
      {!ended && <Share text={() => card.join('\n')} told={() => card} say={say} made={made} />}
    </section>
  );
}
