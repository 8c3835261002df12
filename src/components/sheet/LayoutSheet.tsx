// The layout sheet: begun from a shape, an example, a file, a link or what this device keeps; then changed.
import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import type { Flaw, Sheet } from '../../wizards/sheet/index.ts';
import { MOST_SHEET_TEXT, readSheet } from '../../wizards/sheet/index.ts';
import { type Found, saveFile } from '../device/index.ts';
import {
  deleteSheet,
  forgetSpoiltSheets,
  type KeptSheet,
  onSheets,
  openSheet,
  openShelf,
  putSheet,
  type Shelf,
  turnTo,
} from '../kept-sheets/index.ts';
import { Damage, useLoaded } from '../shared/index.ts';
import { sayer } from '../words/index.ts';
import { NotLoaded } from './NotLoaded.tsx';
import type { WizardLink } from './Onward.tsx';
import { Start } from './Start.tsx';
import { named, problemSaid, type Words } from './sayings.ts';

interface LayoutSheetProps {
  readonly language: string;
  readonly wizards: readonly WizardLink[];
  /** The address of the schema of its file. */
  readonly schema: string;
  readonly words: Words;
  /** Where the words are that are needed once there is a sheet. */
  readonly more: string;
}

/** The sheet that is worked on. `fresh`: it is to be kept at once. */
interface Work {
  readonly sheet: Sheet;
  readonly flaws: readonly Flaw[];
  readonly kept: KeptSheet | undefined;
  readonly fresh: boolean;
  /** Its sections get the names that the words know. */
  readonly nameless: boolean;
}

const NOTHING: Found<Shelf> = { value: { sheets: [], last: undefined }, spoilt: [], before: false };

export default function LayoutSheet({ language, wizards, schema, words, more }: LayoutSheetProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const [shelf, setShelf] = useState<Found<Shelf> | undefined>(undefined);
  const [work, setWork] = useState<Work | undefined>(undefined);
  const [told, setTold] = useState('');
  const load = useCallback((stop: AbortSignal) => loadEditor(more, stop), [more]);
  const editor = useLoaded(work === undefined ? undefined : load);
  const [deleted, setDeleted] = useState<KeptSheet | undefined>(undefined);

  useEffect(() => {
    const look = () => openShelf().then(setShelf, () => setShelf((now) => now ?? NOTHING));
    const begin = async (): Promise<void> => {
      const opened = await openSheet();
      if ('problem' in opened) setTold(problemSaid(opened.problem, say('sheet-the-link'), say));
      if ('sheet' in opened) setWork({ ...opened, fresh: false, nameless: false });
      await look();
    };
    begin();
    addEventListener('hashchange', begin);
    const end = onSheets(look);
    return () => {
      removeEventListener('hashchange', begin);
      end();
    };
  }, [say]);
  if (shelf === undefined) return null;

  const start = (sheet: Sheet, flaws: readonly Flaw[], nameless: boolean): void => {
    setTold('');
    setDeleted(undefined);
    setWork({ sheet, flaws, kept: undefined, fresh: true, nameless });
  };
  const takeIn = async (file: File): Promise<void> => {
    const read = await readFile(file);
    if ('problem' in read) setTold(problemSaid(read.problem, `“${file.name}”`, say));
    else start(read.sheet, read.flaws, false);
  };
  const open = (kept: KeptSheet): void => {
    setTold('');
    setWork({ sheet: kept.sheet, flaws: [], kept, fresh: false, nameless: false });
    turnTo(kept.id).catch(() => undefined);
  };
  const remove = async (kept: KeptSheet): Promise<void> => {
    try {
      await deleteSheet(kept.id);
      setDeleted(kept);
      setTold(say('sheet-deleted', { name: kept.sheet.name }));
    } catch {
      setTold(say('sheet-keeping-refused'));
    }
  };
  const putBack = async (kept: KeptSheet): Promise<void> => {
    await putSheet(kept.sheet, kept).then(
      () => setDeleted(undefined),
      () => undefined,
    );
    setTold('');
  };
  const leave = (): void => {
    setWork(undefined);
    openShelf().then(setShelf, () => undefined);
  };

  return (
    <>
      <Damage
        spoilt={shelf.spoilt}
        told={say(shelf.before ? 'sheet-before' : 'sheet-spoilt')}
        save={say('sheet-spoilt-save')}
        forget={say('sheet-spoilt-forget')}
        onSave={(text) => saveFile(text, 'layout-sheets-damaged')}
        onForget={() => forgetSpoiltSheets()}
      />
      <p class="acts told" role="status">
        {told}
        {deleted !== undefined && (
          <button class="button quiet" type="button" onClick={() => putBack(deleted)}>
            {say('sheet-put-back')}
          </button>
        )}
      </p>
      {work === undefined ? (
        <Start
          say={say}
          language={language}
          kept={shelf.value.sheets}
          onStart={(sheet) => start(sheet, [], true)}
          onOpen={open}
          onDelete={remove}
          onFile={takeIn}
        />
      ) : (
        editor.value !== undefined && (
          <editor.value.Editor
            key={work.kept?.id ?? JSON.stringify(work.sheet)}
            words={{ ...words, ...editor.value.words }}
            language={language}
            wizards={wizards}
            schema={schema}
            sheet={work.nameless ? named(work.sheet, editor.value.words) : work.sheet}
            flaws={work.flaws}
            kept={work.kept}
            fresh={work.fresh}
            onFile={takeIn}
            onLeave={leave}
          />
        )
      )}
      <NotLoaded part={editor} say={say} />
    </>
  );
}

const loadEditor = async (address: string, stop: AbortSignal) => (await import('./editing.ts')).editing(address, stop);

type Read = ReturnType<typeof readSheet> | { readonly problem: { readonly why: 'not-read' } };

/** A file that is too large is not even opened. */
async function readFile(file: File): Promise<Read> {
  if (file.size > 3 * MOST_SHEET_TEXT) return { problem: { why: 'too-large' } };
  try {
    return readSheet(await file.text());
  } catch {
    return { problem: { why: 'not-read' } };
  }
}
