// The track itself. Each section, name and joint lies where the layout was laid; a district is a colour and a pattern along its track. All track of
// a district is one line, so another division changes a few lines only.
import { useRef, useState } from 'preact/hooks';
import type { SectionTag } from '../../wizards/sheet/index.ts';
import type { Box, JointState, LaidSection } from '../../wizards/sheet-drawing/index.ts';
import { nextTo, type Spot } from './keys.ts';
import { linesByDistrict } from './lines.ts';
import { hasPattern, lookOf } from './look.ts';
import { jointSaid, sectionSaid } from './said.ts';
import type { DiagramProps, Selected, Shown } from './shown.ts';

interface TrackProps extends DiagramProps, Shown {
  /** For paper: a part of it only, with `children` over it. */
  readonly part?: Box;
}

const keyOf = (kind: Selected['kind'], id: string): string => `${kind} ${id}`;

export function Track(props: TrackProps) {
  const { laid, dressed, say, selected, onSelect } = props;
  const { x: left, y: top, width, height } = props.part ?? { x: 0, y: 0, ...laid };
  const drawing = useRef<SVGSVGElement>(null);
  const [at, setAt] = useState<string | undefined>(undefined);
  const chooses = onSelect !== undefined;
  const spots = chooses ? spotsOf(props) : [];
  const here = at !== undefined && spots.some(({ key }) => key === at) ? at : spots[0]?.key;
  const go = (event: KeyboardEvent): void => {
    const to = here === undefined ? undefined : nextTo(spots, here, event.key);
    if (to === undefined) return;
    event.preventDefault();
    setAt(to);
    drawing.current?.querySelector<SVGElement>(`[data-key="${to}"]`)?.focus();
  };
  /** What a section or joint is to a hand and to a reader; without a choice it is part of a picture. */
  const handle = (kind: Selected['kind'], id: string) => {
    const pressed = selected?.kind === kind && selected.id === id;
    if (onSelect === undefined) return { class: pressed ? `${kind} selected` : kind };
    const key = keyOf(kind, id);
    const choose = (): void => {
      setAt(key);
      onSelect(pressed ? undefined : { kind, id });
    };
    return {
      class: pressed ? `${kind} selected` : kind,
      'data-key': key,
      role: 'button',
      // In small letters: drawn in the browser, a part of a drawing knows it by no other spelling.
      tabindex: key === here ? 0 : -1,
      'aria-pressed': pressed,
      'aria-label': kind === 'section' ? sectionSaid(id, props) : jointSaid(id, props),
      onClick: choose,
      onKeyDown: (event: KeyboardEvent) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        choose();
      },
    } as const;
  };
  return (
    <svg
      ref={drawing}
      width={width}
      height={height}
      viewBox={`${left} ${top} ${width} ${height}`}
      role={chooses ? 'group' : 'img'}
      aria-label={say(chooses ? 'diagram-choose' : 'diagram-picture')}
      onKeyDown={chooses ? go : undefined}
    >
      <Lines {...props} />
      {laid.sections.map((section) => (
        <g key={section.id} {...handle('section', section.id)}>
          <Section section={section} {...props} />
        </g>
      ))}
      {laid.joints.map(({ id, at: { x, y }, turned }) => (
        <g key={id} transform={`translate(${x} ${y})`} {...handle('joint', id)}>
          <circle class="grip" r="20" />
          <JointMark state={dressed.joints.get(id)?.state ?? 'joined'} turned={turned} />
          <GapNumber number={props.gapNumbers?.get(id)} turned={turned} />
        </g>
      ))}
      <Names {...props} />
      {props.part !== undefined && props.children}
    </svg>
  );
}

/** Where sections and joints can be reached by the arrow keys, in the order of the sheet. */
const spotsOf = ({ laid }: TrackProps): readonly Spot[] => [
  ...laid.sections.map(({ id, left, right, y }) => ({ key: keyOf('section', id), x: (left + right) / 2, y })),
  ...laid.joints.map(({ id, at }) => ({ key: keyOf('joint', id), ...at })),
];

/** All track; where one passes over another, that one is broken below it. */
export function Lines({ laid, dressed }: Pick<Shown, 'laid' | 'dressed'>) {
  return (
    <>
      {linesByDistrict(laid, dressed).map(([look, d]) => (
        <Line key={look} look={look} d={d} />
      ))}
      {laid.over.map(({ joint, part, x, y, turned }) => {
        const found = dressed.joints.get(joint);
        const section = part === 'from' ? found?.from : found?.to;
        return (
          <g key={`${joint} ${x} ${y}`} transform={`translate(${x} ${y}) rotate(${turned})`}>
            <line class="under" x1="-11" x2="11" />
            <Line look={lookOf(section === undefined ? undefined : dressed.districtOf.get(section))} d="M-12 0h24" />
          </g>
        );
      })}
    </>
  );
}

function Line({ look, d }: { readonly look: string; readonly d: string }) {
  return (
    <g class={look}>
      <path class="track" d={d} />
      {hasPattern(look) && <path class="pattern" d={d} />}
    </g>
  );
}

export function Section({
  section,
  sheet,
  dressed,
}: { readonly section: LaidSection } & Pick<Shown, 'sheet' | 'dressed'>) {
  const { id, left, right, y } = section;
  const place = dressed.districtOf.get(id);
  const district = place === undefined ? undefined : dressed.districts[place];
  const middle = (left + right) / 2;
  const tags = sheet.sections.find((one) => one.id === id)?.tags ?? [];
  return (
    <>
      <rect class="grip" x={left} y={y - 20} width={right - left} height="40" rx="6" />
      {tags.map((tag) => (
        <Tag key={tag} tag={tag} left={left} right={right} y={y} />
      ))}
      {district?.fed.includes(id) && <Feed x={left + 14} y={y} />}
      {district !== undefined && (
        <rect class={`plate ${lookOf(place)}`} x={middle - 10} y={y - 10} width="20" height="20" rx="4" />
      )}
    </>
  );
}

const UNREAD = { 'aria-hidden': true } as const;

/** Names and letters: each section is called by both already where it can be chosen, so a reader passes these over. */
export function Names({ laid, dressed, names }: Pick<Shown, 'laid' | 'dressed' | 'names'>) {
  return (
    <g class="names" {...UNREAD}>
      {laid.sections.map(({ id, left, right, y, lines }) => (
        <g key={id}>
          {dressed.districtOf.has(id) && (
            <text class="letter" x={(left + right) / 2} y={y + 5}>
              {dressed.districts[dressed.districtOf.get(id) ?? 0]?.letter}
            </text>
          )}
          {lines.map((line, i) => (
            <text key={i} x={line.x} y={line.y}>
              {line.text.endsWith('…') && <title>{names.get(id)}</title>}
              {line.text}
            </text>
          ))}
        </g>
      ))}
    </g>
  );
}

interface TagProps {
  readonly tag: SectionTag;
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

/** What a stretch is, as signs at the track: a platform, tunnel mouths, a loop's arrows, a bridge that turns. */
export function Tag({ tag, left, right, y }: TagProps) {
  const middle = (left + right) / 2;
  switch (tag) {
    case 'station':
      return <rect class="sign" x={left + 22} y={y + 9} width={right - left - 44} height="6" />;
    case 'stop':
      return <path class="sign" d={`M${right - 26} ${y + 9}h14v6h-14z`} />;
    case 'hidden':
      return <path class="sign open" d={`M${left + 10} ${y - 9}l-6 3v12l6 3M${right - 10} ${y - 9}l6 3v12l-6 3`} />;
    case 'turntable':
      return <circle class="sign open" cx={middle} cy={y} r="13" />;
    case 'reversing':
      return <path class="sign open" d={`M${middle - 22} ${y + 12}h44m-6-4 6 4-6 4m-32-8-6 4 6 4`} />;
    case 'lift-out':
      return <path class="sign open" d={`M${left + 6} ${y + 9}l6-18M${right - 12} ${y + 9}l6-18`} />;
    case 'programming':
      return <path class="sign open dashed" d={`M${left + 4} ${y + 12}h${right - left - 8}`} />;
    default:
      return null;
  }
}

/** Two wires from below. */
export const Feed = ({ x, y }: { readonly x: number; readonly y: number }) => (
  <g class="feed">
    <path d={`M${x - 3} ${y + 18}V${y - 3}M${x + 3} ${y + 18}V${y + 3}`} />
    <circle cx={x - 3} cy={y - 3} r="2.5" />
    <circle cx={x + 3} cy={y + 3} r="2.5" />
  </g>
);

/** At a gap both rails are drawn, and both are broken. */
export function JointMark({ state, turned }: { readonly state: JointState; readonly turned: number }) {
  const turn = turned === 0 ? {} : { transform: `rotate(${turned})` };
  if (state === 'joined') return <path class="tick" d="M0-9V9" {...turn} />;
  if (state === 'never') return <path class="tick" d="M0-9V9M-3-3v6M3-3v6" {...turn} />;
  return (
    <g class={state} {...turn}>
      {state === 'to-cut' && <circle class="ring" r="14" />}
      <path class="clear" d="M-11-7h22V7h-22z" />
      <path class="rail" d={railsOf(state)} />
      {state === 'not-known' && <circle class="clear" r="8" />}
      {state === 'not-known' && (
        <text class="letter" y="5" transform={`rotate(${-turned})`}>
          ?
        </text>
      )}
    </g>
  );
}

/** Above level track, beside any other. */
function GapNumber({ number, turned }: { readonly number: number | undefined; readonly turned: number }) {
  if (number === undefined) return null;
  return (
    <text class="gap-number" x={turned === 0 ? 0 : 24} y={turned === 0 ? -19 : 5} {...UNREAD}>
      {number}
    </text>
  );
}

function railsOf(state: JointState): string {
  const rail = (y: number, cut: boolean): string =>
    cut ? `M-11 ${y}h8m6 0h8M-3 ${y - 4}v8M3 ${y - 4}v8` : `M-11 ${y}h22`;
  return rail(-4, state !== 'not-known') + rail(4, state === 'gap' || state === 'to-cut');
}
