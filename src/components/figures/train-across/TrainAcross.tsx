// Two supplies, a gap, and a train across it: the current that the higher side pushes through the train, and who carries what.
import { useMemo } from 'preact/hooks';
import type { CrossingPush, InPhaseCrossing, Quantity } from '../../../engine/index.ts';
import { crossingReversed, toThousandths } from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { CROSSING_TAGS, Numbers, type Say, sayer } from '../../words/index.ts';
import { type AllWritten, FieldSlider, useSettings, within, yesOrNo } from '../shared/index.ts';
import { TRAIN_ACROSS_START, type TrainAcrossSettings, trainAcross, UNIT } from './model.ts';

export interface TrainAcrossProps {
  readonly language: string;
  /** The words of the rooms `train-across`, `crossing` and `units`. */
  readonly words: Readonly<Record<string, string>>;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

const WRITTEN: AllWritten<TrainAcrossSettings> = {
  voltsA: within(5, 22),
  voltsB: within(5, 22),
  loadA: within(0, 10),
  loadB: within(0, 10),
  limitA: within(0.5, 10),
  limitB: within(0.5, 10),
  ohms: within(0.1, 5),
  reversed: yesOrNo,
};

export default function TrainAcross({ language, words, begins }: TrainAcrossProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const numbers = useMemo(() => new Numbers(language, 'metric', words), [language, words]);
  const [set, change] = useSettings(TRAIN_ACROSS_START, WRITTEN, begins);
  const parts = { set, say, numbers };
  return (
    <div class="live part">
      {set.reversed ? <Reversed {...parts} /> : <InPhase {...parts} />}
      <Controls {...parts} change={change} />
    </div>
  );
}

interface Parts {
  readonly set: TrainAcrossSettings;
  readonly say: Say;
  readonly numbers: Numbers;
}

function InPhase({ set, say, numbers }: Parts) {
  const crossing = useMemo(() => trainAcross(set), [set]);
  if (crossing.kind !== 'crossing') return <p role="status">{say('across-problem')}</p>;
  const [push] = crossing.pushes;
  return (
    <>
      <p role="status">{line(crossing, push, { set, say, numbers })}</p>
      <Picture
        {...{ set, say, numbers }}
        amps={push?.takeOver.typical ?? 0}
        from={push === undefined ? undefined : letter(push.from)}
        short={false}
      />
      {push !== undefined && <Bars {...{ set, say, numbers }} push={push} />}
      <p>
        <span class={`tag ${CROSSING_TAGS[crossing.verdict]}`}>{say(`across-verdict-${crossing.verdict}`)}</span>{' '}
        {crossing.reasons.map((reason) => say(`across-reason-${reason}`)).join(' ')}
      </p>
    </>
  );
}

const letter = (side: 'near' | 'far'): 'A' | 'B' => (side === 'near' ? 'A' : 'B');
const other = (side: 'A' | 'B'): 'A' | 'B' => (side === 'A' ? 'B' : 'A');

function line(crossing: InPhaseCrossing, push: CrossingPush | undefined, { say, numbers }: Parts): string {
  if (push === undefined) return say('across-level');
  const from = letter(push.from);
  const values = {
    from,
    to: other(from),
    step: numbers.voltsExactly(push.step.typical),
    pulse: numbers.ampsExactly(push.pulse.typical),
    over: numbers.ampsExactly(push.takeOver.typical),
    carries: numbers.ampsExactly(push.carries.typical),
    limit: numbers.ampsExactly(push.limit),
    link: numbers.voltsExactly(push.link.typical),
    ms: numbers.plain(toThousandths(push.timeConstant.typical), 1),
  };
  return [
    say('across-pulse', values),
    say('across-take-over', values),
    say(push.lowerGives === 'yes' ? 'across-not-lifted' : 'across-lifted', values),
    ...(push.trips === 'no' ? [say('across-carried', values)] : [say('across-trips', values)]),
    ...(crossing.cascade === 'no' ? [] : [say('across-cascade', values)]),
  ].join(' ');
}

function Reversed({ set, say, numbers }: Parts) {
  const found = useMemo(
    () =>
      crossingReversed(
        { volts: set.voltsA, trip: set.limitA, load: set.loadA, ...UNIT },
        { volts: set.voltsB, trip: set.limitB, load: set.loadB, ...UNIT },
        set.ohms,
      ),
    [set],
  );
  if (found.kind === 'no-solution') return <p role="status">{say('across-problem')}</p>;
  const amps = found.prospective.typical;
  return (
    <>
      <p role="status">
        {say('across-reversed', { amps: numbers.ampsExactly(amps) })} {say(`across-opens-${found.opens}`)}
      </p>
      <Picture {...{ set, say, numbers }} amps={amps} from="A" short />
      <p>
        <span class="tag short">{say('across-verdict-do-not-run')}</span> {say('across-reason-reversed')}
      </p>
    </>
  );
}

interface PictureProps extends Parts {
  readonly amps: number;
  readonly from: 'A' | 'B' | undefined;
  readonly short: boolean;
}

const HEIGHT = 196;
const RAILS = 132;

/** Both districts with their stages, the gap in both rails, and the train across; the arrow is as thick as its current. */
function Picture({ set, say, numbers, amps, from, short }: PictureProps) {
  const title = say('across-picture');
  const thick = Math.max(2, Math.min(12, 2 + 2.2 * amps));
  const [tail, head] = from === 'B' ? ['61%', '39%'] : ['39%', '61%'];
  return (
    <figure class="sheet">
      <svg class="histogram across" width="100%" height={HEIGHT} role="img" aria-label={title}>
        {(['A', 'B'] as const).map((side) => (
          <Side
            key={side}
            side={side}
            volts={numbers.volts(side === 'A' ? set.voltsA : set.voltsB)}
            load={say('across-load', { amps: numbers.ampsExactly(side === 'A' ? set.loadA : set.loadB) })}
          />
        ))}
        <svg x="50%" y={RAILS - 58} overflow="visible">
          <path class="train" d="M-66 18q0-14 14-14h104q14 0 14 14v18h-132z" />
          <circle class="wheel" cx="-46" cy="42" r="8" />
          <circle class="wheel" cx="-26" cy="42" r="8" />
          <circle class="wheel" cx="26" cy="42" r="8" />
          <circle class="wheel" cx="46" cy="42" r="8" />
        </svg>
        {from !== undefined && amps > 0 && (
          <g class={short ? 'flow short' : 'flow'}>
            <line x1={tail} x2={head} y1={RAILS + 30} y2={RAILS + 30} stroke-width={thick} />
            <svg x={head} y={RAILS + 30} overflow="visible">
              <path d={from === 'B' ? 'M-12 0 4-9v18z' : 'M12 0-4-9v18z'} />
            </svg>
            <text x="50%" y={RAILS + 58} text-anchor="middle">
              {numbers.ampsExactly(amps)}
            </text>
          </g>
        )}
      </svg>
      <figcaption>{say(short ? 'across-caption-reversed' : 'across-caption')}</figcaption>
    </figure>
  );
}

function Side({ side, volts, load }: { side: 'A' | 'B'; volts: string; load: string }) {
  const left = side === 'A';
  const [from, to] = left ? ['0', '48.6%'] : ['51.4%', '100%'];
  const middle = left ? '17%' : '83%';
  return (
    <g class={`district ${side.toLowerCase()}`}>
      <line x1={from} x2={to} y1={RAILS - 5} y2={RAILS - 5} />
      <line x1={from} x2={to} y1={RAILS + 5} y2={RAILS + 5} />
      <text x={middle} y="22" text-anchor="middle">
        <tspan class="name">{side}</tspan> {volts}
      </text>
      <text x={middle} y="46" text-anchor="middle">
        {load}
      </text>
      <line class="lead" x1={middle} x2={middle} y1="58" y2={RAILS - 5} />
    </g>
  );
}

/** Pulse, take-over and what the higher stage carries, against its limit. */
function Bars({ push, say, numbers }: Parts & { readonly push: CrossingPush }) {
  const rows = [
    ['pulse', push.pulse.typical],
    ['over', push.takeOver.typical],
    ['carries', push.carries.typical],
  ] as const;
  const most = Math.max(push.limit, ...rows.map(([, amps]) => amps)) * 1.1;
  return (
    <table class="bars num">
      <caption class="unseen">{say('across-bars')}</caption>
      <tbody>
        {rows.map(([id, amps]) => (
          <tr key={id}>
            <th scope="row">{say(`across-bar-${id}`)}</th>
            <td>
              <svg width="100%" height="22" aria-hidden="true">
                <rect
                  class={amps > push.limit ? 'over' : ''}
                  x="0"
                  y="3"
                  height="16"
                  width={`${(100 * amps) / most}%`}
                />
                <line x1={`${(100 * push.limit) / most}%`} x2={`${(100 * push.limit) / most}%`} y1="0" y2="22" />
              </svg>
            </td>
            <td class="num">{numbers.ampsExactly(amps)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={3}>{say('across-bar-limit', { limit: numbers.ampsExactly(push.limit) })}</td>
        </tr>
      </tfoot>
    </table>
  );
}

const field = (id: string, quantity: Quantity, least: number, most: number): NumberField =>
  number(`across-${id}`, quantity, least, most);

function Controls({
  set,
  say,
  numbers,
  change,
}: Parts & { readonly change: (some: Partial<TrainAcrossSettings>) => void }) {
  const slider = (one: NumberField, value: number, step: number, onValue: (value: number) => void) => (
    <FieldSlider
      key={one.id}
      field={one}
      value={value}
      step={step}
      problem="across-problem-range"
      say={say}
      numbers={numbers}
      onValue={onValue}
    />
  );
  return (
    <>
      <fieldset class="pair">
        <legend>{say('across-phase')}</legend>
        {[false, true].map((reversed) => (
          <label key={String(reversed)}>
            <input
              type="radio"
              name="across-phase"
              checked={set.reversed === reversed}
              onChange={() => change({ reversed })}
            />
            <span>{say(reversed ? 'across-phase-reversed' : 'across-phase-right')}</span>
          </label>
        ))}
      </fieldset>
      <div class="two even">
        <div class="part">
          {slider(field('volts-a', 'voltage', 5, 22), set.voltsA, 0.1, (voltsA) => change({ voltsA }))}
          {slider(field('load-a', 'current', 0, 10), set.loadA, 0.1, (loadA) => change({ loadA }))}
          {slider(field('limit-a', 'current', 0.5, 10), set.limitA, 0.5, (limitA) => change({ limitA }))}
        </div>
        <div class="part">
          {slider(field('volts-b', 'voltage', 5, 22), set.voltsB, 0.1, (voltsB) => change({ voltsB }))}
          {slider(field('load-b', 'current', 0, 10), set.loadB, 0.1, (loadB) => change({ loadB }))}
          {slider(field('limit-b', 'current', 0.5, 10), set.limitB, 0.5, (limitB) => change({ limitB }))}
        </div>
      </div>
      {slider(field('ohms', 'resistance', 0.1, 5), set.ohms, 0.1, (ohms) => change({ ohms }))}
    </>
  );
}
