// After a repair: what did not help is put back; a trouble that comes and goes is waited for.
import type { PartProps } from './part-props.ts';

interface PuttingBackProps extends Pick<PartProps, 'say'> {
  readonly fixClass: string;
  readonly onDone: (done: boolean) => void;
}

export function PuttingBack({ fixClass, say, onDone }: PuttingBackProps) {
  return (
    <section class="part asked">
      <p class="small">{say(`class-${fixClass}`)}</p>
      <h1 tabIndex={-1}>{say('walk-put-back-title')}</h1>
      <p>{say('walk-put-back-how')}</p>
      <ul class="answers">
        <li>
          <button type="button" onClick={() => onDone(true)}>
            <b>{say('walk-put-back-done')}</b>
          </button>
        </li>
        <li>
          <button type="button" onClick={() => onDone(false)}>
            <b>{say('walk-put-back-left')}</b>
            <small>{say('walk-put-back-left-hint')}</small>
          </button>
        </li>
      </ul>
    </section>
  );
}

interface WaitingProps extends Pick<PartProps, 'say'> {
  readonly onStayedAway: () => void;
  readonly onCameBack: () => void;
}

export function Waiting({ say, onStayedAway, onCameBack }: WaitingProps) {
  return (
    <section class="part asked">
      <p>
        <span class="tag tight">{say('walk-waiting')}</span>
      </p>
      <h1 tabIndex={-1}>{say('walk-waiting-title')}</h1>
      <p>{say('walk-waiting-how')}</p>
      <ul class="answers">
        <li>
          <button type="button" onClick={onStayedAway}>
            <b>{say('walk-waiting-away')}</b>
          </button>
        </li>
        <li>
          <button type="button" onClick={onCameBack}>
            <b>{say('walk-waiting-back')}</b>
          </button>
        </li>
      </ul>
    </section>
  );
}
