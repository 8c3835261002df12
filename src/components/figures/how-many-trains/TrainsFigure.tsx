// The live figures about trains on a supply: how many run, what a larger supply brings, what a second part adds. The real engine.
import { useMemo, useState } from 'preact/hooks';
import { evenness, histogram } from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { Numbers, type Say, sayer } from '../../words/index.ts';
import { type AllWritten, Histogram, Slider, useSettings, whole, within, yesOrNo } from '../shared/index.ts';
import type { Carried, Divided, Larger, Trains } from './models.ts';
import {
  DIVIDED_START,
  dividedParts,
  LARGER_FLEET,
  LARGER_START,
  largerSupply,
  movingOf,
  TRAINS_START,
  trainsOn,
} from './models.ts';

export interface TrainsFigureProps {
  readonly figure: 'at-a-glance' | 'how-many-trains' | 'larger-supply' | 'booster-adds';
  readonly language: string;
  readonly words: Readonly<Record<string, string>>;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

export default function TrainsFigure({ figure, language, words, begins }: TrainsFigureProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const numbers = useMemo(() => new Numbers(language, 'metric', words), [language, words]);
  if (figure === 'at-a-glance') return <AtAGlance say={say} numbers={numbers} />;
  const parts = { say, numbers, begins };
  if (figure === 'how-many-trains') return <HowManyTrains {...parts} />;
  if (figure === 'larger-supply') return <LargerSupply {...parts} />;
  return <BoosterAdds {...parts} />;
}

interface FigureProps {
  readonly say: Say;
  readonly numbers: Numbers;
}

interface BegunProps extends FigureProps {
  readonly begins: string | undefined;
}

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

const TRAINS_WRITTEN: AllWritten<Trains> = {
  total: whole(1, 12),
  moving: whole(0, 12),
  older: yesOrNo,
  supply: within(1, 6),
};

function HowManyTrains({ say, numbers, begins }: BegunProps) {
  const [set, change] = useSettings(TRAINS_START, TRAINS_WRITTEN, begins);
  const { total, older, supply } = set;
  const moving = movingOf(set);
  const slider = useSlider({ say, numbers });
  const carried = useMemo(() => trainsOn(set), [set]);
  return (
    <div class="live two">
      <Drawn
        id="how-many"
        say={say}
        numbers={numbers}
        {...carried}
        caption={say('figure-caption', { trains: total, moving })}
      />
      <div class="part">
        <p role="status">{resultLine(carried, { say, numbers })}</p>
        <fieldset class="pair">
          <legend>{say('lesson-kind')}</legend>
          {[false, true].map((value) => (
            <label key={String(value)}>
              <input
                type="radio"
                name="lesson-kind"
                checked={older === value}
                onChange={() => change({ older: value })}
              />
              <span>{say(value ? 'lesson-kind-older' : 'lesson-kind-modern')}</span>
            </label>
          ))}
        </fieldset>
        {slider(count('total', 1, 12), 'lesson-total', total, (value) => change({ total: value }))}
        {slider(count('moving', 0, total), 'lesson-moving', moving, (value) => change({ moving: value }))}
        {slider(current('supply', 1, 6), 'lesson-supply', supply, (value) => change({ supply: value }))}
      </div>
    </div>
  );
}

/** What makes the home page's point: so many trains on one supply, and both can be moved. */
const AT_A_GLANCE = 8;

function AtAGlance({ say, numbers }: FigureProps) {
  const [moving, setMoving] = useState(5);
  const [supply, setSupply] = useState(2);
  const slider = useSlider({ say, numbers });
  const carried = useMemo(() => trainsOn({ total: AT_A_GLANCE, moving, older: false, supply }), [moving, supply]);
  return (
    <div class="live part">
      <Drawn
        id="glance"
        say={say}
        numbers={numbers}
        {...carried}
        caption={say('figure-caption', { trains: AT_A_GLANCE, moving })}
      />
      <p role="status">{resultLine(carried, { say, numbers })}</p>
      {slider(count('moving', 0, AT_A_GLANCE), 'lesson-trains-moving', moving, setMoving)}
      {slider(current('supply', 1, 6), 'lesson-supply', supply, setSupply)}
    </div>
  );
}

const LARGER_WRITTEN: AllWritten<Larger> = { supply: within(1, 6), limit: within(1, 5) };

function LargerSupply({ say, numbers, begins }: BegunProps) {
  const [set, change] = useSettings(LARGER_START, LARGER_WRITTEN, begins);
  const slider = useSlider({ say, numbers });
  const carried = useMemo(() => largerSupply(set), [set]);
  const { modern, older, moving } = LARGER_FLEET;
  return (
    <div class="live two">
      <Drawn
        id="larger"
        say={say}
        numbers={numbers}
        {...carried}
        caption={say('figure-caption', { trains: modern + older, moving })}
      />
      <div class="part">
        <p role="status">
          {say('lesson-result-supply', {
            usable: numbers.ampsExactly(carried.able.usable),
            by: say(`lesson-by-${carried.able.limitedBy}`),
          })}{' '}
          {say('lesson-next-supply', { more: numbers.ampsExactly(carried.more) })}{' '}
          {resultLine(carried, { say, numbers })}
        </p>
        {slider(current('supply', 1, 6), 'lesson-supply', set.supply, (supply) => change({ supply }))}
        {slider(current('limit', 1, 5), 'lesson-limit', set.limit, (limit) => change({ limit }))}
      </div>
    </div>
  );
}

const DIVIDED_WRITTEN: AllWritten<Divided> = {
  here: whole(0, 8),
  there: whole(0, 8),
  a: within(1, 5),
  b: within(1, 5),
};

function BoosterAdds({ say, numbers, begins }: BegunProps) {
  const [set, change] = useSettings(DIVIDED_START, DIVIDED_WRITTEN, begins);
  const slider = useSlider({ say, numbers });
  const parts = useMemo(() => dividedParts(set), [set]);
  const division = evenness(parts.map(({ trains }) => trains));
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
                {...part}
                caption={say('lesson-part', {
                  part: name,
                  usable: numbers.ampsExactly(part.able.usable),
                  share: numbers.share(part.judgement.aboveUsable),
                  verdict: say(`verdict-${part.judgement.verdict}`),
                })}
              />
              {slider(count(`trains-${name}`, 0, 8), `lesson-${side}`, part.trains, (value) =>
                change(index === 0 ? { here: value } : { there: value }),
              )}
              {slider(current(`supply-${name}`, 1, 5), `lesson-supply-${side}`, index === 0 ? set.a : set.b, (value) =>
                change(index === 0 ? { a: value } : { b: value }),
              )}
            </div>
          );
        })}
      </div>
    </div>
  );
}

interface DrawnProps extends FigureProps, Pick<Carried, 'load' | 'able'> {
  readonly id: string;
  readonly caption: string;
}

function Drawn({ id, load, able, caption, say, numbers }: DrawnProps) {
  const bars = useMemo(() => histogram(load.distribution, BAR), [load]);
  const { usable, hard } = able;
  return <Histogram {...{ id, usable, hard, caption, bars, say, numbers }} title={say('figure-title')} />;
}

function resultLine({ judgement, able }: Carried, { say, numbers }: FigureProps): string {
  return say('lesson-result-above', {
    usable: numbers.ampsExactly(able.usable),
    share: numbers.share(judgement.aboveUsable),
    hard: numbers.ampsExactly(able.hard),
    over: numbers.share(judgement.aboveHard),
    verdict: say(`verdict-${judgement.verdict}`),
  });
}
