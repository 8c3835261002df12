// How a number came about: its formula, what goes into it, and where both come from.
import type { Working } from '../../../engine/index.ts';
import type { AnswerProps } from './answer-props.ts';

export function Workings({
  working,
  say,
  numbers,
  home,
}: { working: Working } & Pick<AnswerProps, 'say' | 'numbers' | 'home'>) {
  const show = (value: number, unit: Working['unit']): string => numbers.inUnit(value, unit);
  return (
    <div class="workings">
      <p>{say(`formula-${working.formula}`)}</p>
      <ul>
        {working.inputs.map((input) => (
          <li key={input.name}>
            {say(`input-${input.name}`)}: <b class="num">{show(input.value, input.unit)}</b>
          </li>
        ))}
      </ul>
      <p class="small">
        {say('working-sources')}:{' '}
        {working.sources.map((id, index) => (
          <span key={id}>
            {index > 0 && ', '}
            <a href={`${home}sources/#${id}`}>{say(`source-${id}`)}</a>
          </span>
        ))}
      </p>
    </div>
  );
}
