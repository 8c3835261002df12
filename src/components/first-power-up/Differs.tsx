// A test that showed something else: nobody goes on. The walk that finds the fault knows what was seen here.
import type { HandOver, Seen } from '../../wizards/first-power-up/index.ts';
import { lossSays } from '../../wizards/first-power-up/index.ts';
import type { TestRow } from '../../wizards/plan/index.ts';
import { expectedSaid, seenSaid, type Told, whereSaid } from './said.ts';

interface Props extends Told {
  readonly row: TestRow;
  readonly seen: Seen | undefined;
  readonly led: HandOver | undefined;
  /** On the way to the walk that finds the fault. */
  readonly onLeave: () => void;
  readonly onAgain: () => void;
}

export function Differs({ row, seen, led, onLeave, onAgain, ...told }: Props) {
  const { say, home } = told;
  const loss = lossSays(row, seen?.values ?? {});
  return (
    <section class="part">
      <p class="power-up-at">{whereSaid(row, told)}</p>
      <h1 tabIndex={-1}>{say('power-up-differs')}</h1>
      {seen !== undefined && (
        <p>
          {say('power-up-differs-lead', {
            seen: seenSaid(row, seen, told),
            expected: expectedSaid(row, told),
          })}
        </p>
      )}
      {loss !== undefined && <p>{say(`power-up-loss-${loss}`)}</p>}
      <p class="acts">
        {led !== undefined && (
          <a class="button" href={`${home}put-it-right/${led.complaint}/${led.search}`} onClick={onLeave}>
            {say('power-up-find')}
          </a>
        )}
        <button class="button quiet" type="button" onClick={onAgain}>
          {say('power-up-once-more')}
        </button>
        <a href={`${home}fixes/switch-off-now/`}>{say('power-up-hot')}</a>
      </p>
    </section>
  );
}
