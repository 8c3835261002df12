// How often each total current occurs. Horizontal places are per cent, heights pixels: text keeps its size at any width.
import { ticks } from 'd3-array';
import type { Bar } from '../../../engine/index.ts';
import { gather, isAbove } from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

interface Props {
  readonly bars: readonly Bar[];
  readonly usable: number | undefined;
  readonly hard: number | undefined;
  readonly title: string;
  readonly caption: string;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly id: string;
}

const TOP = 56;
const HEIGHT = 190;
const BOTTOM = 46;
/** Few enough rows to be read aloud. */
const TABLE_ROWS = 14;

export function Histogram({ bars, usable, hard, title, caption, say, numbers, id }: Props) {
  const last = bars.at(-1)?.to ?? 1;
  const range = Math.max(last, (hard ?? 0) * 1.08, 0.1);
  const tallest = Math.max(1e-9, ...bars.map((bar) => bar.probability));
  const x = (amps: number): number => (100 * amps) / range;
  /** Words that go to the left stand above the line on their left, words that go to the right above the one on their right. */
  const hardAbove = hard !== undefined && x(hard) > ROOM;
  const marks = ticks(0, range, 6).filter((amps) => x(amps) > 2 && x(amps) < 93);
  return (
    <figure class="sheet">
      <svg class="histogram" width="100%" height={TOP + HEIGHT + BOTTOM} role="img" aria-labelledby={`${id}-title`}>
        <title id={`${id}-title`}>{title}</title>
        <defs>
          {/* No pattern: on paper that becomes a picture of several megabytes. */}
          <linearGradient id={`${id}-hatch`} gradientUnits="userSpaceOnUse" x2="5" y2="-5" spreadMethod="repeat">
            <stop offset="0.57" stop-color="var(--copper-wash)" />
            <stop offset="0.57" stop-color="var(--copper)" />
          </linearGradient>
        </defs>
        {bars.map((bar) => {
          const height = (HEIGHT * bar.probability) / tallest;
          const over = usable !== undefined && isAbove(bar, usable);
          const width = x(bar.to) - x(bar.from);
          return (
            <rect
              key={bar.from}
              x={`${x(bar.from) + width * 0.08}%`}
              width={`${width * 0.84}%`}
              y={TOP + HEIGHT - height}
              height={height}
              fill={over ? `url(#${id}-hatch)` : 'var(--a)'}
            />
          );
        })}
        <line x1="0" x2="100%" y1={TOP + HEIGHT} y2={TOP + HEIGHT} stroke="currentColor" stroke-width="1.5" />
        {marks.map((amps) => (
          <text key={amps} x={`${x(amps)}%`} y={TOP + HEIGHT + 20} text-anchor="middle">
            {numbers.ampsExactly(amps)}
          </text>
        ))}
        <text x="50%" y={TOP + HEIGHT + 41} text-anchor="middle">
          {say('figure-axis')}
        </text>
        {hard !== undefined && (
          <Mark at={x(hard)} row={hardAbove ? 0 : 1} text={say('figure-hard', { amps: numbers.ampsExactly(hard) })} />
        )}
        {usable !== undefined && (
          <Mark
            at={x(usable)}
            row={hardAbove ? 1 : 0}
            text={say('figure-usable', { amps: numbers.ampsExactly(usable) })}
            strong
          />
        )}
      </svg>
      <figcaption>{caption}</figcaption>
      <details>
        <summary>{say('as-a-table')}</summary>
        <table class="num">
          <caption class="unseen">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{say('table-current')}</th>
              <th scope="col">{say('table-share')}</th>
            </tr>
          </thead>
          <tbody>
            {gather(bars, TABLE_ROWS).map((row) => (
              <tr key={row.from}>
                <td>{say('table-range', { from: numbers.ampsExactly(row.from), to: numbers.ampsExactly(row.to) })}</td>
                <td>{numbers.share(row.probability)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

/** Per cent of a narrow picture that the words of a mark take. */
const ROOM = 44;

function Mark({ at, row, text, strong = false }: { at: number; row: number; text: string; strong?: boolean }) {
  const y = 16 + row * 22;
  const left = at > ROOM;
  return (
    <g class={strong ? 'mark strong' : 'mark'}>
      <line x1={`${at}%`} x2={`${at}%`} y1={y - 12} y2={TOP + HEIGHT} />
      <text x={`${at}%`} y={y} dx={left ? -7 : 7} text-anchor={left ? 'end' : 'start'}>
        {text}
      </text>
    </g>
  );
}
