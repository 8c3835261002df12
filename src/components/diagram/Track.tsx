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

const keyOf = ({ kind, id }: Selected): string => `${kind} ${id}`;

export function Track(props: TrackProps) {
  const { laid, say, selected, onSelect } = props;
  const { x: left, y: top, width, height } = props.part ?? { x: 0, y: 0, ...laid };
  const drawing = useRef<SVGSVGElement>(null);
  const [at, setAt] = useState<string | undefined>(undefined);
  const chooses = onSelect !== undefined;
  const spots = chooses ? spotsOf(laid) : [];
  const here = at !== undefined && spots.some(({ key }) => key === at) ? at : spots[0]?.key;
  /** One hand for all that can be chosen: each is found by its key. */
  const spotAt = ({ target }: Event): Choice | undefined => {
    const key = target instanceof Element ? target.getAttribute('data-key') : undefined;
    return spots.find((one) => one.key === key);
  };
  const choose = (spot: Choice | undefined): void => {
    if (spot === undefined) return;
    setAt(spot.key);
    const pressed = selected !== undefined && keyOf(selected) === spot.key;
    onSelect?.(pressed ? undefined : spot.what);
  };
  const press = (event: KeyboardEvent): void => {
    // What has the focus, not what was drawn last: keys may come faster than drawings.
    const from = spotAt(event);
    if (from === undefined) return;
    const chooses = event.key === 'Enter' || event.key === ' ';
    const to = chooses ? undefined : nextTo(spots, from.key, event.key);
    if (chooses || to !== undefined) event.preventDefault();
    if (chooses) choose(from);
    if (to === undefined) return;
    setAt(to);
    drawing.current?.querySelector<SVGElement>(`[data-key="${to}"]`)?.focus();
  };
  return (
    <svg
      ref={drawing}
      width={width}
      height={height}
      viewBox={`${left} ${top} ${width} ${height}`}
      role={chooses ? 'group' : 'img'}
      aria-label={say(chooses ? 'diagram-choose' : 'diagram-picture')}
      onClick={chooses ? (event) => choose(spotAt(event)) : undefined}
      onKeyDown={chooses ? press : undefined}
    >
      <Lines {...props} />
      <Grips {...props} here={here} />
      <g class="signs">
        <Signs {...props} />
        <Joints {...props} />
        <Names {...props} />
      </g>
      {props.part !== undefined && props.children}
    </svg>
  );
}

interface Choice extends Spot {
  readonly what: Selected;
}

/** Where sections and joints can be reached by the arrow keys, in the order of the sheet. */
const spotsOf = ({ sections, joints }: Shown['laid']): readonly Choice[] => [
  ...sections.map(({ id, left, right, y }) => spotOf({ kind: 'section', id }, { x: (left + right) / 2, y })),
  ...joints.map(({ id, at }) => spotOf({ kind: 'joint', id }, at)),
];

const spotOf = (what: Selected, { x, y }: Omit<Spot, 'key'>): Choice => ({ key: keyOf(what), what, x, y });

/** What a hand, the keyboard and a reader take hold of, below all signs: each section and each joint, a single element each. */
function Grips(props: TrackProps & { readonly here: string | undefined }) {
  const { laid, selected, onSelect, here } = props;
  const grip = (what: Selected) => {
    const pressed = selected?.kind === what.kind && selected.id === what.id;
    const looks = { class: pressed ? 'grip selected' : 'grip' } as const;
    if (onSelect === undefined) return looks;
    const key = keyOf(what);
    return {
      ...looks,
      'data-key': key,
      role: 'button',
      // In small letters: drawn in the browser, a part of a drawing knows it by no other spelling.
      tabindex: key === here ? 0 : -1,
      'aria-pressed': pressed,
      'aria-label': what.kind === 'section' ? sectionSaid(what.id, props) : jointSaid(what.id, props),
    } as const;
  };
  return (
    <>
      {laid.sections.map(({ id, left, right, y }) => (
        <rect key={id} x={left} y={y - 20} width={right - left} height="40" rx="6" {...grip({ kind: 'section', id })} />
      ))}
      {laid.joints.map(({ id, at: { x, y } }) => (
        <circle key={id} cx={x} cy={y} r="20" {...grip({ kind: 'joint', id })} />
      ))}
    </>
  );
}

/** What sections are, where they are fed, and the plates of their letters: all of a district as one. */
function Signs({ laid, sheet, dressed }: TrackProps) {
  const at = new Map(laid.sections.map((section) => [section.id, section]));
  return (
    <>
      {sheet.sections.flatMap(({ id, tags = [] }) => {
        const section = at.get(id);
        return section === undefined ? [] : tags.map((tag) => <Tag key={`${id} ${tag}`} tag={tag} {...section} />);
      })}
      {dressed.districts.map(({ letter, fed }, place) => (
        <g key={letter}>
          {fed.map((id) => {
            const section = at.get(id);
            return section !== undefined && <Feed key={id} x={section.left + 14} y={section.y} />;
          })}
          <path
            class={`plate ${lookOf(place)}`}
            d={laid.sections
              .filter(({ id }) => dressed.districtOf.get(id) === place)
              .map(plateAt)
              .join('')}
          />
        </g>
      ))}
    </>
  );
}

/** A plate of 20 by 20 pixels with round corners, in the middle of a section. */
const plateAt = ({ left, right, y }: LaidSection): string =>
  `M${(left + right) / 2 - 10} ${y - 6}a4 4 0 0 1 4-4h12a4 4 0 0 1 4 4v12a4 4 0 0 1-4 4h-12a4 4 0 0 1-4-4z`;

/** What is at each joint; where rails run through it is a stroke, and all strokes are one line. */
function Joints({ laid, dressed, gapNumbers }: TrackProps) {
  const stateAt = (id: string): JointState => dressed.joints.get(id)?.state ?? 'joined';
  const strokes = laid.joints.map(({ id, at, turned }) => strokeOf(stateAt(id), at, turned)).join('');
  return (
    <>
      {strokes !== '' && <path class="tick" d={strokes} />}
      {laid.joints.map(({ id, at: { x, y }, turned }) => {
        const state = stateAt(id);
        const number = gapNumbers?.get(id);
        if (isStroke(state) && number === undefined) return null;
        return (
          <g key={id} transform={`translate(${x} ${y})`}>
            {!isStroke(state) && <JointMark state={state} turned={turned} />}
            <GapNumber number={number} turned={turned} />
          </g>
        );
      })}
    </>
  );
}

const isStroke = (state: JointState): boolean => state === 'joined' || state === 'never';

/** The strokes of a joint: across the track, and where no gap is possible two short ones beside it. */
function strokeOf(state: JointState, { x, y }: Pick<Spot, 'x' | 'y'>, turned: number): string {
  const angle = (turned * Math.PI) / 180;
  const [along, across] = [Math.cos(angle), Math.sin(angle)];
  const stroke = (beside: number, half: number): string => {
    const [middleX, middleY] = [x + beside * along, y + beside * across];
    const [dx, dy] = [half * across, -half * along];
    return `M${rounded(middleX - dx)} ${rounded(middleY - dy)}L${rounded(middleX + dx)} ${rounded(middleY + dy)}`;
  };
  if (!isStroke(state)) return '';
  return stroke(0, 9) + (state === 'never' ? stroke(-3, 3) + stroke(3, 3) : '');
}

const rounded = (pixels: number): number => Math.round(10 * pixels) / 10;

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

export const UNREAD = { 'aria-hidden': true } as const;

/** Names and letters: each section is called by both already where it can be chosen, so a reader passes these over. */
function Names({ laid, dressed, names }: Pick<Shown, 'laid' | 'dressed' | 'names'>) {
  return (
    <g {...UNREAD}>
      {dressed.districts.map(({ letter }, place) => {
        const own = laid.sections.filter(({ id }) => dressed.districtOf.get(id) === place);
        const [x, y] = [own.map(({ left, right }) => (left + right) / 2), own.map((one) => one.y + 5)];
        return (
          // Each letter has a place of its own.
          <text key={letter} class="letter" x={x.join(' ')} y={y.join(' ')}>
            {letter.repeat(own.length)}
          </text>
        );
      })}
      {laid.sections.map((section) => (
        <Name key={section.id} section={section} names={names} />
      ))}
    </g>
  );
}

/** The name of a section above it; one that is cut short tells all of itself to a pointer. */
export const Name = ({ section: { id, lines }, names }: { readonly section: LaidSection } & Pick<Shown, 'names'>) => (
  <>
    {lines.map((line, i) => (
      <text key={i} x={line.x} y={line.y}>
        {line.text.includes('…') && <title>{names.get(id)}</title>}
        {line.text}
      </text>
    ))}
  </>
);

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
