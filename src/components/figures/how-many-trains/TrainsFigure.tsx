// The live figures about trains on a supply: how many run, what a larger supply brings, what a second part adds. The real engine.
import { useMemo, useState } from 'preact/hooks';
import type { Fleet, Judgement, Stage, Supply } from '../../../engine/index.ts';
import {
  capacity,
  chanceAbove,
  countedTrains,
  districtLoad,
  evenness,
  histogram,
  judge,
  limitFor,
  worthOfOneAmpere,
} from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { Numbers, type Say, sayer } from '../../words/index.ts';
import { Histogram, Slider } from '../shared/index.ts';

export interface TrainsFigureProps {
  readonly figure: 'at-a-glance' | 'how-many-trains' | 'larger-supply' | 'booster-adds';
  readonly language: string;
  readonly words: Readonly<Record<string, string>>;
}

export default function TrainsFigure({ figure, language, words }: TrainsFigureProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const numbers = useMemo(() => new Numbers(language, 'metric', words), [language, words]);
  if (figure === 'at-a-glance') return <AtAGlance say={say} numbers={numbers} />;
  if (figure === 'how-many-trains') return <HowManyTrains say={say} numbers={numbers} />;
  if (figure === 'larger-supply') return <LargerSupply say={say} numbers={numbers} />;
  return <BoosterAdds say={say} numbers={numbers} />;
}

interface FigureProps {
  readonly say: Say;
  readonly numbers: Numbers;
}

const RAILS = { kind: 'follows' } as const;
const stageOf = (limit: number): Stage => ({ limit, rails: RAILS, ownUse: 0 });
const supplyOf = (amps: number): Supply => ({ kind: 'dc', volts: 16, amps });
const fleetOf = (modern: number, older: number, moving: number): Fleet => ({
  trains: countedTrains('h0', modern, older, 0),
  moving,
  coaches: 0,
  lamps: 'led',
  accessories: 0,
  stored: 0,
});
const BAR = 0.05;
const count = (id: string, least: number, most: number): NumberField => number(id, 'count', least, most);
const current = (id: string, least: number, most: number): NumberField => number(id, 'current', least, most);

function useSlider({ say, numbers }: FigureProps) {
  return (field: NumberField, key: string, value: number, onValue: (value: number) => void) => (
    <Slider
      field={field}
      label={say(key)}
      value={value}
      text={field.quantity === 'count' ? String(value) : numbers.ampsExactly(value)}
      least={field.least}
      most={field.most}
      step={field.quantity === 'count' ? 1 : 0.5}
      problem={say('what-if-problem', { least: field.least, most: field.most })}
      onValue={onValue}
    />
  );
}

function HowManyTrains({ say, numbers }: FigureProps) {
  const [total, setTotal] = useState(5);
  const [wanted, setMoving] = useState(4);
  const [older, setOlder] = useState(false);
  const [amps, setAmps] = useState(2);
  const moving = Math.min(wanted, total);
  const slider = useSlider({ say, numbers });
  const { load, able, judgement } = useMemo(() => {
    const fleet = older ? fleetOf(0, total, moving) : fleetOf(total, 0, moving);
    const able = capacity(supplyOf(amps), stageOf(limitFor(amps)));
    const load = districtLoad(fleet);
    return { load, able, judgement: judge(load, able) };
  }, [total, moving, older, amps]);
  return (
    <div class="live two">
      <Drawn
        id="how-many"
        say={say}
        numbers={numbers}
        load={load}
        usable={able.usable}
        hard={able.hard}
        caption={say('figure-caption', { trains: total, moving })}
      />
      <div class="part">
        <p role="status">{resultLine(judgement, able.usable, { say, numbers })}</p>
        <fieldset class="pair">
          <legend>{say('lesson-kind')}</legend>
          {[false, true].map((value) => (
            <label key={String(value)}>
              <input type="radio" name="lesson-kind" checked={older === value} onChange={() => setOlder(value)} />
              <span>{say(value ? 'lesson-kind-older' : 'lesson-kind-modern')}</span>
            </label>
          ))}
        </fieldset>
        {slider(count('total', 1, 12), 'lesson-total', total, setTotal)}
        {slider(count('moving', 0, total), 'lesson-moving', moving, setMoving)}
        {slider(current('supply', 1, 6), 'lesson-supply', amps, setAmps)}
      </div>
    </div>
  );
}

/** What makes the home page's point: so many trains on one supply, and both can be moved. */
const AT_A_GLANCE = 8;

function AtAGlance({ say, numbers }: FigureProps) {
  const [moving, setMoving] = useState(5);
  const [amps, setAmps] = useState(2);
  const slider = useSlider({ say, numbers });
  const load = useMemo(() => districtLoad(fleetOf(AT_A_GLANCE, 0, moving)), [moving]);
  const able = capacity(supplyOf(amps), stageOf(limitFor(amps)));
  return (
    <div class="live part">
      <Drawn
        id="glance"
        say={say}
        numbers={numbers}
        load={load}
        usable={able.usable}
        hard={able.hard}
        caption={say('figure-caption', { trains: AT_A_GLANCE, moving })}
      />
      <p role="status">{resultLine(judge(load, able), able.usable, { say, numbers })}</p>
      {slider(count('moving', 0, AT_A_GLANCE), 'lesson-trains-moving', moving, setMoving)}
      {slider(current('supply', 1, 6), 'lesson-supply', amps, setAmps)}
    </div>
  );
}

function LargerSupply({ say, numbers }: FigureProps) {
  const [amps, setAmps] = useState(2);
  const [limit, setLimit] = useState(3);
  const slider = useSlider({ say, numbers });
  const load = useMemo(() => districtLoad(fleetOf(4, 2, 3)), []);
  const able = capacity(supplyOf(amps), stageOf(limit));
  const more = worthOfOneAmpere(supplyOf(amps), stageOf(limit));
  return (
    <div class="live two">
      <Drawn
        id="larger"
        say={say}
        numbers={numbers}
        load={load}
        usable={able.usable}
        hard={able.hard}
        caption={say('figure-caption', { trains: 6, moving: 3 })}
      />
      <div class="part">
        <p role="status">
          {say('lesson-result-supply', {
            usable: numbers.ampsExactly(able.usable),
            by: say(`lesson-by-${able.limitedBy}`),
          })}{' '}
          {say('lesson-next-supply', { more: numbers.ampsExactly(more) })}{' '}
          {resultLine(judge(load, able), able.usable, { say, numbers })}
        </p>
        {slider(current('supply', 1, 6), 'lesson-supply', amps, setAmps)}
        {slider(current('limit', 1, 5), 'lesson-limit', limit, setLimit)}
      </div>
    </div>
  );
}

function BoosterAdds({ say, numbers }: FigureProps) {
  const [trains, setTrains] = useState<readonly number[]>([3, 3]);
  const [amps, setAmps] = useState<readonly number[]>([3, 2]);
  const slider = useSlider({ say, numbers });
  const parts = useMemo(
    () =>
      [0, 1].map((index) => {
        const here = trains[index] ?? 0;
        const able = capacity(supplyOf(amps[index] ?? 1), stageOf(3));
        return { here, able, load: districtLoad(fleetOf(here, 0, here)) };
      }),
    [trains, amps],
  );
  const change = (list: readonly number[], index: number, value: number): number[] =>
    list.map((old, i) => (i === index ? value : old));
  const division = evenness(parts.map((part) => part.here));
  return (
    <div class="live part">
      <p role="status">
        {say('lesson-result-division', {
          here: numbers.amps(parts[0]?.able.hard ?? 0),
          there: numbers.amps(parts[1]?.able.hard ?? 0),
          evenness: say(`evenness-${division.evenness}`),
        })}
      </p>
      <div class="two even">
        {parts.map((part, index) => {
          const name = index === 0 ? 'A' : 'B';
          const side = index === 0 ? 'here' : 'there';
          return (
            <div class="part" key={name}>
              <Drawn
                id={`part-${name}`}
                say={say}
                numbers={numbers}
                load={part.load}
                usable={part.able.usable}
                hard={part.able.hard}
                caption={say('lesson-part', {
                  part: name,
                  usable: numbers.ampsExactly(part.able.usable),
                  share: numbers.share(chanceAbove(part.load.distribution, part.able.usable)),
                })}
              />
              {slider(count(`trains-${name}`, 0, 8), `lesson-${side}`, part.here, (value) =>
                setTrains(change(trains, index, value)),
              )}
              {slider(current(`supply-${name}`, 1, 5), `lesson-supply-${side}`, amps[index] ?? 1, (value) =>
                setAmps(change(amps, index, value)),
              )}
            </div>
          );
        })}
      </div>
    </div>
  );
}

interface DrawnProps extends FigureProps {
  readonly id: string;
  readonly load: ReturnType<typeof districtLoad>;
  readonly usable: number;
  readonly hard: number;
  readonly caption: string;
}

function Drawn({ load, caption, ...rest }: DrawnProps) {
  const bars = useMemo(() => histogram(load.distribution, BAR), [load]);
  return <Histogram {...rest} bars={bars} title={rest.say('figure-title')} caption={caption} />;
}

function resultLine(judgement: Judgement, usable: number, { say, numbers }: FigureProps): string {
  return say('lesson-result-above', {
    usable: numbers.ampsExactly(usable),
    share: numbers.share(judgement.aboveUsable),
    verdict: say(`verdict-${judgement.verdict}`),
  });
}
