// A slider with a number field beside it; the field takes units as people write them.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { MeasureSystem } from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { parseField } from '../../../wizards/planning/index.ts';

interface Props {
  readonly field: NumberField;
  readonly label: string;
  readonly value: number;
  readonly text: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly problem: string;
  /** The system that a bare number is typed in. */
  readonly bare?: MeasureSystem;
  readonly onValue: (value: number) => void;
}

/** The slider runs from `least` to `most`; the field accepts all that its question does. */
export function Slider({ field, label, value, text, least, most, step, problem, bare = 'metric', onValue }: Props) {
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const [wrong, setWrong] = useState(false);
  useEffect(() => {
    setTyped(undefined);
    setWrong(false);
  }, [value]);
  const range = useRef<HTMLInputElement>(null);
  // What was moved before this was alive counts.
  useEffect(() => {
    const moved = range.current === null ? undefined : movedTo(range.current);
    if (moved !== undefined) onValue(moved);
  }, []);
  const id = `what-if-${field.id}`;
  const settle = (input: string): void => {
    const read = parseField(field, input, { bare });
    const number = read.kind === 'answer' && read.answer.kind === 'number' ? read.answer.span.from : undefined;
    setWrong(number === undefined || number > most);
    if (number !== undefined && number <= most) {
      if (number === value) setTyped(undefined);
      onValue(number);
    }
  };
  return (
    <div class="slider field">
      <label for={id}>{label}</label>
      <input
        ref={range}
        id={id}
        type="range"
        min={least}
        max={most}
        step={step}
        value={value}
        aria-valuetext={text}
        onInput={(event) => onValue(event.currentTarget.valueAsNumber)}
      />
      <input
        type="text"
        inputMode="decimal"
        aria-label={label}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-problem` : undefined}
        value={typed ?? text}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onChange={(event) => settle(event.currentTarget.value)}
      />
      {wrong && (
        <p class="error" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </div>
  );
}

/** Where a slider stands that came with the page and is not where it came; undefined for any other. */
function movedTo(range: HTMLInputElement): number | undefined {
  if (range.defaultValue === '') return undefined;
  const asItCame = document.createElement('input');
  // In this order, for each holds the value within itself.
  for (const name of ['type', 'min', 'max', 'step', 'value'])
    asItCame.setAttribute(name, range.getAttribute(name) ?? '');
  return asItCame.value === range.value ? undefined : range.valueAsNumber;
}
