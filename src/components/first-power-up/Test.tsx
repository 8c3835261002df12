// One test: where, what is to be seen, how it is made, what can hurt, and an answer by one tap or by what was read.
import { useCallback, useState } from 'preact/hooks';
import type { ReadingDoubt, ReadingField } from '../../wizards/first-power-up/index.ts';
import { CANNOT, doubtOf, fieldsOf, optionRead } from '../../wizards/first-power-up/index.ts';
import type { TestRow } from '../../wizards/plan/index.ts';
import { loadPicture } from '../check-picture/index.ts';
import { Steps } from '../fix/index.ts';
import { isByLamp } from '../plan/index.ts';
import { useLoaded } from '../shared/index.ts';
import {
  expectedSaid,
  fieldSaid,
  optionHint,
  optionSaid,
  picturing,
  sidesSaid,
  stepsSaid,
  type Told,
  titleSaid,
  whereSaid,
} from './said.ts';

interface Props extends Told {
  readonly row: TestRow;
  readonly number: number;
  readonly onSaw: (option: string, values?: Readonly<Record<string, number>>) => void;
  /** Undefined at the first. */
  readonly onBack: (() => void) | undefined;
}

export function Test(props: Props) {
  const { row, number, onSaw, onBack, ...told } = props;
  const { say, plan, tests, cautions, language, home } = told;
  const words = tests[row.kind];
  const how = stepsSaid(row, told);
  const sides = sidesSaid(row, told);
  // What can hurt is read before the first hand moves.
  const steps = how.map((act, i) => ({ do: act, cautions: i === 0 ? (words?.cautions ?? []) : [] }));
  const at = { n: number, total: plan.tests.length, where: whereSaid(row, told) };
  return (
    <section class="part asked">
      <p class="power-up-at">{say('power-up-at', at)}</p>
      <h1 tabIndex={-1}>{titleSaid(row, told)}</h1>
      {sides !== undefined && <p>{sides}</p>}
      <p class="power-up-expected">{say('power-up-expected', { expected: expectedSaid(row, told) })}</p>
      <Steps fix={{ steps }} cautions={cautions} say={say} language={language} />
      {words?.picture !== undefined && !isByLamp(row) && <Picture {...told} row={row} id={words.picture} />}
      {fieldsOf(row).length > 0 && <Readings {...told} row={row} onSaw={onSaw} />}
      <ul class="answers">
        {row.options.map((option) => {
          const hint = optionHint(option, row, told);
          return (
            <li key={option}>
              <button type="button" onClick={() => onSaw(option)}>
                <b>{optionSaid(row.kind, option, told)}</b>
                {hint !== undefined && <small>{hint}</small>}
              </button>
            </li>
          );
        })}
        {!row.must && (
          <li>
            <button class="cannot" type="button" onClick={() => onSaw(CANNOT)}>
              {say('power-up-cannot')}
            </button>
          </li>
        )}
      </ul>
      <p class="acts">
        {onBack !== undefined && (
          <button class="button quiet" type="button" onClick={onBack}>
            {say('power-up-undo')}
          </button>
        )}
        <a href={`${home}fixes/switch-off-now/`}>{say('power-up-hot')}</a>
      </p>
    </section>
  );
}

/** A number as people type one, with a point or a comma, and with the unit or without. */
function numberIn(text: string): number {
  const [, number] = /^(\d+(?:[.,]\d+)?)\s*[VA]?$/i.exec(text.trim()) ?? [];
  return number === undefined ? Number.NaN : Number(number.replace(',', '.'));
}

/** Comes when it is there; nobody waits for it. */
function Picture({ row, id, ...told }: Told & { readonly row: TestRow; readonly id: string }) {
  const { pictureStyles } = told;
  const load = useCallback(() => loadPicture(pictureStyles), [pictureStyles]);
  const { value: Drawn } = useLoaded(load);
  return Drawn === undefined ? null : <Drawn id={id} say={picturing(row, told)} />;
}

function Readings({ row, onSaw, ...told }: Told & Pick<Props, 'row' | 'onSaw'>) {
  const { say } = told;
  const fields = fieldsOf(row);
  const [typed, setTyped] = useState<Partial<Record<ReadingField, string>>>({});
  const [doubt, setDoubt] = useState<ReadingDoubt | undefined>(undefined);
  const compare = (event: Event): void => {
    event.preventDefault();
    const values = Object.fromEntries(fields.map((field) => [field, numberIn(typed[field] ?? '')]));
    const option = optionRead(row, values);
    setDoubt(doubtOf(row, values));
    if (option !== undefined) onSaw(option, values);
  };
  return (
    <form class="power-up-readings" onSubmit={compare}>
      <p>{say('power-up-readings')}</p>
      {fields.map((field) => (
        <label key={field} class="field">
          {fieldSaid(field, row, told)}
          <input
            inputMode="decimal"
            value={typed[field] ?? ''}
            onInput={({ currentTarget: { value } }) => setTyped({ ...typed, [field]: value })}
          />
        </label>
      ))}
      {doubt !== undefined && (
        <p class="problem" role="alert">
          {say(`power-up-doubt-${doubt}`)}
        </p>
      )}
      <p class="acts">
        <button class="button" type="submit">
          {say('power-up-compare')}
        </button>
      </p>
    </form>
  );
}
