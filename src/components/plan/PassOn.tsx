// Passing a plan on: on paper, as tables, and as a link that holds the sheet itself.
import { useState } from 'preact/hooks';
import { csvOf } from '../../wizards/plan/index.ts';
import { saveFile, toClipboard } from '../device/index.ts';
import { linkTo, TooLong } from '../kept-sheets/index.ts';
import type { PartProps } from './props.ts';
import { partsTable, testTable } from './said.ts';

export function PassOn(told: PartProps) {
  const { plan, say, language } = told;
  const [status, setStatus] = useState('');
  const save = (name: string, rows: readonly (readonly string[])[]): void =>
    saveFile(csvOf(rows, language), name, 'csv');
  const copy = async (): Promise<void> => {
    try {
      await toClipboard(linkTo(plan.sheet));
      setStatus(say('plan-copied'));
    } catch (error) {
      setStatus(say(error instanceof TooLong ? 'plan-too-large' : 'plan-copy-failed'));
    }
  };
  return (
    <p class="share">
      {plan.stops.length === 0 && (
        <>
          <button type="button" onClick={() => print()}>
            {say('plan-print')}
          </button>
          <button type="button" onClick={() => save('parts', partsTable(plan, told))}>
            {say('plan-csv-parts')}
          </button>
          <button type="button" onClick={() => save('test-sheet', testTable(plan, told))}>
            {say('plan-csv-tests')}
          </button>
        </>
      )}
      <button type="button" onClick={copy}>
        {say('plan-copy-link')}
      </button>
      <span role="status">{status}</span>
    </p>
  );
}
