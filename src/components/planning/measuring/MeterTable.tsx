// The same volts as each kind of meter shows them.
import type { GapReading, MeterKind } from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

interface Props {
  readonly columns: readonly string[];
  readonly rows: readonly { readonly meter: MeterKind; readonly readings: readonly GapReading[] }[];
  readonly say: Say;
  readonly numbers: Numbers;
}

export function MeterTable({ columns, rows, say, numbers }: Props) {
  return (
    <div class="part">
      <table class="cards">
        <thead>
          <tr>
            <th scope="col">{say('measure-meter')}</th>
            {columns.map((column) => (
              <th key={column} scope="col" class="num">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ meter, readings }) => (
            <tr key={meter}>
              <th scope="row">{say(`measure-${meter}`)}</th>
              {readings.map((reading, i) => (
                <td key={columns[i]} class="num" data-label={columns[i]}>
                  {shown(reading, say, numbers)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">{say('measure-how')}</p>
    </div>
  );
}

function shown(reading: GapReading, say: Say, numbers: Numbers): string {
  switch (reading.kind) {
    case 'shows':
      return numbers.volts(reading.volts);
    case 'means-nothing':
      return say('measure-nothing', { volts: numbers.volts(reading.below) });
    case 'between':
      return say('table-range', { from: numbers.volts(reading.volts.from), to: numbers.volts(reading.volts.to) });
    case 'floats':
      return '–';
  }
}
