// Both sides of a gap as an oscilloscope would draw them, and the difference across it; or one pair of rails alone. Per cent across, pixels up.
import { ticks } from 'd3-array';
import { useMemo } from 'preact/hooks';
import type { GapPicture, Heard, Packet, SideState, Wave, WaveReadings } from '../../../engine/index.ts';
import {
  bitTimes,
  CUT_PACKET,
  fromMicroseconds,
  fromNanofarads,
  gapPicture,
  IDLE_PACKET,
  meaningOf,
  packetBits,
  packetParts,
  RESET_PACKET,
  STOP_PACKET,
  speedPacket,
  toMicroseconds,
} from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { Numbers, type Say, sayer } from '../../words/index.ts';
import { type AllWritten, oneOf, Slider, useSettings, whole, within } from '../shared/index.ts';
import {
  GAP_SCOPE_START,
  type GapScopeSettings,
  JOINS,
  PACKET_IDS,
  type PacketId,
  STATES,
  VIEWS,
  type View,
} from './model.ts';

export interface GapScopeProps {
  /** One pair of rails as it should be, and no gap. */
  readonly alone?: boolean;
  readonly language: string;
  /** The words of the rooms `gap-scope` and `units`. */
  readonly words: Readonly<Record<string, string>>;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

const speed = (address: number, step: number): Packet => {
  const made = speedPacket({ address, forward: true, step });
  return made.kind === 'packet' ? made : IDLE_PACKET;
};

/** An edge is looked at where two sides may differ in it. */
const VIEWS_ALONE = ['bits', 'packet'] as const satisfies readonly View[];
const PACKETS = {
  'speed-3': speed(3, 1),
  'speed-55': speed(55, 6),
  idle: IDLE_PACKET,
  stop: STOP_PACKET,
  cut: CUT_PACKET,
  reset: RESET_PACKET,
} as const satisfies Readonly<Record<PacketId, Packet>>;

/** Every choice of the figure; its words are `scope-<choice>-<option>`. */
export const SCOPE_CHOICES = { state: STATES, view: VIEWS, sent: PACKET_IDS, joined: JOINS } as const;

const WRITTEN: AllWritten<GapScopeSettings> = {
  state: oneOf(...STATES),
  near: within(5, 22),
  far: within(5, 22),
  late: whole(0, 20),
  nanofarads: whole(0, 4700),
  ohms: whole(0, 20),
  sent: oneOf(...PACKET_IDS),
  joined: oneOf(...JOINS),
  view: oneOf(...VIEWS),
  bit: whole(1, 60),
};

/** How much of the signal a view shows, seconds; `edge` also how much before the middle of the bit. */
const BITS_SHOWN = 650e-6;
const EDGE_SHOWN = 40e-6;
const EDGE_BEFORE = 10e-6;
/** How far beside the picture a bound still counts as within it, seconds. */
const JUST_OUTSIDE = 0.1e-6;

function stateOf({ state, far, late, nanofarads, ohms }: GapScopeSettings): SideState {
  switch (state) {
    case 'dead':
      return { kind: 'dead' };
    case 'late':
      return { kind: 'late', volts: far, seconds: fromMicroseconds(late) };
    case 'rounded':
      return { kind: 'rounded', volts: far, farads: fromNanofarads(nanofarads), ohms };
    case 'right':
    case 'reversed':
    case 'held':
      return { kind: state, volts: far };
  }
}

export default function GapScope({ alone = false, language, words, begins }: GapScopeProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const numbers = useMemo(() => new Numbers(language, 'metric', words), [language, words]);
  const [set, change] = useSettings(GAP_SCOPE_START, WRITTEN, begins);
  const picture = useMemo(
    () => gapPicture(PACKETS[set.sent], set.near, stateOf(set), set.joined),
    [set.state, set.near, set.far, set.late, set.nanofarads, set.ohms, set.sent, set.joined],
  );
  const parts = { alone, set, picture, say, numbers };
  return (
    <div class="live part scope">
      {!alone && (
        <Choice
          name="state"
          options={SCOPE_CHOICES.state}
          value={set.state}
          say={say}
          onValue={(state) => change({ state })}
        />
      )}
      <p role="status">{(alone ? sentencesAlone(parts) : sentences(parts)).join(' ')}</p>
      <div class="two">
        <figure class="sheet">
          <Drawing {...parts} />
          <Readings {...parts} />
        </figure>
        <Controls alone={alone} set={set} say={say} numbers={numbers} change={change} />
      </div>
    </div>
  );
}

interface Parts {
  readonly alone: boolean;
  readonly set: GapScopeSettings;
  readonly picture: GapPicture;
  readonly say: Say;
  readonly numbers: Numbers;
}

function sentencesAlone({ set, picture, say, numbers }: Parts): string[] {
  const { near } = picture.heard;
  return [
    say('scope-alone-seen', { volts: numbers.volts(set.near) }),
    near.kind === 'packet'
      ? say('scope-alone-heard', { meaning: meaning(near.bytes, say) })
      : say('scope-alone-too-few-volts'),
  ];
}

function sentences(parts: Parts): string[] {
  const { picture, say, numbers } = parts;
  return [
    seen(parts),
    heard(picture.heard.far, say),
    picture.readings.across === undefined
      ? say('scope-compare-floating')
      : say(`scope-compare-${picture.compared ?? 'nothing'}`, {
          same: shown(picture.readings.across.same.averaging, numbers),
          crosswise: shown(picture.readings.across.crosswise.averaging, numbers),
        }),
  ];
}

function seen({ set, picture, say, numbers }: Parts): string {
  const { state, far } = set;
  if (state === 'right')
    return say(picture.step === 0 ? 'scope-seen-right' : 'scope-seen-step', { step: numbers.volts(picture.step) });
  if (state !== 'rounded')
    return say(`scope-seen-${state}`, {
      us: set.late,
      share: numbers.share(picture.against),
      volts: numbers.volts(far),
    });
  const { slowest, capacitor } = picture;
  const through =
    slowest.kind === 'edge' ? say('scope-edge', { us: micro(slowest.seconds, numbers) }) : say('scope-no-edge');
  const load = say('scope-capacitor', {
    amps: numbers.amps(capacitor?.current ?? 0),
    watts: numbers.plain(capacitor?.heat ?? 0, 1),
  });
  return `${say('scope-seen-rounded')} ${through} ${load}`;
}

function heard(one: Heard, say: Say): string {
  if (one.kind === 'packet' || one.kind === 'doubtful') {
    return say(`scope-heard-${one.kind}`, { meaning: meaning(one.bytes, say) });
  }
  return say(one.kind === 'garbled' ? 'scope-heard-garbled' : `scope-heard-${one.because}`);
}

function meaning(bytes: readonly number[], say: Say): string {
  const means = meaningOf(bytes);
  if (means.kind !== 'speed') return say(`scope-means-${means.kind}`);
  if (means.step === 'cut') return say('scope-means-cut');
  const way = say(means.forward ? 'scope-way-forward' : 'scope-way-back');
  return say('scope-means-speed', { address: means.address, way, step: means.step });
}

// No minus before a zero.
const settled = (volts: number): number => (Math.abs(volts) < 0.05 ? 0 : volts);
const shown = (volts: number, numbers: Numbers): string => numbers.volts(settled(volts));
const micro = (seconds: number, numbers: Numbers): string => numbers.plain(toMicroseconds(seconds), 1);

// Pixels. All four lines have the same scale; across the gap twice the volts can stand.
const PER_VOLT = 1.05;
const SIDE = 50;
const ACROSS = 100;
const HEAD = 24;
const AFTER = 16;
const TOP = 30;
const WIDE = 1000;
const AXIS = 46;

interface Strip {
  readonly id: 'near' | 'far' | 'same' | 'crosswise';
  readonly wave: Wave | undefined;
  readonly peak: number;
  readonly top: number;
  readonly zero: number;
}

function stripsOf({ near, far, across, readings }: GapPicture, alone: boolean): Strip[] {
  const whole = across.kind === 'across' ? across : undefined;
  const rows = [
    { id: 'near', wave: near, peak: readings.near.peak, height: SIDE },
    { id: 'far', wave: far, peak: readings.far.peak, height: SIDE },
    { id: 'same', wave: whole?.same, peak: readings.across?.same.peak ?? 0, height: ACROSS },
    { id: 'crosswise', wave: whole?.crosswise, peak: readings.across?.crosswise.peak ?? 0, height: ACROSS },
  ] as const;
  let top = TOP;
  return rows.slice(0, alone ? 1 : rows.length).map(({ height, ...row }) => {
    const strip = { ...row, top, zero: top + HEAD + height / 2 };
    top += HEAD + height + AFTER;
    return strip;
  });
}

const bottomOf = (alone: boolean): number =>
  alone ? TOP + HEAD + SIDE + AFTER : TOP + 4 * (HEAD + AFTER) + 2 * (SIDE + ACROSS);

function Drawing({ alone, set, picture, say, numbers }: Parts) {
  const bottom = bottomOf(alone);
  const sent = PACKETS[set.sent];
  const bits = useMemo(() => packetBits(sent), [sent]);
  const times = useMemo(() => bitTimes(bits), [bits]);
  const { from, to, origin } = spanOf(set, times);
  const x = (seconds: number): number => (100 * (seconds - from)) / (to - from);
  const inside = (seconds: number): boolean => seconds >= from - JUST_OUTSIDE && seconds <= to + JUST_OUTSIDE;
  const strips = stripsOf(picture, alone);
  const parts = packetParts(sent);
  const bounds = set.view === 'packet' ? parts.flatMap((part) => [times[part.from] ?? 0, times[part.to] ?? 0]) : times;
  return (
    <svg
      class={set.view === 'packet' ? 'histogram dense' : 'histogram'}
      width="100%"
      height={bottom + AXIS}
      role="img"
      aria-labelledby="scope-title"
    >
      <title id="scope-title">{say(alone ? 'scope-alone-title' : 'scope-title')}</title>
      <g class="bounds">
        {bounds.filter(inside).map((seconds) => (
          <line key={seconds} x1={`${x(seconds)}%`} x2={`${x(seconds)}%`} y1={TOP - 6} y2={bottom} />
        ))}
      </g>
      {set.view === 'packet' ? (
        parts.map((part) => (
          <text
            key={part.from}
            x={`${x(((times[part.from] ?? 0) + (times[part.to] ?? 0)) / 2)}%`}
            y="16"
            text-anchor="middle"
          >
            {say(`scope-part-${part.part}`, { number: part.number })}
          </text>
        ))
      ) : (
        <Digits bits={bits} times={times} from={from} to={to} x={x} />
      )}
      {strips.map((strip) => (
        <Head key={strip.id} strip={strip} name={say(lineName(strip.id, alone))} say={say} numbers={numbers} />
      ))}
      <svg x="0" y="0" width="100%" height={bottom} viewBox={`0 0 ${WIDE} ${bottom}`} preserveAspectRatio="none">
        {strips.map(({ id, wave, zero }) =>
          wave === undefined ? null : (
            <path key={id} class={`trace ${id}`} d={pathOf(wave, from, to, zero)} vector-effect="non-scaling-stroke" />
          ),
        )}
      </svg>
      <line x1="0" x2="100%" y1={bottom} y2={bottom} stroke="currentColor" stroke-width="1.5" />
      {ticks(toMicroseconds(from - origin), toMicroseconds(to - origin), 5)
        .map((us) => ({ us, at: x(origin + fromMicroseconds(us)) }))
        .filter(({ at }) => at > 4 && at < 94)
        .map(({ us, at }) => (
          <text key={us} x={`${at}%`} y={bottom + 18} text-anchor="middle">
            {numbers.plain(us, 1)}
          </text>
        ))}
      <text x="50%" y={bottom + 40} text-anchor="middle">
        {say('scope-axis')}
      </text>
    </svg>
  );
}

interface Shown {
  readonly from: number;
  readonly to: number;
  /** Where the time axis reads 0. */
  readonly origin: number;
}

// Seconds: the whole packet, the bits from a certain one on, or the change-over in the middle of that bit.
function spanOf({ view, bit }: GapScopeSettings, times: readonly number[]): Shown {
  const last = times.at(-1) ?? 0;
  const start = times[bit - 1] ?? 0;
  if (view === 'packet') return { from: 0, to: last, origin: 0 };
  if (view === 'edge') {
    const middle = (start + (times[bit] ?? last)) / 2;
    return { from: middle - EDGE_BEFORE, to: middle - EDGE_BEFORE + EDGE_SHOWN, origin: middle };
  }
  const from = Math.min(start, last - BITS_SHOWN);
  return { from, to: from + BITS_SHOWN, origin: from };
}

interface DigitsProps {
  readonly bits: readonly number[];
  readonly times: readonly number[];
  readonly from: number;
  readonly to: number;
  readonly x: (seconds: number) => number;
}

// Each digit in the middle of what is seen of its bit, unless too little is seen.
function Digits({ bits, times, from, to, x }: DigitsProps) {
  return (
    <g class="strong">
      {bits.map((bit, i) => {
        const [left, right] = [Math.max(from, times[i] ?? 0), Math.min(to, times[i + 1] ?? 0)];
        return x(right) - x(left) < 5 ? null : (
          <text key={i} x={`${(x(left) + x(right)) / 2}%`} y="16" text-anchor="middle">
            {bit}
          </text>
        );
      })}
    </g>
  );
}

const lineName = (id: Strip['id'], alone: boolean): string => (alone ? 'scope-alone-line' : `scope-line-${id}`);

interface HeadProps {
  readonly strip: Strip;
  readonly name: string;
  readonly say: Say;
  readonly numbers: Numbers;
}

function Head({ strip, name, say, numbers }: HeadProps) {
  const { id, wave, peak, top, zero } = strip;
  return (
    <g>
      <line class={`trace ${id}`} x1="1" x2="27" y1={top + 11} y2={top + 11} />
      <text x="35" y={top + 16}>
        {name}
      </text>
      <text x="100%" y={top + 16} text-anchor="end">
        {wave === undefined ? '' : say('scope-peak', { volts: shown(peak, numbers) })}
      </text>
      <line class="zero" x1="0" x2="100%" y1={zero} y2={zero} />
      {wave === undefined && (
        <text x="50%" y={zero - 6} text-anchor="middle">
          {say('scope-floating')}
        </text>
      )}
    </g>
  );
}

// The part of a line between two times, and one point beyond on each side; points too near to see apart are left out.
function pathOf(wave: Wave, from: number, to: number, zero: number): string {
  const first = wave.findLastIndex(({ seconds }) => seconds < from);
  const beyond = wave.findIndex(({ seconds }) => seconds > to);
  const part = wave.slice(Math.max(0, first), beyond === -1 ? wave.length : beyond + 1);
  let path = '';
  let [x, y] = [Number.NEGATIVE_INFINITY, 0];
  for (const [i, { seconds, volts }] of part.entries()) {
    const [nextX, nextY] = [(WIDE * (seconds - from)) / (to - from), zero - PER_VOLT * volts];
    const near = Math.abs(nextX - x) < 0.6 && Math.abs(nextY - y) < 0.3;
    if (near && i < part.length - 1) continue;
    path += `${path === '' ? 'M' : 'L'}${nextX.toFixed(1)} ${nextY.toFixed(1)}`;
    [x, y] = [nextX, nextY];
  }
  return path;
}

function Readings({ alone, picture, say, numbers }: Parts) {
  const { near, far, across } = picture.readings;
  const all: readonly (readonly [Strip['id'], WaveReadings | undefined])[] = [
    ['near', near],
    ['far', far],
    ['same', across?.same],
    ['crosswise', across?.crosswise],
  ];
  const rows = alone ? all.slice(0, 1) : all;
  return (
    <table class="num meters">
      <caption>{say('scope-meters')}</caption>
      <thead>
        <tr>
          <th scope="col">{say('scope-between')}</th>
          <th scope="col">{say('scope-direct')}</th>
          <th scope="col">{say('scope-averaging')}</th>
          <th scope="col">{say('scope-rms')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([id, read]) => (
          <tr key={id}>
            <th scope="row">{say(lineName(id, alone))}</th>
            {[read?.direct, read?.averaging, read?.rms].map((volts, i) => (
              <td key={i}>{volts === undefined ? '–' : numbers.plain(settled(volts), 1)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface ControlsProps {
  readonly alone: boolean;
  readonly set: GapScopeSettings;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly change: (some: Partial<GapScopeSettings>) => void;
}

const scopeField = (id: string, quantity: 'voltage' | 'count', least: number, most: number): NumberField =>
  number(`scope-${id}`, quantity, least, most);

const BIT_OF = { bits: 'first-bit', edge: 'bit' } as const;

function Controls({ alone, set, say, numbers, change }: ControlsProps) {
  const slider = (
    field: NumberField,
    value: number,
    step: number,
    onValue: (value: number) => void,
    label = field.id,
  ) => (
    <Slider
      field={field}
      label={say(label)}
      value={value}
      text={field.quantity === 'voltage' ? numbers.volts(value) : String(value)}
      least={field.least}
      most={field.most}
      step={step}
      problem={say('scope-problem', { least: field.least, most: field.most })}
      onValue={onValue}
    />
  );
  const bits = packetBits(PACKETS[set.sent]).length;
  return (
    <div class="part">
      {slider(
        scopeField('near', 'voltage', 5, 22),
        set.near,
        0.5,
        (near) => change({ near }),
        alone ? 'scope-alone-volts' : undefined,
      )}
      {!alone &&
        set.state !== 'dead' &&
        slider(scopeField('far', 'voltage', 5, 22), set.far, 0.5, (far) => change({ far }))}
      {!alone &&
        set.state === 'late' &&
        slider(scopeField('late', 'count', 0, 20), set.late, 1, (late) => change({ late }))}
      {!alone && set.state === 'rounded' && (
        <>
          {slider(scopeField('farads', 'count', 0, 4700), set.nanofarads, 10, (nanofarads) => change({ nanofarads }))}
          {slider(scopeField('ohms', 'count', 0, 20), set.ohms, 1, (ohms) => change({ ohms }))}
        </>
      )}
      <Choice
        name="view"
        options={alone ? VIEWS_ALONE : SCOPE_CHOICES.view}
        value={set.view}
        say={say}
        onValue={(view) => change({ view })}
      />
      {set.view !== 'packet' &&
        slider(scopeField(BIT_OF[set.view], 'count', 1, bits), set.bit, 1, (bit) => change({ bit }))}
      <Select
        name="sent"
        options={SCOPE_CHOICES.sent}
        value={set.sent}
        say={say}
        onValue={(sent) => change({ sent })}
      />
      {!alone && (
        <Select
          name="joined"
          options={SCOPE_CHOICES.joined}
          value={set.joined}
          say={say}
          onValue={(joined) => change({ joined })}
        />
      )}
    </div>
  );
}

interface OptionsProps<Id extends string> {
  readonly name: string;
  readonly options: readonly Id[];
  readonly value: Id;
  readonly say: Say;
  readonly onValue: (id: Id) => void;
}

function Choice<Id extends string>({ name, options, value, say, onValue }: OptionsProps<Id>) {
  return (
    <fieldset class="pair">
      <legend>{say(`scope-${name}`)}</legend>
      {options.map((id) => (
        <label key={id}>
          <input type="radio" name={`scope-${name}`} checked={id === value} onChange={() => onValue(id)} />
          <span>{say(`scope-${name}-${id}`)}</span>
        </label>
      ))}
    </fieldset>
  );
}

function Select<Id extends string>({ name, options, value, say, onValue }: OptionsProps<Id>) {
  return (
    <div class="field">
      <label for={`scope-${name}`}>{say(`scope-${name}`)}</label>
      <select
        id={`scope-${name}`}
        value={value}
        onChange={(event) => {
          const chosen = options.find((id) => id === event.currentTarget.value);
          if (chosen !== undefined) onValue(chosen);
        }}
      >
        {options.map((id) => (
          <option key={id} value={id}>
            {say(`scope-${name}-${id}`)}
          </option>
        ))}
      </select>
    </div>
  );
}
