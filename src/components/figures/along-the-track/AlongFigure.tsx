// The live figures about wires: volts at a train along the track, and what a short draws there. The real circuit, solved at each move.
import { useMemo, useState } from 'preact/hooks';
import type {
  FeedingPlan,
  FeedingProblem,
  PlanCircuit,
  Quantity,
  ShortAlong,
  TrainAlong,
} from '../../../engine/index.ts';
import {
  dropFinding,
  FEEDER_WIRE,
  faultHeatAlong,
  ohmsPerMetre,
  shortAmpsAt,
  solvePlan,
  stageOhms,
  sureTrip,
  tripFinding,
  voltsAt,
} from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { useMeasures } from '../../shared/index.ts';
import { inMeasures, Numbers, type Say, sayer } from '../../words/index.ts';
import { FieldSlider, partsOf, ShortsAlong, VoltsAlong } from '../shared/index.ts';

export interface AlongFigureProps {
  readonly figure: 'voltage-along' | 'short-along';
  readonly language: string;
  /** The words of the rooms `along-the-track`, `along`, `charts` and `units`. */
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
const FEEDER = { length: FEEDER_WIRE.length, ohmsPerMetre: ohmsPerMetre(FEEDER_WIRE) };
const MOST_FEEDS = 6;

/** Moving the train or the short along it does not lay it anew. */
function useCircuit(set: Settings): PlanCircuit | FeedingProblem {
  const { volts, length, bus, feeds, rail } = set;
  return useMemo(() => solvePlan(planOf(set)), [volts, length, bus, feeds, rail]);
}

function planOf({ volts, length, bus, feeds, rail }: Settings): FeedingPlan {
  return {
    source: { volts, ohms: stageOhms().to },
    bus: { length, ohmsPerMetre: ohmsPerMetre({ area: bus, make: 'flexible' }), fedAt: 0, ring: false },
    feeders: feeds.map((at) => ({ at, ...FEEDER })),
    rails: { length, ohmsPerMetre: rail, joints: [] },
  };
}

export default function AlongFigure({ figure, language, words }: AlongFigureProps) {
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const say = useMemo(() => sayer(inMeasures(words, numbers), language), [words, numbers, language]);
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
  const circuit = useCircuit(set);
  const along = useMemo(() => (circuit.kind === 'circuit' ? circuit.train(amps) : circuit), [circuit, amps]);
  if (along.kind === 'no-solution') return <Problem found={along} say={say} />;
  const spot = Math.min(at, length);
  const here = voltsAt(along, spot);
  return (
    <>
      <p role="status">{voltageLine(along, here, { say, numbers })}</p>
      <VoltsAlong
        id="voltage-along"
        caption={say('along-voltage-caption', { amps: numbers.ampsExactly(amps), wire: numbers.wire(set.bus) })}
        length={length}
        along={along}
        volts={volts}
        feeds={feedsOf(set, moveFeed)}
        spot={{ at: spot, volts: here }}
        say={say}
        numbers={numbers}
      />
    </>
  );
}

function voltageLine({ worst }: TrainAlong, here: number, { say, numbers }: Pick<Parts, 'say' | 'numbers'>): string {
  const values = {
    here: numbers.voltsExactly(here),
    worst: numbers.voltsExactly(worst.volts),
    at: numbers.metres(worst.at),
    share: numbers.share(worst.wiringShare),
  };
  return `${say('along-voltage-here', values)} ${say(`along-voltage-${dropFinding(worst.wiringShare)}`, values)}`;
}

function Short({ set, moveFeed, say, numbers }: Parts) {
  const { trip, length, at, volts } = set;
  const circuit = useCircuit(set);
  const along = useMemo(() => (circuit.kind === 'circuit' ? circuit.short() : circuit), [circuit]);
  if (along.kind === 'no-solution') return <Problem found={along} say={say} />;
  const spot = Math.min(at, length);
  const here = shortAmpsAt(along, spot);
  return (
    <>
      <p role="status">{shortLine(along, here, trip, { say, numbers })}</p>
      <ShortsAlong
        id="short-along"
        caption={say('along-short-caption', { volts: numbers.volts(volts), wire: numbers.wire(set.bus) })}
        length={length}
        along={along}
        trip={trip}
        feeds={feedsOf(set, moveFeed)}
        spot={{ at: spot, amps: here }}
        show={(value) => numbers.ampsExactly(value)}
        say={say}
        numbers={numbers}
      />
    </>
  );
}

function shortLine(
  along: ShortAlong,
  here: number,
  trip: number,
  { say, numbers }: Pick<Parts, 'say' | 'numbers'>,
): string {
  const { weakest } = along;
  const values = {
    here: numbers.ampsExactly(here),
    weakest: numbers.ampsExactly(weakest.amps),
    at: numbers.metres(weakest.at),
    trip: numbers.ampsExactly(trip),
    margin: numbers.ampsExactly(sureTrip(trip)),
    watts: numbers.watts(faultHeatAlong(along, trip).watts),
  };
  return [
    say('along-short-here', values),
    say(`along-short-${tripFinding(weakest.amps, trip)}`, values),
    say('along-short-heat', values),
  ].join(' ');
}

const feedsOf = ({ feeds }: Settings, moveFeed: Parts['moveFeed']) =>
  feeds.map((at, index) => ({ at, label: String(index + 1), onMove: (to: number) => moveFeed(index, to) }));

function Problem({ found, say }: { found: FeedingProblem; say: Say }) {
  return <p role="status">{say(`along-problem-${found.because}`, { part: partsOf(found.parts, say) })}</p>;
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
