// A sheet that is worked on: what a beginner tells of it, the drawing and the division, and everything in tables for whoever wants it.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Edited, Flaw, Sheet } from '../../wizards/sheet/index.ts';
import { answersOf, withTold, writeSheet } from '../../wizards/sheet/index.ts';
import { saveFile, toClipboard } from '../device/index.ts';
import { type KeptSheet, linkTo, TooLong } from '../kept-sheets/index.ts';
import { FileButton, useLoaded, useMeasures } from '../shared/index.ts';
import { type Say, sayer } from '../words/index.ts';
import { Facts } from './Facts.tsx';
import { NotLoaded } from './NotLoaded.tsx';
import { Onward, type WizardLink } from './Onward.tsx';
import { SheetParts } from './SheetParts.tsx';
import { flawSaid, type Words } from './sayings.ts';
import { useSheet, type Worked } from './use-sheet.ts';

interface EditorProps {
  readonly words: Words;
  readonly language: string;
  readonly wizards: readonly WizardLink[];
  /** The address of the schema of its file. */
  readonly schema: string;
  readonly sheet: Sheet;
  /** What could not be read of it. */
  readonly flaws: readonly Flaw[];
  readonly kept: KeptSheet | undefined;
  readonly fresh: boolean;
  readonly onFile: (file: File) => Promise<void>;
  readonly onLeave: () => void;
}

const loadTables = () => import('./Tables.tsx');

export function Editor({ words, language, wizards, schema, sheet: first, flaws, ...props }: EditorProps) {
  const { kept, fresh, onFile, onLeave } = props;
  const say = useMemo(() => sayer(words, language), [words, language]);
  const work = useSheet(first, kept, fresh);
  const [selected, setSelected] = useState<string | undefined>(undefined);
  const [wanted, setWanted] = useState(false);
  const tables = useLoaded(wanted ? loadTables : undefined);
  const system = useMeasures();
  const sheet = work.history.now;
  useEffect(() => onUndoKeys(work), [work]);

  /** Gives what forbids it, as a sentence; undefined where it was taken. */
  const take = (edited: Edited): string | undefined => {
    if ('problem' in edited) {
      const { because, given, least = '', most = '' } = edited.problem;
      return say(`sheet-cell-${because}`, { given, least, most });
    }
    if ('flaw' in edited) return flawSaid(edited.flaw, say);
    work.change(edited.sheet);
    return undefined;
  };
  return (
    <>
      <Flaws flaws={flaws} say={say} />
      <section class="part">
        <label class="field">
          {say('sheet-field-sheet-name')}
          <input
            value={sheet.name}
            maxLength={60}
            onInput={({ currentTarget }) => take(withTold(sheet, 'name', currentTarget.value))}
          />
        </label>
        <Keeping work={work} say={say} onSave={() => saveFile(writeSheet(sheet), 'layout-sheet')} />
        <p class="acts">
          <button class="button quiet" type="button" disabled={work.history.past.length === 0} onClick={work.undo}>
            {say('sheet-undo')}
          </button>
          <button class="button quiet" type="button" disabled={work.history.future.length === 0} onClick={work.redo}>
            {say('sheet-redo')}
          </button>
          <button
            class="button quiet"
            type="button"
            onClick={async () => {
              if (work.keeping === 'waiting') await work.keep();
              onLeave();
            }}
          >
            {say('sheet-others')}
          </button>
        </p>
      </section>
      <Facts sheet={sheet} say={say} onTake={take} />
      <SheetParts
        sheet={sheet}
        say={say}
        language={language}
        words={words}
        selected={selected}
        onSelect={setSelected}
        onChange={work.change}
      />
      <section class="part">
        <h2>{say('sheet-tables')}</h2>
        {tables.value === undefined ? (
          <>
            <p>{say('sheet-tables-lead')}</p>
            <p class="acts">
              <button class="button quiet" type="button" onClick={() => setWanted(true)}>
                {say('sheet-tables-open')}
              </button>
            </p>
          </>
        ) : (
          <tables.value.Tables
            sheet={sheet}
            say={say}
            language={language}
            system={system}
            selected={selected}
            onSelect={setSelected}
            onTake={take}
          />
        )}
        <NotLoaded part={tables} say={say} />
      </section>
      <Onward answers={answersOf(sheet)} wizards={wizards} say={say} />
      <section class="part">
        <h2>{say('sheet-file')}</h2>
        <p>{say('sheet-file-lead')}</p>
        <p class="acts">
          <button class="button quiet" type="button" onClick={() => saveFile(writeSheet(sheet), 'layout-sheet')}>
            {say('sheet-save-file')}
          </button>
          <FileButton label={say('sheet-open-file')} onFile={onFile} />
          <CopyLink sheet={sheet} say={say} />
        </p>
        <p class="small">
          <a href={schema}>{say('sheet-schema')}</a>
        </p>
      </section>
    </>
  );
}

/** What could not be read of a sheet that was opened. */
function Flaws({ flaws, say }: { readonly flaws: readonly Flaw[]; readonly say: Say }) {
  if (flaws.length === 0) return null;
  return (
    <div class="problem" role="alert">
      <p>{say('sheet-flaws', { n: flaws.length })}</p>
      <ul>
        {flaws.map((flaw) => (
          <li key={flawSaid(flaw, say)}>{flawSaid(flaw, say)}</li>
        ))}
      </ul>
    </div>
  );
}

/** Whether it is kept; where it cannot be, a file is offered. */
function Keeping({ work, say, onSave }: { readonly work: Worked; readonly say: Say; readonly onSave: () => void }) {
  const { keeping } = work;
  const isLost = keeping === 'full' || keeping === 'refused';
  return (
    <>
      <p class={isLost || keeping === 'apart' ? 'warning' : 'small'} role="status">
        {say(`sheet-keeping-${keeping}`)}
      </p>
      {(isLost || keeping === 'not-yet') && (
        <p class="acts">
          <button class="button quiet" type="button" onClick={isLost ? onSave : work.keep}>
            {say(isLost ? 'sheet-save-file' : 'sheet-keep')}
          </button>
        </p>
      )}
    </>
  );
}

function CopyLink({ sheet, say }: { readonly sheet: Sheet; readonly say: Say }) {
  const [told, setTold] = useState('');
  useEffect(() => setTold(''), [sheet]);
  const copy = async (): Promise<void> => {
    try {
      await toClipboard(linkTo(sheet));
      setTold(say('sheet-link-copied'));
    } catch (error) {
      setTold(say(error instanceof TooLong ? 'sheet-link-long' : 'sheet-link-failed'));
    }
  };
  return (
    <>
      <button class="button quiet" type="button" onClick={copy}>
        {say('sheet-copy-link')}
      </button>
      <span role="status">{told}</span>
    </>
  );
}

/** In a field whose text is being changed the keys are the browser’s. */
const isTyping = (target: EventTarget | null): boolean =>
  (target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement) && target.dataset['typing'] === 'yes';

function onUndoKeys({ undo, redo }: Worked): () => void {
  const press = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) redo();
    else undo();
  };
  addEventListener('keydown', press);
  return () => removeEventListener('keydown', press);
}
