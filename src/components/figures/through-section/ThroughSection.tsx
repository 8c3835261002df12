// A reversing section laid out straight, with a train that is pushed through it: which end its metal bridges, and whether poles agree there.
import { useMemo } from 'preact/hooks';
import type { SectionFound } from '../../../engine/index.ts';
import { throughSection } from '../../../engine/index.ts';
import type { NumberField } from '../../../wizards/planning/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import { useMeasures } from '../../shared/index.ts';
import { inMeasures, Numbers, type Say, sayer } from '../../words/index.ts';
import { type AllWritten, FieldSlider, oneOf, useSettings, within } from '../shared/index.ts';
import { THROUGH_SECTION_START, type ThroughSectionSettings } from './model.ts';

export interface ThroughSectionProps {
  readonly language: string;
  /** The words of the rooms `through-section` and `units`. */
  readonly words: Readonly<Record<string, string>>;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

const DEVICES = ['none', 'switch', 'automatic'] as const;
const ENDS = ['entry', 'exit'] as const;
/** Where the front of the train can be put, and what of the track outside is seen, metres. */
const FRONT = { least: -0.3, most: 5.8 } as const;

const WRITTEN: AllWritten<ThroughSectionSettings> = {
  length: within(0.3, 3),
  metal: within(0.1, 2.5),
  front: within(FRONT.least, FRONT.most),
  device: oneOf(...DEVICES),
  thrown: oneOf(...ENDS),
};

export default function ThroughSection({ language, words, begins }: ThroughSectionProps) {
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const say = useMemo(() => sayer(inMeasures(words, numbers), language), [words, numbers, language]);
  const [set, change] = useSettings(THROUGH_SECTION_START, WRITTEN, begins);
  const found = throughSection({ ...set, thrownFor: set.thrown });
  const { shortAt } = found;
  return (
    <div class="live part">
      <p role="status">
        <span class={`tag ${shortAt === undefined ? 'enough' : 'short'}`}>
          {say(shortAt === undefined ? 'section-no-short' : 'section-short')}
        </span>{' '}
        {say(statusOf(found, set))}
      </p>
      <Picture found={found} set={set} say={say} />
      <Controls set={set} change={change} say={say} numbers={numbers} />
    </div>
  );
}

/** The sentence for where the train is, what turns the section over, and whether poles agree. */
function statusOf({ place, shortAt }: SectionFound, { device }: ThroughSectionSettings): string {
  if (place === 'both') return 'section-both';
  if (shortAt !== undefined) return `section-short-${shortAt}-${device}`;
  return place === 'inside' || place === 'leaving' ? `section-${place}-${device}` : `section-${place}`;
}

interface PictureProps {
  readonly found: SectionFound;
  readonly set: ThroughSectionSettings;
  readonly say: Say;
}

const HEIGHT = 150;
const [UPPER, LOWER] = [92, 112];

/** Outside before the entry, the section, and outside again behind the exit: the same track, come round to its other side. */
function Picture({ found, set, say }: PictureProps) {
  const { length, metal, front } = set;
  const from = FRONT.least - metal;
  const to = length + metal - FRONT.least;
  const at = (metres: number): string => `${(100 * (metres - from)) / (to - from)}%`;
  const turned = found.suits === 'exit';
  const spot = Math.min(front, to);
  return (
    <figure class="sheet">
      <svg class="histogram across" width="100%" height={HEIGHT} role="img" aria-label={say('section-picture')}>
        <Pair from="0" to={at(0)} upper="a" />
        <Pair from={at(0)} to={at(length)} upper={turned ? 'b' : 'a'} />
        <Pair from={at(length)} to="100%" upper="b" />
        {ENDS.map((end) => (
          <g key={end} class={found.shortAt === end ? 'flow short' : 'flow'}>
            <line
              x1={at(end === 'entry' ? 0 : length)}
              x2={at(end === 'entry' ? 0 : length)}
              y1={UPPER - 18}
              y2={LOWER + 14}
              stroke-width={found.shortAt === end ? 7 : 3}
            />
            <text x={at(end === 'entry' ? 0 : length)} y="142" text-anchor="middle">
              {say(`section-${end}`)}
            </text>
          </g>
        ))}
        <line class="train" x1={at(spot - metal)} x2={at(spot)} y1="60" y2="60" stroke-width="5" />
        {[spot - metal, spot].map((wheel) => (
          <circle key={wheel} class="wheel" cx={at(wheel)} cy="76" r="8" />
        ))}
        <text x={at(spot - metal)} y="46" text-anchor="start">
          {say('section-train')}
        </text>
        <text x="0" y="20">
          {say('section-key-a')}
        </text>
        <text x="100%" y="20" text-anchor="end">
          {say('section-key-b')}
        </text>
      </svg>
      <figcaption>{say('section-caption')}</figcaption>
    </figure>
  );
}

/** Two rails; the pole of the upper one, and the other pole below. */
function Pair({ from, to, upper }: { readonly from: string; readonly to: string; readonly upper: 'a' | 'b' }) {
  return (
    <>
      <g class={`district ${upper}`}>
        <line x1={from} x2={to} y1={UPPER} y2={UPPER} />
      </g>
      <g class={`district ${upper === 'a' ? 'b' : 'a'}`}>
        <line x1={from} x2={to} y1={LOWER} y2={LOWER} />
      </g>
    </>
  );
}

const field = (id: string, least: number, most: number): NumberField => number(`section-${id}`, 'length', least, most);

interface ControlsProps {
  readonly set: ThroughSectionSettings;
  readonly change: (some: Partial<ThroughSectionSettings>) => void;
  readonly say: Say;
  readonly numbers: Numbers;
}

function Controls({ set, change, say, numbers }: ControlsProps) {
  const slider = (one: NumberField, value: number, onValue: (value: number) => void) => (
    <FieldSlider
      key={one.id}
      field={one}
      value={value}
      step={0.05}
      problem="section-problem-range"
      say={say}
      numbers={numbers}
      onValue={onValue}
    />
  );
  return (
    <>
      {slider(field('front', FRONT.least, FRONT.most), set.front, (front) => change({ front }))}
      <Choice name="device" all={DEVICES} chosen={set.device} say={say} onChoose={(device) => change({ device })} />
      {set.device === 'switch' && (
        <Choice name="thrown" all={ENDS} chosen={set.thrown} say={say} onChoose={(thrown) => change({ thrown })} />
      )}
      <div class="two even">
        {slider(field('metal', 0.1, 2.5), set.metal, (metal) => change({ metal }))}
        {slider(field('length', 0.3, 3), set.length, (length) => change({ length }))}
      </div>
    </>
  );
}

interface ChoiceProps<Id extends string> {
  readonly name: string;
  readonly all: readonly Id[];
  readonly chosen: Id;
  readonly say: Say;
  readonly onChoose: (id: Id) => void;
}

function Choice<Id extends string>({ name, all, chosen, say, onChoose }: ChoiceProps<Id>) {
  return (
    <fieldset class="pair">
      <legend>{say(`section-${name}`)}</legend>
      {all.map((id) => (
        <label key={id}>
          <input type="radio" name={`section-${name}`} checked={chosen === id} onChange={() => onChoose(id)} />
          <span>{say(`section-${name}-${id}`)}</span>
        </label>
      ))}
    </fieldset>
  );
}
