// What a beginner tells of a layout: how many trains, the scale, and what stands on each unit and supply.
import type { Edited, Sheet, SheetStage, SheetTrains } from '../../wizards/sheet/index.ts';
import { COLUMNS, type Column, cellText, type Table, withCell, withMore, withTold } from '../../wizards/sheet/index.ts';
import type { Say } from '../words/index.ts';
import { Typed } from './Cell.tsx';
import { ScaleField } from './Start.tsx';
import { stageName } from './sayings.ts';

interface FactsProps {
  readonly sheet: Sheet;
  readonly say: Say;
  readonly onTake: (edited: Edited) => string | undefined;
}

export function Facts({ sheet, say, onTake }: FactsProps) {
  return (
    <section class="part">
      <h2>{say('sheet-facts')}</h2>
      <div class="sheet-facts">
        <ScaleField say={say} scale={sheet.scale} onScale={(scale) => onTake(withTold(sheet, 'scale', scale))} />
        {sheet.trains.map((group, at) => (
          <One
            key={at}
            sheet={sheet}
            table="trains"
            at={at}
            field="count"
            label={group.name ?? groupName(group, say)}
            say={say}
            onTake={onTake}
          />
        ))}
        <Typed
          shown
          numeric
          label={say('sheet-field-moving')}
          hint={say('sheet-moving-hint')}
          value={sheet.moving === undefined ? '' : String(sheet.moving)}
          onTyped={(typed) => onTake(withTold(sheet, 'moving', typed.trim() === '' ? undefined : Number(typed)))}
        />
      </div>
      <div class="stages">
        {sheet.stages.map((stage, at) => (
          <Stage key={stage.id} stage={stage} at={at} sheet={sheet} say={say} onTake={onTake} />
        ))}
      </div>
      <p class="acts">
        <button class="button quiet" type="button" onClick={() => onTake(withMore(sheet, 'trains'))}>
          {say('sheet-more-trains')}
        </button>
        <button class="button quiet" type="button" onClick={() => onTake(withMore(sheet, 'stages'))}>
          {say('sheet-more-stages')}
        </button>
      </p>
    </section>
  );
}

function groupName({ kind, sound }: SheetTrains, say: Say): string {
  return sound === true ? say(`sheet-sounding-${kind}`) : say(`sheet-trains-${kind}`);
}

type StageProps = FactsProps & { readonly stage: SheetStage; readonly at: number };

/** A unit and the supply that feeds it. */
function Stage({ stage, at, sheet, say, onTake }: StageProps) {
  const supply = sheet.supplies.findIndex(({ id }) => id === stage.supply);
  const given = { sheet, say, onTake };
  return (
    <fieldset class="stage">
      <legend>{stageName(sheet, stage, say)}</legend>
      <div class="sheet-facts">
        <One {...given} table="stages" at={at} field="limitAmps" label={say('sheet-limit')} />
        {supply >= 0 && <One {...given} table="supplies" at={supply} field="volts" label={say('sheet-supply-volts')} />}
        {supply >= 0 && <One {...given} table="supplies" at={supply} field="amps" label={say('sheet-supply-amps')} />}
      </div>
    </fieldset>
  );
}

type OneProps = FactsProps & {
  readonly table: Table;
  readonly at: number;
  readonly field: string;
  readonly label: string;
};

function One({ sheet, say: _, onTake, table, at, field, label }: OneProps) {
  const column = COLUMNS[table].find((one) => one.field === field);
  if (column === undefined) return null;
  return (
    <Typed
      shown
      numeric
      label={label}
      value={cellText(column, valueAt(sheet, table, at, column))}
      onTyped={(typed) => onTake(withCell(sheet, table, at, column, typed))}
    />
  );
}

export function valueAt(sheet: Sheet, table: Table, at: number, { field }: Column): unknown {
  const part: Readonly<Record<string, unknown>> = { ...sheet[table][at] };
  return part[field];
}
