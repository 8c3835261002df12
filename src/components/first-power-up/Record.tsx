// What was tested, where, and what was seen: to print and to keep with the layout.
import type { PowerUp } from '../../wizards/first-power-up/index.ts';
import { seenSaid, type Told, titleSaid, whereSaid } from './said.ts';

interface Props extends Told {
  readonly now: PowerUp;
  readonly onAnew: () => void;
}

export function Record({ now, onAnew, ...told }: Props) {
  const { say, plan } = told;
  return (
    <section class="part plan">
      <h1 tabIndex={-1}>{say(now.verdict === 'proven' ? 'power-up-proven' : 'power-up-open')}</h1>
      <h2>{say('power-up-record')}</h2>
      <ol class="plan-gaps">
        {now.seen.map((seen) => {
          const row = plan.tests.find(({ id }) => id === seen.row);
          if (row === undefined) return null;
          return (
            <li key={row.id}>
              {titleSaid(row, told)} <b>{seenSaid(row, seen, told)}</b> · {whereSaid(row, told)}
            </li>
          );
        })}
      </ol>
      <p class="signed">
        <span>{say('power-up-signed-by')}</span> <span>{say('power-up-signed-on')}</span>
      </p>
      <p class="acts">
        <button class="button" type="button" onClick={() => print()}>
          {say('power-up-print')}
        </button>
        <button class="button quiet" type="button" onClick={onAnew}>
          {say('power-up-anew')}
        </button>
      </p>
    </section>
  );
}
