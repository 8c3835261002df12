// Takes the answers in the address into the sheet last opened, or into a new one; says so, leads there, and can be taken back.
import { useEffect, useState } from 'preact/hooks';
import { parseAddress, QUESTIONS } from '../../wizards/planning/index.ts';
import { EMPTY_SHEET, withAnswers } from '../../wizards/sheet/index.ts';
import { isFull } from '../device/index.ts';
import { deleteSheet, type KeptSheet, openSheet, putSheet } from '../kept-sheets/index.ts';
import type { Say } from '../words/index.ts';
import type { TakeInProps } from './given.ts';

/** `before`: the sheet as it was; undefined for a new one. `beside`: one that was open has a layout of its own, and is left as it is. */
interface Done {
  readonly now: KeptSheet;
  readonly before: KeptSheet | undefined;
  readonly beside: boolean;
}

export function Taken({ say, home, into }: TakeInProps) {
  const [done, setDone] = useState<Done | undefined>(undefined);
  const [told, setTold] = useState('');
  const refused = (error: unknown): void => setTold(say(isFull(error) ? 'take-full' : 'take-refused'));
  useEffect(() => {
    take(into).then((taken) => {
      setDone(taken);
      setTold(takenSaid(taken, say));
    }, refused);
  }, []);
  const back = (taken: Done): void => {
    takeBack(taken).then(() => {
      setDone(undefined);
      setTold(say('taken-back'));
    }, refused);
  };
  return (
    <div class="keep">
      <p role="status">{told}</p>
      {done !== undefined && (
        <>
          <a href={`${home}layout-sheet/`}>{say('taken-open')}</a>{' '}
          <button type="button" onClick={() => back(done)}>
            {say('take-back')}
          </button>
        </>
      )}
    </div>
  );
}

function takenSaid({ now, before, beside }: Done, say: Say): string {
  if (beside) return say('taken-beside');
  const { name } = now.sheet;
  return before === undefined || name === '' ? say('taken-new') : say('taken', { name });
}

async function take(into: TakeInProps['into']): Promise<Done> {
  const { answers } = parseAddress(Object.values(QUESTIONS), location.search);
  const opened = await openSheet('');
  const before = 'sheet' in opened ? opened.kept : undefined;
  if (into === undefined) {
    const { kept } = await putSheet(withAnswers(before?.sheet ?? EMPTY_SHEET, answers), before);
    return { now: kept, before, beside: false };
  }
  const { sheet, fresh } = await into(before?.sheet, answers);
  const { kept } = await putSheet(sheet, fresh ? undefined : before);
  return { now: kept, before: fresh ? undefined : before, beside: fresh && before !== undefined };
}

async function takeBack({ now, before }: Done): Promise<void> {
  if (before === undefined) await deleteSheet(now.id);
  else await putSheet(before.sheet, now);
}
