// One kept answer: its name leads to it; what the page said, when, and the note; its name and note can be changed.
import { useState } from 'preact/hooks';
import { type Kept, linkOf } from '../device/index.ts';
import type { Say } from '../words/index.ts';

interface AnswerProps {
  readonly answer: Kept;
  readonly say: Say;
  readonly language: string;
  /** Gives whether it was saved. */
  readonly onSave: (answer: Kept) => Promise<boolean>;
  readonly onDelete: () => void;
  readonly onTold: (words: string) => void;
}

export function Answer({ answer, say, language, onSave, onDelete, onTold }: AnswerProps) {
  const { name, note, verdict, on } = answer;
  const [changing, setChanging] = useState(false);
  const date = new Intl.DateTimeFormat(language, { dateStyle: 'medium' }).format(new Date(on));
  const copy = (): void => {
    navigator.clipboard.writeText(linkOf(answer)).then(
      () => onTold(say('notebook-copied', { name })),
      () => onTold(say('notebook-copy-failed')),
    );
  };
  if (changing) {
    const save = async (changed: Kept): Promise<void> => {
      if (await onSave(changed)) setChanging(false);
    };
    return <Change answer={answer} say={say} onSave={save} onLeave={() => setChanging(false)} />;
  }
  return (
    <>
      <a href={linkOf(answer)}>{name}</a>
      <p>{verdict}</p>
      <p class="small">{say('notebook-kept-on', { date })}</p>
      {note !== '' && <p class="note">{note}</p>}
      <p class="acts">
        <button type="button" onClick={() => setChanging(true)} aria-label={`${say('notebook-change')}: ${name}`}>
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

interface ChangeProps extends Pick<AnswerProps, 'answer' | 'say'> {
  readonly onSave: (answer: Kept) => Promise<void>;
  readonly onLeave: () => void;
}

function Change({ answer, say, onSave, onLeave }: ChangeProps) {
  const [name, setName] = useState(answer.name);
  const [note, setNote] = useState(answer.note);
  return (
    <form
      class="keep"
      onSubmit={(event) => {
        event.preventDefault();
        onSave({ ...answer, name: name.trim() === '' ? answer.name : name.trim(), note: note.trim() });
      }}
    >
      <label class="field">
        {say('notebook-name')}
        <input value={name} onInput={(event) => setName(event.currentTarget.value)} />
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
