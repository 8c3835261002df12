// What one can set on a drive: the train, the meter, and every switch.
import type { DriveFrame, DriveSettings, TableMeter } from '../../../engine/index.ts';
import {
  DRIVE_METERS,
  DRIVE_POINTS,
  DRIVE_VEHICLES,
  frontOf,
  frontRange,
  mostlyStray,
  placeOf,
  pointOf,
  wayOf,
} from '../../../engine/index.ts';
import { number } from '../../../wizards/planning/index.ts';
import type { Numbers, Say } from '../../words/index.ts';
import { FieldSlider } from '../shared/index.ts';
import type { DriveDeeds } from './use-drive.ts';

interface Given {
  readonly id: string;
  readonly say: Say;
  readonly can: DriveDeeds;
}

/** Slider and buttons of the train. */
export function DriveTrain({ id, frame, say, can, numbers }: Given & { frame: DriveFrame; numbers: Numbers }) {
  const { least, most } = frontRange(frame.settings);
  const front = frontOf(frame);
  const way = wayOf(frame);
  const coach = frame.settings.vehicle === 'coach';
  const button = (to: -1 | 0 | 1, key: string, disabled: boolean) => (
    <button type="button" class={to === 0 ? '' : 'go'} disabled={disabled} onClick={() => can.drive(to)}>
      {say(key)}
    </button>
  );
  return (
    <div class="drive-train">
      <div class="slider">
        <label for={`${id}-front`}>{say('drive-front')}</label>
        <input
          id={`${id}-front`}
          type="range"
          min={least}
          max={most}
          step="0.005"
          value={front}
          aria-valuetext={say(`drive-where-${frame.where}`, { place: numbers.place(front) })}
          onInput={(event) => can.place(event.currentTarget.valueAsNumber)}
        />
      </div>
      <div class="acts">
        {button(-1, 'drive-back', coach || way < 0 || front <= least)}
        {button(0, 'drive-stop', way === 0)}
        {button(1, 'drive-go', coach || way > 0 || front >= most)}
      </div>
    </div>
  );
}

/** Where its leads are held, of what kind it is, and what it shows. */
export function DriveMeter({ id, frame, say, can, numbers }: Given & { frame: DriveFrame; numbers: Numbers }) {
  const { settings, probes, shot } = frame;
  const [first, second] = probes;
  const reading = shot.meter;
  return (
    <fieldset class="plain drive-meter">
      <legend>{say('drive-meter')}</legend>
      <p class="reads num">
        <span>{say('drive-reads-ac', { volts: numbers.volts(reading?.ac ?? 0) })}</span>
        <span>{say('drive-reads-dc', { volts: numbers.volts(reading?.dc ?? 0) })}</span>
      </p>
      <p class="small">{say(reading !== undefined && mostlyStray(reading) ? 'drive-strays' : 'drive-meter-how')}</p>
      <Select
        id={`${id}-lead-1`}
        label={say('drive-lead-first')}
        options={DRIVE_POINTS}
        value={pointOf(first)}
        words={(point) => say(`drive-point-${point}`)}
        onValue={(point) => can.hold([placeOf(point), second])}
      />
      <Select
        id={`${id}-lead-2`}
        label={say('drive-lead-second')}
        options={DRIVE_POINTS}
        value={pointOf(second)}
        words={(point) => say(`drive-point-${point}`)}
        onValue={(point) => can.hold([first, placeOf(point)])}
      />
      <Select<TableMeter['kind']>
        id={`${id}-kind`}
        label={say('drive-meter-kind')}
        options={DRIVE_METERS}
        value={settings.meter}
        words={(kind) => say(`drive-meter-${kind}`)}
        onValue={(meter) => can.change({ meter })}
      />
    </fieldset>
  );
}

type Switch = {
  [Key in keyof DriveSettings]: DriveSettings[Key] extends boolean ? Key : never;
}[keyof DriveSettings];

const GROUPS: readonly { readonly id: string; readonly switches: readonly Switch[] }[] = [
  { id: 'track', switches: ['cutUpper', 'cutLower', 'deadPiece', 'path'] },
  { id: 'wires', switches: ['feed', 'reversed', 'cable', 'capacitor'] },
  { id: 'units', switches: ['on', 'holds', 'common'] },
];

/** Key of a switch in the words: `cutUpper` is `drive-switch-cut-upper`. */
const kebab = (name: string): string => name.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`);

export function DriveSwitches({
  id,
  settings,
  say,
  can,
  numbers,
}: Given & { readonly settings: DriveSettings; readonly numbers: Numbers }) {
  const slider = (name: 'voltsA' | 'voltsB' | 'loadA' | 'loadB', quantity: 'voltage' | 'current') => {
    const [least, most, step] = quantity === 'voltage' ? ([12, 22, 0.5] as const) : ([0, 5, 0.1] as const);
    return (
      <FieldSlider
        key={name}
        field={number(`${id}-${kebab(name)}`, quantity, least, most)}
        label={say(`drive-${kebab(name)}`)}
        value={settings[name]}
        step={step}
        problem="drive-problem"
        say={say}
        numbers={numbers}
        onValue={(to) => can.change({ [name]: to })}
      />
    );
  };
  return (
    <div class="drive-switches">
      {GROUPS.map(({ id: group, switches }) => (
        <fieldset key={group} class="pair">
          <legend>{say(`drive-group-${group}`)}</legend>
          {switches.map((name) => (
            <label key={name}>
              <input
                type="checkbox"
                checked={settings[name]}
                onChange={(event) => can.change({ [name]: event.currentTarget.checked })}
              />
              <span>{say(`drive-switch-${kebab(name)}`)}</span>
            </label>
          ))}
        </fieldset>
      ))}
      <div class="part">
        {slider('voltsA', 'voltage')}
        {slider('voltsB', 'voltage')}
      </div>
      <div class="part">
        {slider('loadA', 'current')}
        {slider('loadB', 'current')}
      </div>
      <Select
        id={`${id}-vehicle`}
        label={say('drive-vehicle')}
        options={DRIVE_VEHICLES}
        value={settings.vehicle}
        words={(vehicle) => say(`drive-vehicle-${vehicle}`)}
        onValue={(vehicle) => can.change({ vehicle })}
      />
    </div>
  );
}

interface SelectProps<Id extends string> {
  readonly id: string;
  readonly label: string;
  readonly options: readonly Id[];
  readonly value: Id;
  readonly words: (id: Id) => string;
  readonly onValue: (id: Id) => void;
}

export function Select<Id extends string>({ id, label, options, value, words, onValue }: SelectProps<Id>) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = options.find((one) => one === event.currentTarget.value);
          if (chosen !== undefined) onValue(chosen);
        }}
      >
        {options.map((one) => (
          <option key={one} value={one}>
            {words(one)}
          </option>
        ))}
      </select>
    </div>
  );
}
