// A breaker below its unit, and a short behind it: what each of the two passes, and which opens.
import { useMemo } from 'preact/hooks';
import type { Opening, Quantity } from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { Numbers, type Say, sayer } from '../../words/index.ts';
import { type AllWritten, FieldSlider, useSettings, within } from '../shared/index.ts';
import { openingOf, WHO_OPENS_START, type WhoOpensSettings } from './model.ts';

export interface WhoOpensProps {
  readonly language: string;
  /** The words of the rooms `who-opens` and `units`. */
  readonly words: Readonly<Record<string, string>>;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

const WRITTEN: AllWritten<WhoOpensSettings> = {
  short: within(0.5, 20),
  others: within(0, 5),
  breaker: within(0.5, 10),
  breakerTime: within(0.005, 0.5),
  unit: within(0.5, 10),
  unitTime: within(0.005, 0.5),
};

const TAGS: Readonly<Record<Opening['opens'], string>> = {
  breaker: 'enough',
  unit: 'short',
  either: 'tight',
  nothing: 'short',
};

export default function WhoOpens({ language, words, begins }: WhoOpensProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const numbers = useMemo(() => new Numbers(language, 'metric', words), [language, words]);
  const [set, change] = useSettings(WHO_OPENS_START, WRITTEN, begins);
  const opening = openingOf(set);
  const { opens, passes, seconds } = opening;
  const values = {
    breaker: numbers.ampsExactly(passes.breaker),
    unit: numbers.ampsExactly(passes.unit),
    after: numbers.quantity(seconds ?? 0, 'time'),
  };
  return (
    <div class="live part">
      <p role="status">
        <span class={`tag ${TAGS[opens]}`}>{say(`opens-first-${opens}`)}</span>{' '}
        {say(`opens-first-${opens}-why`, values)}
      </p>
      <Passes opening={opening} set={set} say={say} numbers={numbers} />
      <Controls set={set} change={change} say={say} numbers={numbers} />
    </div>
  );
}

interface Parts {
  readonly set: WhoOpensSettings;
  readonly say: Say;
  readonly numbers: Numbers;
}

/** What each passes, with a line at its trip current. */
function Passes({ opening: { passes }, set, say, numbers }: Parts & { readonly opening: Opening }) {
  const rows = [
    ['breaker', passes.breaker, set.breaker],
    ['unit', passes.unit, set.unit],
  ] as const;
  const most = Math.max(passes.unit, set.unit, passes.breaker, set.breaker) * 1.1;
  return (
    <table class="bars num">
      <caption class="small">{say('opens-bars')}</caption>
      <tbody>
        {rows.map(([id, amps, trip]) => (
          <tr key={id}>
            <th scope="row">{say(`opens-passes-${id}`, { trip: numbers.ampsExactly(trip) })}</th>
            <td>
              <svg width="100%" height="22" aria-hidden="true">
                <rect class={amps > trip ? 'over' : ''} x="0" y="3" height="16" width={`${(100 * amps) / most}%`} />
                <line x1={`${(100 * trip) / most}%`} x2={`${(100 * trip) / most}%`} y1="0" y2="22" />
              </svg>
            </td>
            <td class="num">{numbers.ampsExactly(amps)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const field = (id: string, quantity: Quantity, least: number, most: number): NumberField =>
  number(`opens-${id}`, quantity, least, most);

function Controls({
  set,
  say,
  numbers,
  change,
}: Parts & { readonly change: (some: Partial<WhoOpensSettings>) => void }) {
  const slider = (one: NumberField, value: number, step: number, onValue: (value: number) => void) => (
    <FieldSlider
      key={one.id}
      field={one}
      value={value}
      step={step}
      problem="opens-problem-range"
      say={say}
      numbers={numbers}
      onValue={onValue}
    />
  );
  return (
    <div class="two even">
      <div class="part">
        {slider(field('short', 'current', 0.5, 20), set.short, 0.1, (short) => change({ short }))}
        {slider(field('breaker', 'current', 0.5, 10), set.breaker, 0.1, (breaker) => change({ breaker }))}
        {slider(field('breaker-time', 'time', 0.005, 0.5), set.breakerTime, 0.005, (breakerTime) =>
          change({ breakerTime }),
        )}
      </div>
      <div class="part">
        {slider(field('others', 'current', 0, 5), set.others, 0.1, (others) => change({ others }))}
        {slider(field('unit', 'current', 0.5, 10), set.unit, 0.1, (unit) => change({ unit }))}
        {slider(field('unit-time', 'time', 0.005, 0.5), set.unitTime, 0.005, (unitTime) => change({ unitTime }))}
      </div>
    </div>
  );
}
