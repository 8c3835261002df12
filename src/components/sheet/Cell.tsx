// One field of a sheet: what is typed stands until it is whole, and is taken when one leaves it; what cannot be taken says why.
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useState } from 'preact/hooks';

interface FieldProps {
  readonly label: string;
  /** Shows the label above the field; in a table it only names it. */
  readonly shown?: boolean;
  readonly hint?: string | undefined;
}

interface AroundProps extends FieldProps {
  readonly id: string;
  readonly problem: string | undefined;
  readonly children: ComponentChildren;
}

/** What stands round a field: its label and hint above, what is wrong below. */
function Around({ id, label, shown = false, hint, problem, children }: AroundProps) {
  const refusal = problem !== undefined && (
    <span class="error" id={`${id}-problem`} role="alert">
      {problem}
    </span>
  );
  if (!shown) {
    return (
      <>
        {children}
        {refusal}
      </>
    );
  }
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint !== undefined && <small>{hint}</small>}
      {children}
      {refusal}
    </div>
  );
}

/** What a field says of itself. */
const told = (id: string, { label, shown = false }: FieldProps, problem: string | undefined) => ({
  id,
  'aria-label': shown ? undefined : label,
  'aria-invalid': problem !== undefined,
  'aria-describedby': problem === undefined ? undefined : `${id}-problem`,
});

interface TypedProps extends FieldProps {
  readonly value: string;
  readonly numeric?: boolean;
  /** What stands there while nothing is told. */
  readonly otherwise?: string | undefined;
  /** Gives what forbids it; undefined where it was taken. */
  readonly onTyped: (typed: string) => string | undefined;
}

export function Typed(props: TypedProps) {
  const { value, numeric = false, otherwise, onTyped } = props;
  const [typed, setTyped] = useState(value);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const id = useId();
  useEffect(() => {
    setTyped(value);
    setProblem(undefined);
  }, [value]);
  const take = (): void => {
    const refused = typed === value ? undefined : onTyped(typed);
    setProblem(refused);
    // What was typed may be written otherwise: 240 cm as 2.4.
    if (refused === undefined) setTyped(value);
  };
  return (
    <Around {...props} id={id} problem={problem}>
      <input
        {...told(id, props, problem)}
        value={typed}
        inputMode={numeric ? 'decimal' : undefined}
        autocomplete="off"
        placeholder={otherwise}
        data-typing={typed === value ? undefined : 'yes'}
        onInput={({ currentTarget }) => setTyped(currentTarget.value)}
        onBlur={take}
      />
    </Around>
  );
}

interface ChosenProps extends FieldProps {
  readonly value: string;
  /** The first stands for what nobody has told, where that may be. */
  readonly options: readonly (readonly [value: string, said: string])[];
  readonly onChosen: (value: string) => string | undefined;
}

export function Chosen(props: ChosenProps) {
  const { value, options, onChosen } = props;
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const id = useId();
  return (
    <Around {...props} id={id} problem={problem}>
      <select
        {...told(id, props, problem)}
        value={value}
        onChange={({ currentTarget }) => {
          const refused = onChosen(currentTarget.value);
          setProblem(refused);
          if (refused !== undefined) currentTarget.value = value;
        }}
      >
        {options.map(([one, said]) => (
          <option key={one} value={one}>
            {said}
          </option>
        ))}
      </select>
    </Around>
  );
}
