// The live figures about wires: volts at a train along the track, and what a short draws there. The real circuit, solved at each move.
import { useMemo } from 'preact/hooks';
import type { FeedingProblem, PlanCircuit, Quantity, ShortAlong, TrainAlong } from '../../../engine/index.ts';
import {
  dropFinding,
  faultHeatAlong,
  shortAmpsAt,
  solvePlan,
  sureTrip,
  tripFinding,
  voltsAt,
} from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { useMeasures } from '../../shared/index.ts';
import { inMeasures, Numbers, type Say, sayer } from '../../words/index.ts';
import {
  type AllWritten,
  FieldSlider,
  listOf,
  partsOf,
  ShortsAlong,
  useSettings,
  VoltsAlong,
  within,
} from '../shared/index.ts';
import { ALONG_START, type AlongSettings, planOf } from './model.ts';

const MOST_FEEDS = 6;

export interface AlongFigureProps {
  readonly figure: 'voltage-along' | 'short-along';
  readonly language: string;
  /** The words of the rooms `along-the-track`, `along`, `charts` and `units`. */
  readonly words: Readonly<Record<string, string>>;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

/** Moving the train or the short along it does not lay it anew. */
function useCircuit(set: AlongSettings): PlanCircuit | FeedingProblem {
  const { volts, length, bus, feeds, rail } = set;
  return useMemo(() => solvePlan(planOf(set)), [volts, length, bus, feeds, rail]);
}

/** Millimetres of copper in the address, metres squared inside; the rest as people write it. */
const WRITTEN: AllWritten<AlongSettings> = {
  volts: within(5, 22),
  amps: within(0.1, 5),
  trip: within(0.5, 10),
  length: within(2, 40),
  bus: within(0.14e-6, 4e-6, 1e6),
  feeds: listOf(within(0, 40), MOST_FEEDS),
  at: within(0, 40),
  rail: within(0.01, 0.4),
};

export default function AlongFigure({ figure, language, words, begins }: AlongFigureProps) {
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const say = useMemo(() => sayer(inMeasures(words, numbers), language), [words, numbers, language]);
  const [set, change] = useSettings(ALONG_START, WRITTEN, begins);
  const moveFeed = (index: number, at: number): void =>
    change({ feeds: set.feeds.map((one, i) => (i === index ? at : one)) });
  const parts = { set, change, moveFeed, say, numbers };
  return (
    <div class="live part">
      {figure === 'voltage-along' ? <Voltage {...parts} /> : <Short {...parts} />}
      <Controls {...parts} figure={figure} />
    </div>
  );
}

interface Parts {
  readonly set: AlongSettings;
  readonly change: (some: Partial<AlongSettings>) => void;
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
      <p role="status">{voltageLine(along, here, volts, { say, numbers })}</p>
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

function voltageLine(
  { worst, stageDrop }: TrainAlong,
  here: number,
  volts: number,
  { say, numbers }: Pick<Parts, 'say' | 'numbers'>,
): string {
  const values = {
    here: numbers.voltsExactly(here),
    worst: numbers.voltsExactly(worst.volts),
    at: numbers.metres(worst.at),
    volts: numbers.volts(volts),
    kept: numbers.voltsExactly(stageDrop),
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
  const heat = faultHeatAlong(along, trip);
  const values = {
    here: numbers.ampsExactly(here),
    weakest: numbers.ampsExactly(weakest.amps),
    at: numbers.metres(weakest.at),
    trip: numbers.ampsExactly(trip),
    margin: numbers.ampsExactly(sureTrip(trip)),
    watts: numbers.watts(heat.watts),
    hottest: numbers.metres(heat.at),
  };
  return [
    say('along-short-here', values),
    say(`along-short-${tripFinding(weakest.amps, trip)}`, values),
    say('along-short-heat', values),
  ].join(' ');
}

const feedsOf = ({ feeds }: AlongSettings, moveFeed: Parts['moveFeed']) =>
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
