// How a figure is set up stands in its address, so that a link opens it just so. As the page is built it stands at its start.
import { useCallback, useEffect, useLayoutEffect, useMemo, useState } from 'preact/hooks';

/** How one setting is written in an address; `read` gives undefined for what it cannot be. */
export interface Written<Value> {
  readonly read: (text: string) => Value | undefined;
  readonly write: (value: Value) => string;
}

export type AllWritten<Settings> = { readonly [Name in keyof Settings]: Written<Settings[Name]> };

function numberIn(text: string, least: number, most: number): number | undefined {
  if (!/^-?\d+(?:\.\d+)?$/.test(text)) return undefined;
  const value = Number(text);
  return value >= least && value <= most ? value : undefined;
}

const DIGITS = 6;
const short = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** A number from least to most, in the unit of the figure; in an address `times` that many, so that it is short. */
export const within = (least: number, most: number, times = 1): Written<number> => ({
  read: (text) => {
    const value = numberIn(text, least * times, most * times);
    return value === undefined ? undefined : value / times;
  },
  write: (value) => short(value * times),
});

export const whole = (least: number, most: number): Written<number> => ({
  read: (text) => (/^-?\d+$/.test(text) ? numberIn(text, least, most) : undefined),
  write: String,
});

export const oneOf = <Value extends string>(...values: readonly Value[]): Written<Value> => ({
  read: (text) => values.find((value) => value === text),
  write: (value) => value,
});

export const yesOrNo: Written<boolean> = {
  read: (text) => (text === 'yes' || text === 'no' ? text === 'yes' : undefined),
  write: (value) => (value ? 'yes' : 'no'),
};

/** Numbers with commas between them, one to `longest`. */
export const listOf = (one: Written<number>, longest: number): Written<readonly number[]> => ({
  read: (text) => {
    const values = text.split(',').flatMap((part) => one.read(part) ?? []);
    return values.length === text.split(',').length && values.length <= longest ? values : undefined;
  },
  write: (values) => values.map(one.write).join(','),
});

const nameInAddress = (setting: string): string =>
  setting.replaceAll(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`);

/** The settings of an address (from "?", or empty); what it leaves out, or says wrongly, stands as at the start. */
export function settingsIn<Settings extends object>(
  search: string,
  start: Settings,
  all: AllWritten<Settings>,
): Settings {
  const told = new URLSearchParams(search);
  let settings = start;
  for (const name in all) settings = withTold(settings, name, all, told.get(nameInAddress(name)));
  return settings;
}

function withTold<Settings extends object, Name extends keyof Settings>(
  settings: Settings,
  name: Name,
  all: AllWritten<Settings>,
  text: string | null,
): Settings {
  const value = text === null ? undefined : all[name].read(text);
  return value === undefined ? settings : { ...settings, [name]: value };
}

/** An address with the settings that differ from the start; what else it says stays. */
export function addressOf<Settings extends object>(
  search: string,
  settings: Settings,
  start: Settings,
  all: AllWritten<Settings>,
): string {
  const told = new URLSearchParams(search);
  for (const name in all) {
    const [now, first] = [all[name].write(settings[name]), all[name].write(start[name])];
    if (now === first) told.delete(nameInAddress(name));
    else told.set(nameInAddress(name), now);
  }
  told.sort();
  const text = told.toString().replaceAll('%2C', ',');
  return text === '' ? '' : `?${text}`;
}

/** Dragging writes the address once it rests. */
const REST_MS = 250;

/**
 * The settings of a figure, and a change of some of them. `start` and `all` stay the same from draw to draw; `begins` is what a page sets
 * up otherwise, written as an address says it.
 */
export function useSettings<Settings extends object>(
  start: Settings,
  all: AllWritten<Settings>,
  begins = '',
): readonly [Settings, (some: Partial<Settings>) => void] {
  const first = useMemo(() => settingsIn(begins, start, all), [begins]);
  const [settings, setSettings] = useState(first);
  const [moved, setMoved] = useState(false);
  useLayoutEffect(() => {
    const read = (): void => {
      setMoved(false);
      setSettings(settingsIn(location.search, first, all));
    };
    if (location.search !== '') read();
    addEventListener('popstate', read);
    return () => removeEventListener('popstate', read);
  }, [first]);
  useEffect(() => {
    if (!moved) return;
    const write = (): void => {
      const search = addressOf(location.search, settings, first, all);
      history.replaceState(history.state, '', location.pathname + search + location.hash);
    };
    const rest = setTimeout(write, REST_MS);
    return () => clearTimeout(rest);
  }, [settings, moved]);
  const change = useCallback((some: Partial<Settings>) => {
    setMoved(true);
    setSettings((old) => ({ ...old, ...some }));
  }, []);
  return [settings, change];
}
