// The case notebook: what is kept on this device, found by words, opened, renamed, deleted, saved as a file and taken in from one.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import {
  type Book,
  changeBook,
  type Fault,
  forgetSpoilt,
  freshMark,
  isFull,
  type Kept,
  MOST_TEXT,
  merged,
  onBook,
  openBook,
  readBook,
  saveFile,
  writeBook,
} from '../device/index.ts';
import { fitting } from '../search/index.ts';
import { Damage, FileButton } from '../shared/index.ts';
import { type Say, sayer } from '../words/index.ts';
import { Answer } from './Answer.tsx';
import { type Change, type Outcome, withChange } from './change.ts';

interface NotebookProps {
  readonly language: string;
  readonly words: Readonly<Record<string, string>>;
}

/** `refused`: the browser keeps nothing; what is shown then came from a file and goes with the page. */
interface Shown extends Book {
  readonly refused: boolean;
}

const SAVED: Readonly<Record<Outcome, string>> = {
  changed: 'notebook-changed',
  both: 'notebook-changed-both',
  again: 'notebook-changed-again',
};

const EMPTY: Book = { kept: [], spoilt: [], before: false };

export default function Notebook({ language, words }: NotebookProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const [book, setBook] = useState<Shown | undefined>(undefined);
  const [typed, setTyped] = useState('');
  const [told, setTold] = useState('');
  const [deleted, setDeleted] = useState<Kept | undefined>(undefined);
  // Those that somebody is changing, as they stood when that began: they stay on the page whatever happens elsewhere.
  const [begun, setBegun] = useState<readonly Kept[]>([]);
  const undo = useRef<HTMLButtonElement>(null);
  useEffect(() => undo.current?.focus(), [deleted]);
  const line = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    const look = () =>
      openBook().then(
        (found) => setBook({ ...found, refused: false }),
        () => setBook((now) => now ?? { ...EMPTY, refused: true }),
      );
    look();
    return onBook(look);
  }, []);
  if (book === undefined) return null;

  /** Changes the notebook and says what came of it; where the browser refuses, nothing has changed. */
  const change = async (how: (kept: readonly Kept[]) => readonly Kept[], done: () => string): Promise<boolean> => {
    try {
      const changed = book.refused ? { ...EMPTY, kept: how(book.kept) } : await changeBook(how);
      setBook({ ...changed, refused: book.refused });
      setTold(done());
      return true;
    } catch (error) {
      setTold(say(isFull(error) ? 'notebook-full' : 'notebook-not-changed'));
      return false;
    }
  };
  const remove = async (answer: Kept): Promise<void> => {
    const done = await change(
      (kept) => kept.filter(({ id }) => id !== answer.id),
      () => say('notebook-deleted', { name: answer.name }),
    );
    if (done) setDeleted(answer);
  };
  const putBack = async (answer: Kept): Promise<void> => {
    const others = (kept: readonly Kept[]) => kept.filter(({ id }) => id !== answer.id);
    if (
      await change(
        (kept) => [...others(kept), answer],
        () => say('notebook-changed', { name: answer.name }),
      )
    ) {
      setDeleted(undefined);
      line.current?.focus();
    }
  };
  const leave = (answer: Kept): void => setBegun((all) => all.filter(({ id }) => id !== answer.id));
  const save = async (before: Kept, written: Change): Promise<void> => {
    let outcome: Outcome = 'changed';
    const done = await change(
      (kept) => {
        const changed = withChange(kept, before, written, freshMark);
        outcome = changed.outcome;
        return changed.kept;
      },
      () => say(SAVED[outcome], { name: written.name ?? before.name }),
    );
    if (done) leave(before);
  };
  const takeIn = async (file: File): Promise<void> => {
    const read = await readFile(file);
    if ('fault' in read) return setTold(faultSaid(read.fault, file.name, say));
    let counted = { added: 0, same: 0, otherwise: 0 };
    await change(
      (kept) => {
        const { kept: all, ...counts } = merged(kept, read.kept, freshMark);
        counted = counts;
        return all;
      },
      () => takenIn(counted, say),
    );
  };

  const fits = fitting(typed);
  const begunAs = (answer: Kept): Kept | undefined => begun.find(({ id }) => id === answer.id);
  const gone = begun.filter(({ id }) => !book.kept.some((one) => one.id === id));
  const shown = [...book.kept, ...gone]
    .filter((one) => begunAs(one) !== undefined || fits(`${one.name} ${one.note} ${one.verdict}`))
    .toSorted((one, other) => (one.on < other.on ? 1 : -1));
  return (
    <>
      <Damage
        spoilt={book.spoilt}
        told={say(book.before ? 'notebook-before' : 'notebook-spoilt')}
        save={say('notebook-spoilt-save')}
        forget={say('notebook-spoilt-forget')}
        onSave={saveFile}
        onForget={() => forgetSpoilt()}
      />
      {book.refused && <p class="warning">{say(book.kept.length === 0 ? 'notebook-refused' : 'notebook-only-read')}</p>}
      {book.kept.length === 0 ? (
        !book.refused && <p>{say('notebook-empty')}</p>
      ) : (
        <label class="field">
          {say('notebook-find')}
          <input type="search" value={typed} onInput={(event) => setTyped(event.currentTarget.value)} />
        </label>
      )}
      {book.kept.length > 0 && (
        <p class="small" role="status">
          {typed.trim() === ''
            ? say('notebook-shown', { n: book.kept.length })
            : say('notebook-found', { n: shown.length, all: book.kept.length })}
        </p>
      )}
      <p ref={line} class="acts told" role="status" tabIndex={-1}>
        {told}{' '}
        {deleted !== undefined && (
          <button ref={undo} class="button quiet" type="button" onClick={() => putBack(deleted)}>
            {say('notebook-undo')}
          </button>
        )}
      </p>
      <ul class="list kept">
        {shown.map((answer) => (
          <li key={answer.id}>
            <Answer
              answer={answer}
              say={say}
              language={language}
              begun={begunAs(answer)}
              onBegin={() => setBegun((all) => [...all, answer])}
              onLeave={() => leave(answer)}
              onSave={(written) => save(begunAs(answer) ?? answer, written)}
              onDelete={() => remove(answer)}
              onTold={setTold}
            />
          </li>
        ))}
      </ul>
      <section class="part">
        <h2>{say('notebook-file')}</h2>
        <p>{say('notebook-file-lead')}</p>
        <p class="acts">
          {book.kept.length > 0 && (
            <button class="button quiet" type="button" onClick={() => saveFile(writeBook(book.kept))}>
              {say('notebook-export')}
            </button>
          )}
          <FileButton label={say('notebook-import')} onFile={takeIn} />
        </p>
      </section>
    </>
  );
}

type Read = ReturnType<typeof readBook> | { readonly fault: { readonly why: 'not-read' } };

/** A file that is too large is not even opened. */
async function readFile(file: File): Promise<Read> {
  if (file.size > 3 * MOST_TEXT) return { fault: { why: 'too-large' } };
  try {
    return readBook(await file.text());
  } catch {
    return { fault: { why: 'not-read' } };
  }
}

function faultSaid(fault: Fault | { readonly why: 'not-read' }, file: string, say: Say): string {
  const at = 'at' in fault ? { at: fault.at } : {};
  const part = 'part' in fault ? { part: say(`notebook-part-${fault.part}`) } : {};
  return say(`notebook-fault-${fault.why}`, { file, ...at, ...part });
}

function takenIn({ added, same, otherwise }: Omit<ReturnType<typeof merged>, 'kept'>, say: Say): string {
  return [
    say('notebook-imported', { added }),
    ...(same > 0 ? [say('notebook-imported-same', { n: same })] : []),
    ...(otherwise > 0 ? [say('notebook-imported-otherwise', { n: otherwise })] : []),
  ].join(' ');
}
