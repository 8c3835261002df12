// Passing a plan on: on paper, as tables, and as a link that holds the sheet itself.
import { useState } from 'preact/hooks';
import { csvOf } from '../../wizards/plan/index.ts';
import { saveFile } from '../device/index.ts';
import { MOST_LINK, packSheet } from '../kept-sheets/index.ts';
import type { PartProps } from './props.ts';
import { partsTable, testTable } from './said.ts';

export function PassOn(told: PartProps) {
  const { plan, say, language } = told;
  const [status, setStatus] = useState('');
  const save = (name: string, rows: readonly (readonly string[])[]): void =>
    saveFile(csvOf(rows, language), name, 'csv');
  const copy = async (): Promise<void> => {
    const link = `${location.origin}${location.pathname}#sheet=${await packSheet(plan.sheet)}`;
    if (link.length > MOST_LINK) return setStatus(say('plan-too-large'));
    await navigator.clipboard.writeText(link);
    setStatus(say('plan-copied'));
  };
  return (
    <p class="share">
      <button type="button" onClick={() => print()}>
        {say('plan-print')}
      </button>
      <button type="button" onClick={() => save('parts', partsTable(plan, told))}>
        {say('plan-csv-parts')}
      </button>
      <button type="button" onClick={() => save('test-sheet', testTable(plan, told))}>
        {say('plan-csv-tests')}
      </button>
      <button type="button" onClick={() => copy().catch(() => setStatus(say('plan-copy-failed')))}>
        {say('plan-copy-link')}
      </button>
      <span role="status">{status}</span>
    </p>
  );
}
