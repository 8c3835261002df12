// The live figures about wires: volts at a train along the track, and what a short draws there. The real circuit, solved at each move.
import { useMemo, useState } from 'preact/hooks';
import type { FeedingPlan, FeedingProblem, Quantity, ShortAlong, TrainAlong } from '../../../engine/index.ts';
import {
  DROP_LIMIT,
  DROP_WANTED,
  ohmsPerMetre,
  SHORT_MARGIN,
  shortAlong,
  trainAlong,
  weakStretches,
  worstFaultHeat,
} from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { Numbers, type Say, sayer } from '../../words/index.ts';
import { Along, FieldSlider } from '../shared/index.ts';

export interface AlongFigureProps {
  readonly figure: 'voltage-along' | 'short-along';
  readonly language: string;
  /** All words whose keys begin with `along-`, `what-if-` and `as-a-`. */
  readonly words: Readonly<Record<string, string>>;
}

interface Settings {
  readonly volts: number;
  readonly amps: number;
  readonly trip: number;
  readonly length: number;
  /** Square metres. */
  readonly bus: number;
  readonly feeds: readonly number[];
  /** Where the train or the short is. */
  readonly at: number;
  /** Ohms a metre of one rail. */
  readonly rail: number;
}

const START: Settings = { volts: 15, amps: 1.5, trip: 3, length: 12, bus: 0.75e-6, feeds: [2, 6], at: 10, rail: 0.108 };
const FEEDER = { length: 0.3, ohmsPerMetre: ohmsPerMetre({ area: 0.5e-6, make: 'flexible' }) };
const STAGE_OHMS = 0.2;
const MOST_FEEDS = 6;

function planOf({ volts, length, bus, feeds, rail }: Settings): FeedingPlan {
  return {
    source: { volts, ohms: STAGE_OHMS },
    bus: { length, ohmsPerMetre: ohmsPerMetre({ area: bus, make: 'flexible' }), fedAt: 0, ring: false },
    feeders: feeds.map((at) => ({ at, ...FEEDER })),
    rails: { length, ohmsPerMetre: rail, joints: [] },
  };
}

export default function AlongFigure({ figure, language, words }: AlongFigureProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const numbers = useMemo(() => new Numbers(language), [language]);
  const [set, setSettings] = useState(START);
  const change = (some: Partial<Settings>): void => setSettings((old) => ({ ...old, ...some }));
  const moveFeed = (index: number, at: number): void =>
    setSettings((old) => ({ ...old, feeds: old.feeds.map((one, i) => (i === index ? at : one)) }));
  const parts = { set, change, moveFeed, say, numbers };
  return (
    <div class="live part">
      {figure === 'voltage-along' ? <Voltage {...parts} /> : <Short {...parts} />}
      <Controls {...parts} figure={figure} />
    </div>
  );
}

interface Parts {
  readonly set: Settings;
  readonly change: (some: Partial<Settings>) => void;
  readonly moveFeed: (index: number, at: number) => void;
  readonly say: Say;
  readonly numbers: Numbers;
}

function Voltage({ set, moveFeed, say, numbers }: Parts) {
  const { volts, amps, length, at } = set;
  const along = useMemo(() => trainAlong(planOf(set), amps), [set]);
  if (along.kind === 'no-solution') return <Problem found={along} say={say} />;
  const spot = Math.min(at, length);
  const here = nearest(along.points, spot)?.volts ?? 0;
  const { worst } = along;
  const low = Math.min(worst.volts, volts * (1 - DROP_LIMIT)) - 0.03 * volts;
  return (
    <>
      <p role="status">{voltageLine(along, here, set, { say, numbers })}</p>
      <Along
        id="voltage-along"
        title={say('along-voltage-title')}
        caption={say('along-voltage-caption', { amps: numbers.ampsExactly(amps), wire: numbers.wire(set.bus) })}
        length={length}
        points={along.points.map((point) => ({ at: point.at, value: point.volts }))}
        levels={[
          { value: volts * (1 - DROP_WANTED), label: say('along-level-wanted'), strong: false },
          { value: volts * (1 - DROP_LIMIT), label: say('along-level-most'), strong: true },
        ]}
        range={{ from: low, to: volts }}
        feeds={feedsOf(set, moveFeed)}
        spot={{ at: spot, value: here, label: numbers.voltsExactly(here) }}
        weak={[]}
        metres={(value) => numbers.metres(value)}
        show={(value) => numbers.voltsExactly(value)}
        axis={say('along-axis')}
        valueColumn={say('along-volts')}
        say={say}
      />
    </>
  );
}

function voltageLine(
  { worst }: TrainAlong,
  here: number,
  { volts }: Settings,
  { say, numbers }: Pick<Parts, 'say' | 'numbers'>,
): string {
  const values = {
    here: numbers.voltsExactly(here),
    worst: numbers.voltsExactly(worst.volts),
    at: numbers.metres(worst.at),
    share: numbers.share(worst.drop / volts),
  };
  return `${say('along-voltage-here', values)} ${say(`along-voltage-${verdictOf(worst.share)}`, values)}`;
}

function verdictOf(share: number): 'good' | 'bearable' | 'poor' {
  if (share <= DROP_WANTED) return 'good';
  return share <= DROP_LIMIT ? 'bearable' : 'poor';
}

function Short({ set, moveFeed, say, numbers }: Parts) {
  const { trip, length, at, volts } = set;
  const along = useMemo(() => shortAlong(planOf(set)), [set]);
  if (along.kind === 'no-solution') return <Problem found={along} say={say} />;
  const spot = Math.min(at, length);
  const here = nearest(along.points, spot)?.amps ?? 0;
  const top = Math.max(...along.points.map((point) => point.amps), SHORT_MARGIN * trip) * 1.08;
  return (
    <>
      <p role="status">{shortLine(along, here, set, { say, numbers })}</p>
      <Along
        id="short-along"
        title={say('along-short-title')}
        caption={say('along-short-caption', { volts: numbers.volts(volts), wire: numbers.wire(set.bus) })}
        length={length}
        points={along.points.map((point) => ({ at: point.at, value: point.amps }))}
        levels={[
          { value: trip, label: say('along-level-trip', { amps: numbers.ampsExactly(trip) }), strong: true },
          {
            value: SHORT_MARGIN * trip,
            label: say('along-level-margin', { amps: numbers.ampsExactly(SHORT_MARGIN * trip) }),
            strong: false,
          },
        ]}
        range={{ from: 0, to: Math.min(top, 12 * trip) }}
        feeds={feedsOf(set, moveFeed)}
        spot={{ at: spot, value: here, label: numbers.ampsExactly(here) }}
        weak={weakStretches(along, trip)}
        metres={(value) => numbers.metres(value)}
        show={(value) => numbers.ampsExactly(value)}
        axis={say('along-axis')}
        valueColumn={say('along-amps')}
        say={say}
      />
    </>
  );
}

function shortLine(
  along: ShortAlong,
  here: number,
  { trip, volts }: Settings,
  { say, numbers }: Pick<Parts, 'say' | 'numbers'>,
): string {
  const { weakest } = along;
  const heat = worstFaultHeat({ volts, ohms: weakest.ohms }, trip);
  const values = {
    here: numbers.ampsExactly(here),
    weakest: numbers.ampsExactly(weakest.amps),
    at: numbers.metres(weakest.at),
    trip: numbers.ampsExactly(trip),
    margin: numbers.ampsExactly(SHORT_MARGIN * trip),
    watts: numbers.watts(heat.watts),
  };
  const [first] = weakStretches(along, trip);
  const finding = weakest.amps <= trip ? 'does-not-trip' : 'close';
  return [
    say('along-short-here', values),
    say(first === undefined ? 'along-short-trips' : `along-short-${finding}`, values),
    say('along-short-heat', values),
  ].join(' ');
}

/** The point of the curve that is nearest to a place. */
function nearest<Point extends { readonly at: number }>(points: readonly Point[], at: number): Point | undefined {
  return points.reduce<Point | undefined>(
    (best, point) => (best === undefined || Math.abs(point.at - at) < Math.abs(best.at - at) ? point : best),
    undefined,
  );
}

const feedsOf = ({ feeds }: Settings, moveFeed: Parts['moveFeed']) =>
  feeds.map((at, index) => ({ at, label: String(index + 1), onMove: (to: number) => moveFeed(index, to) }));

function Problem({ found, say }: { found: FeedingProblem; say: Say }) {
  return <p role="status">{say(`along-problem-${found.because}`, { part: found.parts.join(', ') })}</p>;
}

const field = (id: string, quantity: Quantity, least: number, most: number): NumberField =>
  number(`along-${id}`, quantity, least, most);

function Controls({ set, change, moveFeed, say, numbers, figure }: Parts & Pick<AlongFigureProps, 'figure'>) {
  const { length, feeds } = set;
  const slider = (
    one: NumberField,
    value: number,
    step: number,
    onValue: (value: number) => void,
    label = say(one.id),
  ) => (
    <FieldSlider
      key={one.id}
      field={one}
      label={label}
      value={value}
      step={step}
      problem="along-problem-range"
      say={say}
      numbers={numbers}
      onValue={onValue}
    />
  );
  const voltage = figure === 'voltage-along';
  const inside = (at: number): number => Math.min(at, length);
  return (
    <div class="two even">
      <div class="part">
        {slider(
          field('at', 'length', 0, length),
          inside(set.at),
          0.1,
          (at) => change({ at }),
          say(voltage ? 'along-train-at' : 'along-short-at'),
        )}
        {voltage
          ? slider(field('train', 'current', 0.1, 5), set.amps, 0.1, (amps) => change({ amps }))
          : slider(field('trip', 'current', 0.5, 10), set.trip, 0.5, (trip) => change({ trip }))}
        {slider(field('bus', 'area', 0.14e-6, 4e-6), set.bus, 0.01e-6, (bus) => change({ bus }))}
        {slider(field('length', 'length', 2, 40), length, 0.5, (next) =>
          change({ length: next, feeds: feeds.map((at) => Math.min(at, next)), at: Math.min(set.at, next) }),
        )}
        {slider(field('rail', 'resistance-per-metre', 0.01, 0.4), set.rail, 0.001, (rail) => change({ rail }))}
      </div>
      <fieldset class="part plain">
        <legend>{say('along-feeds')}</legend>
        {feeds.map((at, index) =>
          slider(
            field(`feed-${index + 1}`, 'length', 0, length),
            inside(at),
            0.1,
            (next) => moveFeed(index, next),
            say('along-feed', { number: index + 1 }),
          ),
        )}
        <div class="acts">
          <button
            class="button quiet"
            type="button"
            disabled={feeds.length >= MOST_FEEDS}
            onClick={() => change({ feeds: [...feeds, length] })}
          >
            {say('along-feed-more')}
          </button>
          <button
            class="button quiet"
            type="button"
            disabled={feeds.length <= 1}
            onClick={() => change({ feeds: feeds.slice(0, -1) })}
          >
            {say('along-feed-less')}
          </button>
        </div>
      </fieldset>
    </div>
  );
}
