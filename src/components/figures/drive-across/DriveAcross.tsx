// Drive it across the gap: two parts with their units, switches for what can be wrong, a train one drives, a meter one places.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { DriveFrame, DrivePoint, DrivePreset, Happening } from '../../../engine/index.ts';
import {
  canBePutRight,
  DRIVE_PRESETS,
  happenings,
  isDrivePreset,
  placeOf,
  presetSettings,
} from '../../../engine/index.ts';
import { useMeasures } from '../../shared/index.ts';
import { Numbers, type Say, sayer, type Values } from '../../words/index.ts';
import { type AllWritten, oneOf, useSettings } from '../shared/index.ts';
import { DriveMeter, DriveSwitches, DriveTrain, Select } from './DriveControls.tsx';
import { DrivePicture, DriveUnits } from './DrivePicture.tsx';
import { useDrive } from './use-drive.ts';

export interface DriveAcrossProps {
  readonly language: string;
  /** The words of the rooms `drive-across` and `units`. */
  readonly words: Readonly<Record<string, string>>;
  /** The fault to begin with; without one a fault can be chosen. */
  readonly preset?: DrivePreset;
  /** How a page sets it up, as its address would say it. */
  readonly begins?: string | undefined;
}

const NONE = 'none';
const CHOICES = [NONE, ...Object.keys(DRIVE_PRESETS).filter(isDrivePreset)] as const;

/** The fault that one begins with, in the address of a lesson. */
interface Begun {
  readonly fault: (typeof CHOICES)[number];
}
const BEGUN: Begun = { fault: NONE };
const WRITTEN: AllWritten<Begun> = { fault: oneOf(...CHOICES) };

export default function DriveAcross({ language, words, preset, begins }: DriveAcrossProps) {
  const say = useMemo(() => sayer(words, language), [words, language]);
  const system = useMeasures();
  const numbers = useMemo(() => new Numbers(language, system, words), [language, system, words]);
  const figure = useRef<HTMLDivElement>(null);
  const [begun, tell] = useSettings(BEGUN, WRITTEN, begins);
  const chosen = begun.fault === NONE ? undefined : begun.fault;
  const fault = preset ?? chosen;
  const [right, setRight] = useState(false);
  const { frame, can } = useDrive(() => presetSettings(fault), figure);
  const lastLead = useRef<0 | 1>(1);
  const begin = (putRight: boolean): void => {
    setRight(putRight);
    can.begin(presetSettings(fault, putRight));
  };
  useEffect(() => begin(false), [fault]);
  const onPoint = (point: DrivePoint): void => {
    const [first, second] = frame.probes;
    lastLead.current = lastLead.current === 0 ? 1 : 0;
    can.hold(lastLead.current === 0 ? [placeOf(point), second] : [first, placeOf(point)]);
  };
  const id = `drive-${preset ?? 'lesson'}`;
  const { settings } = frame;
  // Switches do not change with every picture of a moving train.
  const switches = useMemo(
    () => <DriveSwitches id={id} settings={settings} say={say} can={can} numbers={numbers} />,
    [id, settings, say, can, numbers],
  );
  return (
    <div class="live part drive" ref={figure}>
      {preset === undefined && (
        <Select
          id={`${id}-preset`}
          label={say('drive-preset')}
          options={CHOICES}
          value={fault ?? NONE}
          words={(one) => say(`drive-preset-${one}`)}
          onValue={(one) => tell({ fault: one })}
        />
      )}
      {fault !== undefined && canBePutRight(fault) && <Toggle id={id} right={right} say={say} onRight={begin} />}
      {fault !== undefined && <p class="why">{say(`drive-note-${fault}`)}</p>}
      <Story frame={frame} say={say} numbers={numbers} />
      <div class="drive-desk">
        <figure class="sheet">
          <DrivePicture frame={frame} say={say} numbers={numbers} onPlace={can.place} onPoint={onPoint} />
          <DriveUnits frame={frame} say={say} numbers={numbers} onReset={can.reset} />
          <figcaption class="small">{say('drive-caption')}</figcaption>
        </figure>
        <div class="part">
          <DriveTrain id={id} frame={frame} say={say} can={can} numbers={numbers} />
          <DriveMeter id={id} frame={frame} say={say} can={can} numbers={numbers} />
        </div>
      </div>
      {preset === undefined ? (
        switches
      ) : (
        <details>
          <summary>{say('drive-more')}</summary>
          {switches}
        </details>
      )}
      <p class="acts">
        <button type="button" class="button quiet" onClick={() => begin(right)}>
          {say('drive-again')}
        </button>
      </p>
    </div>
  );
}

function Story({ frame, say, numbers }: { readonly frame: DriveFrame; readonly say: Say; readonly numbers: Numbers }) {
  return (
    <p class="story" aria-live="polite">
      {happenings(frame)
        .map(({ id, values }) => say(`drive-${id}`, written(values, numbers)))
        .join(' ')}
    </p>
  );
}

function written({ amps, trip, ...values }: Happening['values'], numbers: Numbers): Values {
  return {
    ...values,
    ...(amps === undefined ? {} : { amps: numbers.amps(amps) }),
    ...(trip === undefined ? {} : { trip: numbers.amps(trip) }),
  };
}

interface ToggleProps {
  readonly id: string;
  readonly right: boolean;
  readonly say: Say;
  readonly onRight: (right: boolean) => void;
}

function Toggle({ id, right, say, onRight }: ToggleProps) {
  return (
    <fieldset class="pair drive-toggle">
      <legend class="unseen">{say('drive-toggle')}</legend>
      {[false, true].map((to) => (
        <label key={String(to)}>
          <input type="radio" name={`${id}-toggle`} checked={right === to} onChange={() => onRight(to)} />
          <span>{say(to ? 'drive-should' : 'drive-is')}</span>
        </label>
      ))}
    </fieldset>
  );
}
