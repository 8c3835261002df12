// Rows from a spreadsheet: pasted, read, and what was not read told line by line.
import { useState } from 'preact/hooks';
import type { MeasureSystem } from '../../engine/index.ts';
import type { Edited, Pasted, PastedTable, Sheet } from '../../wizards/sheet/index.ts';
import { PASTED, pasted } from '../../wizards/sheet/index.ts';
import type { Say } from '../words/index.ts';
import { wordOf } from './sayings.ts';

interface PasteProps {
  readonly sheet: Sheet;
  readonly table: PastedTable;
  readonly say: Say;
  readonly system: MeasureSystem;
  readonly onTake: (edited: Edited) => string | undefined;
}

export function Paste({ sheet, table, say, system, onTake }: PasteProps) {
  const [text, setText] = useState('');
  const [joined, setJoined] = useState(true);
  const [read, setRead] = useState<Pasted | undefined>(undefined);
  const take = (event: Event): void => {
    event.preventDefault();
    const found = pasted(sheet, table, text, { joined: joined && table === 'sections', bare: system });
    setRead(found);
    if (found.added === 0) return;
    onTake({ sheet: found.sheet });
    if (found.unread.length === 0) setText('');
  };
  const order = PASTED[table].map((field) => say(`sheet-field-${wordOf(field)}`)).join(' · ');
  return (
    <details class="paste">
      <summary>{say('sheet-paste')}</summary>
      <form class="keep" onSubmit={take}>
        <label class="field">
          {say('sheet-paste-rows')}
          <small>{say('sheet-paste-order', { order })}</small>
          <textarea rows={5} value={text} onInput={({ currentTarget }) => setText(currentTarget.value)} />
        </label>
        {table === 'sections' && (
          <label class="unknown">
            <input
              type="checkbox"
              checked={joined}
              onChange={({ currentTarget }) => setJoined(currentTarget.checked)}
            />
            {say('sheet-paste-joined')}
          </label>
        )}
        <p class="acts">
          <button class="button quiet" type="submit" disabled={text.trim() === ''}>
            {say('sheet-paste-do')}
          </button>
        </p>
      </form>
      <div role="status">
        {read !== undefined && <p>{say('sheet-paste-added', { n: read.added })}</p>}
        {read?.heading !== undefined && <p>{say('sheet-paste-heading', { line: read.heading })}</p>}
        {read !== undefined && read.unread.length > 0 && (
          <ul>
            {read.unread.map(({ line, field, given }) => (
              <li key={line}>
                {field === undefined
                  ? say('sheet-paste-too-many', { line, given })
                  : say('sheet-paste-unread', { line, given, field: say(`sheet-field-${wordOf(field)}`) })}
              </li>
            ))}
          </ul>
        )}
      </div>
    </details>
  );
}
