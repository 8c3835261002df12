// Asks for a name and a note, and keeps the answer; where the browser refuses, it gives a file that the notebook takes in.
import { useEffect, useRef, useState } from 'preact/hooks';
import {
  changeBook,
  cutToFit,
  freshMark,
  isFull,
  type Kept,
  pathHere,
  saveFile,
  withUnits,
  writeBook,
} from '../device/index.ts';
import { BASE, languageOf, type Say } from '../words/index.ts';

/** What the page says, at its first heading; its title begins with what was asked. */
const said = (): string => document.querySelector('main h1')?.textContent?.trim() ?? '';
const asked = (): string => document.title.split(' · ')[0] ?? '';

export function KeepForm({ say }: { readonly say: Say }) {
  const [name, setName] = useState(asked);
  const [note, setNote] = useState('');
  const [told, setTold] = useState<{ readonly words: string; readonly kept: boolean } | undefined>(undefined);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  const open = useRef<HTMLAnchorElement>(null);
  useEffect(() => open.current?.focus(), [told]);
  const answer = (): Kept =>
    cutToFit({
      id: freshMark(),
      name: name.trim() === '' ? asked() : name.trim(),
      note: note.trim(),
      path: pathHere(withUnits(location.search)),
      verdict: said(),
      on: new Date().toISOString(),
    });
  const keep = (event: Event): void => {
    event.preventDefault();
    const one = answer();
    changeBook((kept) => [...kept, one]).then(
      () => setTold({ words: say('keep-kept'), kept: true }),
      (error) => setTold({ words: say(isFull(error) ? 'keep-full' : 'keep-refused'), kept: false }),
    );
  };
  return (
    <div class="keep">
      {told?.kept !== true && (
        <form onSubmit={keep}>
          <label class="field">
            {say('keep-name')}
            <input ref={field} value={name} onInput={(event) => setName(event.currentTarget.value)} />
          </label>
          <label class="field">
            {say('keep-note')}
            <textarea rows={3} value={note} onInput={(event) => setNote(event.currentTarget.value)} />
          </label>
          <p>
            <button type="submit">{say('keep-do')}</button>
          </p>
        </form>
      )}
      <p role="status">{told?.words}</p>
      {told?.kept === true && (
        <a ref={open} href={`${BASE}${languageOf(new URL(location.href))}/notebook/`}>
          {say('keep-open')}
        </a>
      )}
      {told?.kept === false && (
        <button type="button" onClick={() => saveFile(writeBook([answer()]))}>
          {say('keep-as-file')}
        </button>
      )}
    </div>
  );
}
