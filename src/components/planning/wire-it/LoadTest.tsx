// The harmless load test with the person's own readings: what a short would draw where the resistor was.
import { useState } from 'preact/hooks';
import { shortFromLoadTest, sureTrip, tripFinding } from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number, parseField } from '../../../wizards/planning/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

interface Props {
  readonly ohms: number;
  readonly trip: number;
  readonly say: Say;
  readonly numbers: Numbers;
}

const FIELDS: Readonly<Record<'open' | 'loaded' | 'ohms', NumberField>> = {
  open: number('test-open', 'voltage', 1, 40),
  loaded: number('test-loaded', 'voltage', 0.1, 40),
  ohms: number('test-ohms', 'resistance', 1, 200),
};
type FieldId = keyof typeof FIELDS;
const IDS: readonly FieldId[] = ['open', 'loaded', 'ohms'];

export function LoadTest({ ohms, trip, say, numbers }: Props) {
  const [texts, setTexts] = useState<Readonly<Record<FieldId, string>>>({ open: '', loaded: '', ohms: String(ohms) });
  const typed = (id: FieldId): number | undefined => {
    const read = parseField(FIELDS[id], texts[id]);
    return read.kind === 'answer' && read.answer.kind === 'number' ? read.answer.span.from : undefined;
  };
  const [open, loaded, load] = IDS.map(typed);
  const wrong = IDS.filter((id) => texts[id].trim() !== '' && typed(id) === undefined);
  return (
    <fieldset class="part plain">
      <legend>{say('wire-own-title')}</legend>
      <div class="two even">
        {IDS.map((id) => (
          <div class="field" key={id}>
            <label for={FIELDS[id].id}>{say(`wire-own-${id}`)}</label>
            <input
              id={FIELDS[id].id}
              type="text"
              inputMode="decimal"
              autocomplete="off"
              value={texts[id]}
              aria-invalid={wrong.includes(id)}
              onInput={(event) => setTexts({ ...texts, [id]: event.currentTarget.value })}
            />
            {wrong.includes(id) && (
              <p class="error">{say('wire-own-problem', { least: FIELDS[id].least, most: FIELDS[id].most })}</p>
            )}
          </div>
        ))}
      </div>
      <p role="status">
        {open === undefined || loaded === undefined || load === undefined
          ? say('wire-own-wait')
          : outcome({ open, loaded, ohms: load }, trip, say, numbers)}
      </p>
    </fieldset>
  );
}

function outcome(
  readings: { readonly open: number; readonly loaded: number; readonly ohms: number },
  trip: number,
  say: Say,
  numbers: Numbers,
): string {
  const found = shortFromLoadTest(readings);
  if (found.kind === 'no-solution') return say(`wire-own-${found.because}`);
  const values = {
    amps: numbers.amps(found.amps),
    trip: numbers.amps(trip),
    margin: numbers.amps(sureTrip(trip)),
    ohms: numbers.ohms(found.ohms),
  };
  return `${say('wire-own-result', values)} ${say(`wire-own-${tripFinding(found.amps, trip)}`, values)}`;
}
