// Everything that a sheet holds, in tables that one goes through by keyboard like a spreadsheet.
import { useRef, useState } from 'preact/hooks';
import type { MeasureSystem } from '../../engine/index.ts';
import type { Column, Edited, Sheet, Table } from '../../wizards/sheet/index.ts';
import {
  COLUMNS,
  cellText,
  islandsIn,
  TABLES,
  WIRING_COLUMNS,
  withCell,
  withMore,
  without,
  withWire,
} from '../../wizards/sheet/index.ts';
import { joined, type Say } from '../words/index.ts';
import { Chosen, Typed } from './Cell.tsx';
import { valueAt } from './Facts.tsx';
import { byKeys } from './keys.ts';
import { Paste } from './Paste.tsx';
import { sectionName, stageName, supplyName, wordOf } from './sayings.ts';

interface TablesProps {
  readonly sheet: Sheet;
  readonly say: Say;
  readonly language: string;
  readonly system: MeasureSystem;
  readonly selected: string | undefined;
  readonly onSelect: (mark: string | undefined) => void;
  readonly onTake: (edited: Edited) => string | undefined;
}

export function Tables(props: TablesProps) {
  const { sheet, say, system, onTake } = props;
  return (
    <>
      <p class="small">{say('sheet-tables-keys')}</p>
      <Islands {...props} />
      {TABLES.map((table) => (
        <details key={table} class="part" open={table === 'sections'}>
          <summary>{say('sheet-table-count', { table: say(`sheet-table-${table}`), n: sheet[table].length })}</summary>
          <Grid {...props} table={table} />
          {(table === 'sections' || table === 'trains') && (
            <Paste sheet={sheet} table={table} say={say} system={system} onTake={onTake} />
          )}
        </details>
      ))}
      <details class="part">
        <summary>{say('sheet-table-wiring')}</summary>
        <div class="sheet-facts">
          {WIRING_COLUMNS.map((column) => (
            <Wire key={column.field} column={column} {...props} />
          ))}
        </div>
      </details>
    </>
  );
}

/** What hangs together, where not everything does. Without any joint the table of joints says so. */
function Islands({ sheet, say, language }: TablesProps) {
  const islands = islandsIn(sheet);
  if (islands.length < 2 || sheet.joints.length === 0) return null;
  return (
    <>
      <p>{say('sheet-islands', { n: islands.length })}</p>
      <ul>
        {islands.map((ids, i) => (
          <li key={ids[0]}>
            {say('sheet-island', {
              n: i + 1,
              sections: joined(
                ids.map((id) => sectionName(sheet, id)),
                language,
              ),
            })}
          </li>
        ))}
      </ul>
    </>
  );
}

function Wire({ column, sheet, say, system, onTake }: TablesProps & { readonly column: Column }) {
  const fields: Readonly<Record<string, unknown>> = { ...sheet.wiring };
  const value = cellText(column, fields[column.field], system);
  const label = headOf(column, say, system);
  const take = (typed: string) => onTake(withWire(sheet, column, typed, system));
  if (column.kind !== 'choice') return <Typed shown numeric label={label} value={value} onTyped={take} />;
  return <Chosen shown label={label} value={value} options={optionsOf(column, say)} onChosen={take} />;
}

type GridProps = TablesProps & { readonly table: Table };

function Grid({ sheet, table, say, system, selected, onSelect, onTake }: GridProps) {
  const grid = useRef<HTMLTableElement>(null);
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const add = (): void => setProblem(onTake(withMore(sheet, table)));
  const columns = COLUMNS[table];
  return (
    <>
      {sheet[table].length === 0 && <p>{say(`sheet-none-${table}`)}</p>}
      <div class="grid-box">
        <table class="grid" ref={grid} onKeyDown={(event) => byKeys(event, add)}>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.field} scope="col">
                  {headOf(column, say, system)}
                </th>
              ))}
              <td />
            </tr>
          </thead>
          <tbody>
            {sheet[table].map((part, at) => {
              const mark = 'id' in part ? part.id : String(at);
              const name = rowName(sheet, table, at, say);
              return (
                <tr
                  // A section keeps its row, and the hand its place, when its mark changes.
                  key={at}
                  class={mark === selected ? 'selected' : undefined}
                  onFocusCapture={() => onSelect('id' in part ? mark : undefined)}
                >
                  {columns.map((column) => (
                    <td key={column.field} data-head={headOf(column, say, system)}>
                      <TableCell
                        sheet={sheet}
                        column={column}
                        value={valueAt(sheet, table, at, column)}
                        label={`${headOf(column, say, system)}, ${name}`}
                        name={name}
                        say={say}
                        system={system}
                        onTyped={(typed) => onTake(withCell(sheet, table, at, column, typed, system))}
                      />
                    </td>
                  ))}
                  <td>
                    <button
                      type="button"
                      aria-label={`${say('sheet-remove')}: ${name}`}
                      onClick={() => setProblem(onTake(without(sheet, table, at)))}
                    >
                      {say('sheet-remove')}
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {problem !== undefined && (
        <p class="error" role="alert">
          {problem}
        </p>
      )}
      <p class="acts">
        <button class="button quiet" type="button" onClick={add}>
          {say(`sheet-add-${table}`)}
        </button>
      </p>
    </>
  );
}

/** What stands above a column: its name, and the sign of its unit where that depends on how one measures. */
function headOf({ field }: Column, say: Say, system: MeasureSystem): string {
  const name = say(`sheet-field-${wordOf(field)}`);
  const units = UNITS[field];
  return units === undefined ? name : `${name}, ${units[system]}`;
}

const LENGTH = { metric: 'm', 'feet-and-gauge': 'ft' } as const;
const WIRE = { metric: 'mm²', 'feet-and-gauge': 'AWG' } as const;
const UNITS: Readonly<Record<string, Readonly<Record<MeasureSystem, string>>>> = {
  metres: LENGTH,
  busMetres: LENGTH,
  feederMetres: LENGTH,
  metresBetweenFeeders: LENGTH,
  busSquareMillimetres: WIRE,
  feederSquareMillimetres: WIRE,
  railOhmsPerMetre: { metric: 'Ω/m', 'feet-and-gauge': 'Ω/ft' },
};

function rowName(sheet: Sheet, table: Table, at: number, say: Say): string {
  const [stage, supply, section] = [sheet.stages[at], sheet.supplies[at], sheet.sections[at]];
  if (table === 'stages' && stage !== undefined) return stageName(sheet, stage, say);
  if (table === 'supplies' && supply !== undefined) return supplyName(sheet, supply, say);
  if (table === 'sections' && section !== undefined) return section.name ?? section.id;
  return say(`sheet-part-${table}`, { at: at + 1 });
}

interface CellProps {
  readonly sheet: Sheet;
  readonly column: Column;
  readonly value: unknown;
  /** Of the field’s column and row. */
  readonly label: string;
  /** What the row is called otherwise. */
  readonly name: string;
  readonly say: Say;
  readonly system: MeasureSystem;
  readonly onTyped: (typed: string) => string | undefined;
}

function TableCell({ sheet, column, value, label, name, say, system, onTyped }: CellProps) {
  const shown = cellText(column, value, system);
  switch (column.kind) {
    case 'text':
      return <Typed label={label} value={shown} otherwise={name} onTyped={onTyped} />;
    case 'number':
    case 'place':
      return <Typed label={label} value={shown} numeric={column.kind === 'number'} onTyped={onTyped} />;
    case 'choice':
      return <Chosen label={label} value={shown} options={optionsOf(column, say)} onChosen={onTyped} />;
    case 'flag': {
      const is = typeof value === 'boolean' ? String(value).replace('true', 'yes').replace('false', 'no') : '';
      return <Chosen label={label} value={is} options={flags(say)} onChosen={onTyped} />;
    }
    case 'section': {
      const options = sheet.sections.map(({ id }) => [id, sectionName(sheet, id)] as const);
      return <Chosen label={label} value={shown} options={options} onChosen={onTyped} />;
    }
    case 'supply': {
      const options = sheet.supplies.map((supply) => [supply.id, supplyName(sheet, supply, say)] as const);
      return (
        <Chosen label={label} value={shown} options={[['', say('sheet-untold')], ...options]} onChosen={onTyped} />
      );
    }
    case 'choices': {
      const options = column.options.map((tag) => [tag, say(`sheet-tag-${tag}`)] as const);
      return <Several label={label} value={value} options={options} say={say} onTyped={onTyped} />;
    }
    case 'sections': {
      const options = sheet.sections.map(({ id }) => [id, sectionName(sheet, id)] as const);
      return <Several label={label} value={value} options={options} say={say} onTyped={onTyped} />;
    }
  }
}

type Options = readonly (readonly [value: string, said: string])[];

function optionsOf(column: Column, say: Say): Options {
  if (column.kind !== 'choice') return [];
  const said = column.options.map((one) => {
    const id = `${wordOf(column.field)}-${one}`;
    return [one, say(`sheet-option-${id}`)] as const;
  });
  return column.needed === true ? said : [['', say('sheet-untold')], ...said];
}

const flags = (say: Say): Options => [
  ['', say('sheet-untold')],
  ['yes', say('sheet-yes')],
  ['no', say('sheet-no')],
];

interface SeveralProps {
  readonly label: string;
  readonly value: unknown;
  readonly options: Options;
  readonly say: Say;
  readonly onTyped: (typed: string) => string | undefined;
}

/** Any number of a list, folded: what is chosen stands in its head. */
function Several({ label, value, options, say, onTyped }: SeveralProps) {
  const [problem, setProblem] = useState<string | undefined>(undefined);
  const chosen = options.map(([one]) => one).filter((one) => Array.isArray(value) && value.includes(one));
  const names = options.filter(([one]) => chosen.includes(one)).map(([, name]) => name);
  const said = names.length === 0 ? say('sheet-choose') : names.join(', ');
  return (
    <details class="several">
      <summary aria-label={`${said}, ${label}`}>{said}</summary>
      <fieldset class="plain">
        <legend>{label}</legend>
        {options.map(([one, name]) => (
          <label key={one}>
            <input
              type="checkbox"
              checked={chosen.includes(one)}
              onChange={({ currentTarget }) => {
                const now = currentTarget.checked ? [...chosen, one] : chosen.filter((other) => other !== one);
                const refused = onTyped(now.join(' '));
                setProblem(refused);
                if (refused !== undefined) currentTarget.checked = chosen.includes(one);
              }}
            />
            {name}
          </label>
        ))}
        {problem !== undefined && (
          <span class="error" role="alert">
            {problem}
          </span>
        )}
      </fieldset>
    </details>
  );
}
