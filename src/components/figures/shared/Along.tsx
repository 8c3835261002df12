// Something along a track: volts at a train that stands there, or the amperes of a short. Per cent across, pixels up.
import { ticks } from 'd3-array';
import { useRef } from 'preact/hooks';
import type { Say } from '../../words/index.ts';

export interface Point {
  /** Metres from the start of the track. */
  readonly at: number;
  readonly value: number;
}

/** A level to compare with. */
export interface Level {
  readonly value: number;
  readonly label: string;
  readonly strong: boolean;
}

export interface Feed {
  readonly at: number;
  readonly label: string;
  /** Nobody has told of it: drawn dashed. */
  readonly assumed?: boolean;
  /** Absent: the feed cannot be moved. */
  readonly onMove?: (at: number) => void;
}

interface Props {
  readonly id: string;
  readonly title: string;
  readonly caption: string;
  readonly length: number;
  readonly points: readonly Point[];
  readonly levels: readonly Level[];
  readonly range: { readonly from: number; readonly to: number };
  /** Each doubling is as high as the next, where the values reach too far for an even scale; `from` is above 0 then. */
  readonly doubling?: boolean;
  readonly feeds: readonly Feed[];
  /** Where a train or a short stands, and what is read there. */
  readonly spot: { readonly at: number; readonly value: number; readonly label: string } | undefined;
  /** Stretches that fail, metres. */
  readonly weak: readonly { readonly from: number; readonly to: number }[];
  readonly metres: (value: number) => string;
  readonly show: (value: number) => string;
  readonly axis: string;
  readonly valueColumn: string;
  readonly say: Say;
}

const TOP = 14;
const HEIGHT = 190;
const TRACK = TOP + HEIGHT + 26;
const BOTTOM = TRACK + 62;
const WIDE = 1000;
const TABLE_ROWS = 11;

export function Along(props: Props) {
  const { id, title, caption, length, points, levels, range, feeds, spot, weak, metres, show, say } = props;
  const { doubling = false } = props;
  const drawing = useRef<SVGSVGElement>(null);
  const x = (at: number): number => (100 * at) / length;
  const scaled = (value: number): number => (doubling ? Math.log2(value) : value);
  const y = (value: number): number =>
    TOP + (HEIGHT * (scaled(range.to) - scaled(value))) / (scaled(range.to) - scaled(range.from));
  const inside = (value: number): number => y(Math.min(range.to, Math.max(range.from, value)));
  const line = points
    .map(({ at, value }, i) => `${i === 0 ? 'M' : 'L'}${tenth((WIDE * at) / length)} ${tenth(y(value))}`)
    .join('');
  return (
    <figure class="sheet">
      <ul class="along-key">
        {levels.map((level) => (
          <li key={level.label}>
            <svg class="histogram along" width="34" height="10" aria-hidden="true">
              <g class={level.strong ? 'mark strong' : 'mark'}>
                <line x1="0" x2="34" y1="5" y2="5" stroke-dasharray="7 5" />
              </g>
            </svg>{' '}
            {level.label}
          </li>
        ))}
      </ul>
      <svg
        ref={drawing}
        class="histogram along"
        width="100%"
        height={BOTTOM}
        role="img"
        aria-labelledby={`${id}-title`}
      >
        <title id={`${id}-title`}>{title}</title>
        {weak.map((stretch) => (
          <rect
            key={stretch.from}
            class="weak"
            x={`${x(stretch.from)}%`}
            width={`${x(stretch.to - stretch.from)}%`}
            y={TOP}
            height={HEIGHT}
          />
        ))}
        <svg
          x="0"
          y={TOP - 4}
          width="100%"
          height={HEIGHT + 8}
          viewBox={`0 ${TOP - 4} ${WIDE} ${HEIGHT + 8}`}
          preserveAspectRatio="none"
        >
          <path class="curve" d={line} vector-effect="non-scaling-stroke" />
        </svg>
        {levels.map((level) => (
          <g key={level.label} class={level.strong ? 'mark strong' : 'mark'}>
            <line x1="0" x2="100%" y1={y(level.value)} y2={y(level.value)} stroke-dasharray="7 5" />
          </g>
        ))}
        <Track />
        {spot !== undefined && (
          <g class="spot">
            <line x1={`${x(spot.at)}%`} x2={`${x(spot.at)}%`} y1={inside(spot.value)} y2={TRACK - 7} />
            <circle cx={`${x(spot.at)}%`} cy={inside(spot.value)} r="6" />
            <text
              x={`${x(spot.at)}%`}
              y={inside(spot.value) + BELOW}
              dx={isLeft(points, spot.at / length, length) ? -9 : 9}
              text-anchor={isLeft(points, spot.at / length, length) ? 'end' : 'start'}
            >
              {spot.label}
            </text>
          </g>
        )}
        {feeds.map((feed, index) => (
          <Handle
            key={feed.assumed === true ? feed.at : feed.label}
            feed={feed}
            index={index}
            x={x(feed.at)}
            length={length}
            drawing={drawing}
          />
        ))}
        <text x="0" y={BOTTOM - 4}>
          {metres(0)}
        </text>
        <text x="50%" y={BOTTOM - 4} text-anchor="middle">
          {props.axis}
        </text>
        <text x="100%" y={BOTTOM - 4} text-anchor="end">
          {metres(length)}
        </text>
      </svg>
      <figcaption>{caption}</figcaption>
      <details>
        <summary>{say('as-a-table')}</summary>
        <table class="num">
          <caption class="unseen">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{say('along-at')}</th>
              <th scope="col">{props.valueColumn}</th>
            </tr>
          </thead>
          <tbody>
            {few(points).map(({ at, value }) => (
              <tr key={at}>
                <td>{metres(at)}</td>
                <td>{show(value)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

/** The label of the spot stands below its point, pixels. */
const BELOW = 20;
/** About as wide as it is, as a share of a narrow picture. */
const LABEL = 0.2;

/** Finer than anybody sees it. */
const tenth = (value: number): number => Math.round(10 * value) / 10;

/** Whether the label stands to the left of its spot: below the curve, so on the side where the curve is higher, and inside the picture. */
function isLeft(points: readonly Point[], spot: number, length: number): boolean {
  if (spot < LABEL) return false;
  if (spot > 1 - LABEL) return true;
  const lowest = (from: number, to: number): number =>
    Math.min(...points.flatMap(({ at, value }) => (at >= from * length && at <= to * length ? [value] : [])));
  return lowest(spot - LABEL, spot) > lowest(spot, spot + LABEL);
}

function Track() {
  const sleepers = ticks(0, 100, 24).filter((place) => place > 0 && place < 100);
  return (
    <g class="rails">
      {sleepers.map((place) => (
        <line key={place} class="sleeper" x1={`${place}%`} x2={`${place}%`} y1={TRACK - 9} y2={TRACK + 9} />
      ))}
      <line x1="0" x2="100%" y1={TRACK - 5} y2={TRACK - 5} />
      <line x1="0" x2="100%" y1={TRACK + 5} y2={TRACK + 5} />
    </g>
  );
}

interface HandleProps {
  readonly feed: Feed;
  readonly index: number;
  readonly x: number;
  readonly length: number;
  readonly drawing: { readonly current: SVGSVGElement | null };
}

// By pointer here; by keyboard with the slider of the same name below the figure.
function Handle({ feed, index, x, length, drawing }: HandleProps) {
  const { onMove } = feed;
  const drag = (event: PointerEvent): void => {
    const box = drawing.current?.getBoundingClientRect();
    if (box === undefined || event.buttons === 0 || box.width === 0) return;
    const share = (event.clientX - box.left) / box.width;
    onMove?.(Math.round(Math.min(1, Math.max(0, share)) * length * 100) / 100);
  };
  return (
    <svg
      class={['feed', ...(onMove === undefined ? [] : ['movable']), ...(feed.assumed === true ? ['assumed'] : [])].join(
        ' ',
      )}
      x={`${x}%`}
      y={TRACK + 5}
      overflow="visible"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        drag(event);
      }}
      onPointerMove={drag}
      data-feed={index}
    >
      <rect class="grip" x="-22" y="-6" width="44" height="44" />
      <path d="M-4 0v17M4 0v17" />
      <circle cx="0" cy="25" r="9" />
      <text x="0" y="29.5" text-anchor="middle">
        {feed.label}
      </text>
    </svg>
  );
}

function few(points: readonly Point[]): Point[] {
  const per = Math.max(1, Math.ceil((points.length - 1) / (TABLE_ROWS - 1)));
  return points.filter((_, i) => i % per === 0 || i === points.length - 1);
}
