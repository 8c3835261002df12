// One kept answer: its name leads to it; what the page said, when, and the note; its name and note can be changed.
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Kept, linkOf } from '../device/index.ts';
import type { Say } from '../words/index.ts';
import type { Change } from './change.ts';

interface AnswerProps {
  readonly answer: Kept;
  readonly say: Say;
  readonly language: string;
  /** As it was when somebody began to change it; undefined where nobody does. */
  readonly begun: Kept | undefined;
  readonly onBegin: () => void;
  readonly onLeave: () => void;
  /** Resolves whether or not it could be saved. */
  readonly onSave: (change: Change) => Promise<void>;
  readonly onDelete: () => void;
  readonly onTold: (words: string) => void;
}

/** The page’s language as this browser writes it, where it is the same: “27 Nov 2026” in one land, “Nov 27, 2026” in another. */
const regionOf = (language: string): string =>
  navigator.languages.find((one) => one.split('-')[0] === language) ?? language;

export function Answer({ answer, say, language, begun, ...does }: AnswerProps) {
  const { onBegin, onLeave, onSave, onDelete, onTold } = does;
  const { name, note, verdict, on } = answer;
  const date = new Intl.DateTimeFormat(regionOf(language), { dateStyle: 'medium' }).format(new Date(on));
  const copy = (): void => {
    navigator.clipboard.writeText(linkOf(answer)).then(
      () => onTold(say('notebook-copied', { name })),
      () => onTold(say('notebook-copy-failed')),
    );
  };
  // Whoever has changed it, or left it, is back where they began.
  const beginning = useRef<HTMLButtonElement>(null);
  const wasBegun = useRef(false);
  useEffect(() => {
    if (wasBegun.current && begun === undefined) beginning.current?.focus();
    wasBegun.current = begun !== undefined;
  }, [begun]);
  if (begun !== undefined) return <Form answer={begun} say={say} onSave={onSave} onLeave={onLeave} />;
  return (
    <>
      <a href={linkOf(answer)}>{name}</a>
      <p>{verdict}</p>
      <p class="small">{say('notebook-kept-on', { date })}</p>
      {note !== '' && <p class="note">{note}</p>}
      <p class="acts">
        <button ref={beginning} type="button" onClick={onBegin} aria-label={`${say('notebook-change')}: ${name}`}>
          {say('notebook-change')}
        </button>
        <button type="button" onClick={copy} aria-label={`${say('notebook-copy')}: ${name}`}>
          {say('notebook-copy')}
        </button>
        <button type="button" onClick={onDelete} aria-label={`${say('notebook-delete')}: ${name}`}>
          {say('notebook-delete')}
        </button>
      </p>
    </>
  );
}

type FormProps = Pick<AnswerProps, 'answer' | 'say' | 'onSave' | 'onLeave'>;

function Form({ answer, say, onSave, onLeave }: FormProps) {
  const [name, setName] = useState(answer.name);
  const [note, setNote] = useState(answer.note);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  const written = { name: name.trim() === '' ? answer.name : name.trim(), note: note.trim() };
  return (
    <form
      class="keep"
      onSubmit={(event) => {
        event.preventDefault();
        onSave({
          ...(written.name !== answer.name && { name: written.name }),
          ...(written.note !== answer.note && { note: written.note }),
        });
      }}
    >
      <label class="field">
        {say('notebook-name')}
        <input ref={field} value={name} onInput={(event) => setName(event.currentTarget.value)} />
      </label>
      <label class="field">
        {say('notebook-note')}
        <textarea rows={4} value={note} onInput={(event) => setNote(event.currentTarget.value)} />
      </label>
      <p class="acts">
        <button class="button" type="submit">
          {say('notebook-save')}
        </button>
        <button class="button quiet" type="button" onClick={onLeave}>
          {say('notebook-leave')}
        </button>
      </p>
    </form>
  );
}
