// The track from above: both parts, the gap in each rail, the wires, the train, the leads of the meter. Per cent across, pixels down.
import { useRef } from 'preact/hooks';
import type { DriveFrame, DrivePoint, StageIndex } from '../../../engine/index.ts';
import {
  DRIVE_POINTS,
  deadOf,
  FELT,
  frontOf,
  frontRange,
  HALF_SEEN,
  middleOf,
  pointOf,
  railsOf,
  throughTrain,
  unitOf,
  vehicleOf,
} from '../../../engine/index.ts';
import type { Numbers, Say } from '../../words/index.ts';

interface Props {
  readonly frame: DriveFrame;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly onPlace: (front: number) => void;
  readonly onPoint: (point: DrivePoint) => void;
}

const UPPER = 104;
const LOWER = 156;
const BOTTOM = 238;
const GAUGE = LOWER - UPPER;
/** Of the train, from the top of its box. */
const MIDDLE = GAUGE / 2 + 8;
/** Half the width of a gap as it is drawn, per cent. */
const CUT = 1.1;
const STEP = 0.01;
const WIRES = { a: [17, 26], b: [74, 83] } as const;
const POINTS_AT = { a: 6, b: 94 } as const;
const RAIL_AT = { upper: UPPER, lower: LOWER } as const;

export function DrivePicture({ frame, say, numbers, onPlace, onPoint }: Props) {
  const drawing = useRef<SVGSVGElement>(null);
  const { settings } = frame;
  const percent = (metres: number): number => 50 + (50 * (metres - middleOf(settings))) / HALF_SEEN;
  const gap = percent(0);
  const beyond = percent(deadOf(settings));
  return (
    <svg
      ref={drawing}
      class="histogram drive-track"
      width="100%"
      height={BOTTOM}
      role="group"
      aria-label={say('drive-picture')}
    >
      {settings.path && <SecondPath say={say} />}
      <Part side="a" frame={frame} say={say} numbers={numbers} />
      <Part side="b" frame={frame} say={say} numbers={numbers} />
      <Wires side="a" feed reversed={false} />
      <Wires side="b" feed={settings.feed} reversed={settings.reversed} />
      {settings.capacitor && <Capacitor say={say} />}
      <Rail y={UPPER} gap={gap} beyond={beyond} cut={settings.cutUpper} />
      <Rail y={LOWER} gap={gap} beyond={beyond} cut={settings.cutLower} />
      {beyond > gap && (
        <text class="soft" x={`${(gap + beyond) / 2}%`} y={LOWER + 26} text-anchor="middle">
          {say('drive-dead')}
        </text>
      )}
      {DRIVE_POINTS.map((point) => (
        <Point key={point} point={point} onPoint={onPoint} />
      ))}
      <Train frame={frame} percent={percent} drawing={drawing} say={say} numbers={numbers} onPlace={onPlace} />
      <Leads frame={frame} />
    </svg>
  );
}

function Part({ side, frame, say, numbers }: { side: 'a' | 'b' } & Pick<Props, 'frame' | 'say' | 'numbers'>) {
  const { volts, alive, plus } = railsOf(frame, side);
  const [first, second] = plus === 'a' ? ['+', '−'] : ['−', '+'];
  const edge = side === 'a' ? '0' : '100%';
  const anchor = side === 'a' ? 'start' : 'end';
  return (
    <g class={`part-of ${side}`}>
      <text x={edge} y="22" text-anchor={anchor}>
        <tspan class="name">{side.toUpperCase()}</tspan>
        {`  ${alive ? say('drive-rail-volts', { volts: numbers.volts(volts) }) : say('drive-rail-dead')}`}
      </text>
      {alive && (
        <g class="sign-of">
          <text x={edge} y={UPPER - 12} text-anchor={anchor}>
            {first}
          </text>
          <text x={edge} y={LOWER + 24} text-anchor={anchor}>
            {second}
          </text>
        </g>
      )}
    </g>
  );
}

// The rail of A is solid and that of B dashed; what is not cut is drawn through, with a joint.
function Rail({ y, gap, beyond, cut }: { y: number; gap: number; beyond: number; cut: boolean }) {
  const half = cut ? CUT : 0;
  return (
    <g>
      <line class="rail a" x1="0" x2={`${gap - half}%`} y1={y} y2={y} />
      {beyond > gap && <line class="rail nobody" x1={`${gap + half}%`} x2={`${beyond - half}%`} y1={y} y2={y} />}
      <line class="rail b" x1={`${beyond + half}%`} x2="100%" y1={y} y2={y} />
      {(beyond > gap ? [gap, beyond] : [gap]).map((place) =>
        cut ? (
          <g key={place} class="cut">
            <line x1={`${place - CUT}%`} x2={`${place - CUT}%`} y1={y - 10} y2={y + 10} />
            <line x1={`${place + CUT}%`} x2={`${place + CUT}%`} y1={y - 10} y2={y + 10} />
          </g>
        ) : (
          <rect key={place} class="joint" x={`${place - 2}%`} width="4%" y={y - 6} height="12" />
        ),
      )}
    </g>
  );
}

/** Two wires from the stage below; the first is copper and full, the second thin. Turned round, they cross. */
function Wires({ side, feed, reversed }: { side: 'a' | 'b'; feed: boolean; reversed: boolean }) {
  const [left, right] = WIRES[side];
  const ends = [LOWER + 30, LOWER + 62] as const;
  const wire = (name: 'one' | 'two', start: number, end: number) => {
    const rail = end === left ? UPPER : LOWER;
    return (
      <g class={`wire ${name}`}>
        <line x1={`${start}%`} x2={`${start}%`} y1={feed ? ends[1] : BOTTOM - 16} y2={BOTTOM} />
        {feed && (
          <>
            <line x1={`${start}%`} x2={`${end}%`} y1={ends[1]} y2={ends[0]} />
            <line x1={`${end}%`} x2={`${end}%`} y1={ends[0]} y2={rail} />
            <circle cx={`${end}%`} cy={rail} r="6" />
          </>
        )}
        <text
          x={`${start}%`}
          dx={start === left ? -9 : 9}
          y={BOTTOM - 4}
          text-anchor={start === left ? 'end' : 'start'}
        >
          {name === 'one' ? '1' : '2'}
        </text>
        {!feed && (
          <svg x={`${start}%`} y={BOTTOM - 26} overflow="visible">
            <path class="off" d="M-6-6 6 6M6-6-6 6" />
          </svg>
        )}
      </g>
    );
  };
  return (
    <g>
      {wire('two', right, reversed ? left : right)}
      {wire('one', left, reversed ? right : left)}
    </g>
  );
}

function SecondPath({ say }: { say: Say }) {
  const line = (at: number, top: number, rail: number) => (
    <>
      <line x1={`${at}%`} x2={`${at}%`} y1={rail} y2={top} />
      <line x1={`${at}%`} x2={`${100 - at}%`} y1={top} y2={top} />
      <line x1={`${100 - at}%`} x2={`${100 - at}%`} y1={top} y2={rail} />
      <circle cx={`${at}%`} cy={rail} r="5" />
      <circle cx={`${100 - at}%`} cy={rail} r="5" />
    </>
  );
  return (
    <g class="second">
      {line(10.5, 35, UPPER)}
      {line(13.5, 42, LOWER)}
      <text x="50%" y="60" text-anchor="middle">
        {say('drive-second')}
      </text>
    </g>
  );
}

function Capacitor({ say }: { say: Say }) {
  const [left, right] = WIRES.b;
  const middle = (left + right) / 2;
  const y = LOWER + 70;
  return (
    <g class="capacitor">
      <line x1={`${left}%`} x2={`${middle - 0.9}%`} y1={y} y2={y} />
      <line x1={`${middle - 0.9}%`} x2={`${middle - 0.9}%`} y1={y - 9} y2={y + 9} />
      <line x1={`${middle + 0.9}%`} x2={`${middle + 0.9}%`} y1={y - 9} y2={y + 9} />
      <line x1={`${middle + 0.9}%`} x2={`${right}%`} y1={y} y2={y} />
      <text x={`${left}%`} dx="-10" y={y - 8} text-anchor="end">
        {say('drive-capacitor-mark')}
      </text>
    </g>
  );
}

/** Where a lead can be held; by pointer here, by keyboard in the list below. */
function Point({ point, onPoint }: { point: DrivePoint; onPoint: (point: DrivePoint) => void }) {
  const { x, y } = spotOf(point);
  return (
    <svg class="point" x={`${x}%`} y={y} overflow="visible" aria-hidden="true" onPointerDown={() => onPoint(point)}>
      <rect class="grip" x="-22" y="-22" width="44" height="44" />
      <circle r="7" />
    </svg>
  );
}

function spotOf(point: DrivePoint): { readonly x: number; readonly y: number } {
  const [side, rail] = point.split('-');
  return { x: side === 'b' ? POINTS_AT.b : POINTS_AT.a, y: rail === 'upper' ? RAIL_AT.upper : RAIL_AT.lower };
}

function Leads({ frame: { probes } }: { frame: DriveFrame }) {
  const [first, second] = probes.map(pointOf);
  return (
    <g>
      {[first, second].map((point, i) => {
        const { x, y } = spotOf(point ?? 'a-upper');
        const both = first === second && i === 1;
        return (
          <svg
            key={i}
            class={`lead ${i === 0 ? 'first' : 'second'}`}
            x={`${x}%`}
            y={both ? y + 12 : y}
            overflow="visible"
          >
            <circle r="11" />
            <text y="5" text-anchor="middle">
              {i === 0 ? 'V' : 'C'}
            </text>
          </svg>
        );
      })}
    </g>
  );
}

interface TrainProps extends Pick<Props, 'frame' | 'say' | 'numbers' | 'onPlace'> {
  readonly percent: (metres: number) => number;
  readonly drawing: { readonly current: SVGSVGElement | null };
}

function Train({ frame, percent, drawing, say, numbers, onPlace }: TrainProps) {
  const { settings, shot } = frame;
  const vehicle = vehicleOf(settings);
  const front = frontOf(frame);
  const { least, most } = frontRange(settings);
  const lit = shot.cars[0]?.lit ?? false;
  const grip = useRef(0);
  const metres = (event: PointerEvent): number | undefined => {
    const box = drawing.current?.getBoundingClientRect();
    if (box === undefined || box.width === 0) return undefined;
    return (2 * HALF_SEEN * (event.clientX - box.left)) / box.width;
  };
  const drag = (event: PointerEvent): void => {
    const at = metres(event);
    if (at !== undefined && event.buttons !== 0) onPlace(at - grip.current);
  };
  const middle = percent(front - vehicle.length / 2);
  const through = throughTrain(frame);
  const flows = through.amps > FELT;
  const state = say(stateKey(frame));
  return (
    <g
      class={lit ? 'train lit' : 'train'}
      tabIndex={0}
      role="slider"
      aria-label={say('drive-train')}
      aria-valuemin={least}
      aria-valuemax={most}
      aria-valuenow={front}
      aria-valuetext={say(`drive-where-${frame.where}`, { place: numbers.place(front) })}
      onKeyDown={(event) => {
        const to = keyed(event.key, front, least, most);
        if (to === undefined) return;
        event.preventDefault();
        onPlace(to);
      }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        grip.current = (metres(event) ?? 0) - front;
      }}
      onPointerMove={drag}
    >
      <svg
        x={`${percent(front - vehicle.length)}%`}
        y={UPPER - 8}
        width={`${(50 * vehicle.length) / HALF_SEEN}%`}
        height={GAUGE + 16}
        overflow="visible"
      >
        {vehicle.pickUps.map(({ rail, behind }) => (
          <svg
            key={`${rail}${behind}`}
            x={`${100 - (100 * behind) / vehicle.length}%`}
            y={rail === 'a' ? 8 : GAUGE + 8}
            overflow="visible"
          >
            <rect class="wheel" x="-3.5" y="-9" width="7" height="18" rx="2.5" />
          </svg>
        ))}
        <rect class="body" x="0" y="16" width="100%" height={GAUGE - 16} rx="7" />
        <rect class="cab" x="4%" y="22" width="15%" height={GAUGE - 28} rx="3" />
        {vehicle.motor && <rect class="cab" x="81%" y="22" width="15%" height={GAUGE - 28} rx="3" />}
        {flows && (
          <g class="flow">
            <line x1="30%" x2="70%" y1={MIDDLE} y2={MIDDLE} />
            <svg x={through.from === 'a' ? '70%' : '30%'} y={MIDDLE} overflow="visible">
              <path d={through.from === 'a' ? 'M6 0-6-8V8z' : 'M-6 0 6-8V8z'} />
            </svg>
          </g>
        )}
        {settings.vehicle === 'shorted' && <rect class="shorting" x="68%" y="6" width="4" height={GAUGE + 4} />}
        {lit && (
          <svg x="100%" y={MIDDLE} overflow="visible">
            <path class="beam" d="M2-9 26-19V19L2 9z" />
          </svg>
        )}
        {lit && settings.vehicle === 'coach' && (
          <g class="windows">
            {[30, 42, 54, 66].map((x) => (
              <rect key={x} x={`${x}%`} y={MIDDLE - 5} width="7%" height="10" />
            ))}
          </g>
        )}
        <rect class="focus" x="-5" y="-6" width="100%" height={GAUGE + 28} rx="9" />
      </svg>
      <text x={`${Math.min(80, Math.max(20, middle))}%`} y={UPPER - 22} text-anchor="middle">
        {flows ? say('drive-state-through', { state, amps: numbers.amps(through.amps) }) : state}
      </text>
    </g>
  );
}

function stateKey({ shot: { cars }, settings }: DriveFrame): string {
  const [car] = cars;
  if (car === undefined || !car.lit) return 'drive-state-dark';
  if (settings.vehicle === 'coach') return 'drive-state-lit';
  return car.hears === 'commands' ? 'drive-state-obeys' : 'drive-state-deaf';
}

function keyed(key: string, front: number, least: number, most: number): number | undefined {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return front + STEP;
    case 'ArrowLeft':
    case 'ArrowDown':
      return front - STEP;
    case 'PageUp':
      return front + 5 * STEP;
    case 'PageDown':
      return front - 5 * STEP;
    case 'Home':
      return least;
    case 'End':
      return most;
    default:
      return undefined;
  }
}

/** Command station and booster with their lamps, the control cable between them, and each one's supply. */
export function DriveUnits({
  frame,
  say,
  numbers,
  onReset,
}: Pick<Props, 'frame' | 'say' | 'numbers'> & { readonly onReset: (stage: StageIndex) => void }) {
  const { settings } = frame;
  return (
    <div class="drive-units">
      <Unit stage={0} frame={frame} say={say} numbers={numbers} onReset={onReset} />
      <svg class="cable" width="100%" height="64" role="img" aria-label={say(`drive-cable-${settings.cable}`)}>
        <line class="control" x1="0" x2={settings.cable ? '100%' : '26%'} y1="32" y2="32" />
        {!settings.cable && (
          <>
            <line class="control" x1="74%" x2="100%" y1="32" y2="32" />
            <svg x="50%" y="32" overflow="visible">
              <path class="off" d="M-6-6 6 6M6-6-6 6" />
            </svg>
          </>
        )}
        {settings.common && (
          <>
            <line class="common" x1="0" x2="100%" y1="58" y2="58" />
            <text x="50%" y="54" text-anchor="middle">
              −
            </text>
          </>
        )}
      </svg>
      <Unit stage={1} frame={frame} say={say} numbers={numbers} onReset={onReset} />
    </div>
  );
}

interface UnitProps extends Pick<Props, 'frame' | 'say' | 'numbers'> {
  readonly stage: StageIndex;
  readonly onReset: (stage: StageIndex) => void;
}

function Unit({ stage, frame, say, numbers, onReset }: UnitProps) {
  const { lamp, amps, trip, supplyVolts, tripped } = unitOf(frame, stage);
  const side = stage === 0 ? 'a' : 'b';
  return (
    <div class={`unit ${side}`}>
      <p>
        <b>{say(`drive-unit-${side}`)}</b>
      </p>
      <p class={`lamp ${lamp}`}>
        <Lamp lamp={lamp} /> <span>{say(`drive-lamp-${lamp}`)}</span>
      </p>
      <p>{say('drive-gives', { amps: numbers.amps(amps), trip: numbers.amps(trip) })}</p>
      <button type="button" disabled={!tripped} onClick={() => onReset(stage)}>
        {say('drive-reset')}
      </button>
      <p class="supply">{say('drive-supply', { volts: numbers.volts(supplyVolts) })}</p>
    </div>
  );
}

/** By shape as well: a full disc, a triangle, a ring with a bar, an empty ring, a half disc. */
function Lamp({ lamp }: { lamp: string }) {
  return (
    <svg width="22" height="22" viewBox="-11 -11 22 22" aria-hidden="true">
      {lamp === 'ready' && <circle class="on" r="8" />}
      {lamp === 'fault' && (
        <>
          <path class="on" d="M0-9.5 10 8H-10z" />
          <path class="mark" d="M0-4v6M0 5v.5" />
        </>
      )}
      {lamp === 'no-signal' && (
        <>
          <circle r="8" />
          <path d="M-5.6-5.6 5.6 5.6" />
        </>
      )}
      {lamp === 'off' && <circle r="8" />}
      {lamp === 'starting' && (
        <>
          <circle r="8" />
          <path class="on" d="M0-8a8 8 0 0 1 0 16z" />
        </>
      )}
    </svg>
  );
}
