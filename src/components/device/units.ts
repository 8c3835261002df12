// Which units are shown. The address says so, else what was typed, else what this device was told by the switch, else metric.
import type { MeasureSystem } from '../../engine/index.ts';
import { nameOfSystem, readStored, store, systemNamed, UNITS } from './stored.ts';

/** The one name that an address has for it. */
const NAME = 'units';
const EVENT = 'both-rails-units';

export interface Chosen {
  readonly address?: MeasureSystem | undefined;
  readonly device?: MeasureSystem | undefined;
}

export const chosenUnits = (): Chosen => ({
  address: systemNamed(new URLSearchParams(location.search).get(NAME)),
  device: readStored(UNITS),
});

/** The switch was used: kept on this device, said in the address, and told to all that show units. */
export function chooseUnits(system: MeasureSystem): void {
  store(UNITS, system);
  const search = new URLSearchParams(location.search);
  search.set(NAME, nameOfSystem(system));
  search.sort();
  history.replaceState(history.state, '', `${location.pathname}?${search}${location.hash}`);
  showUnits(system);
  tellUnits();
}

/** Lets all that show units read again what was chosen. */
export function tellUnits(): void {
  dispatchEvent(new Event(EVENT));
}

/** Calls when the switch was used or the address changed by going back; gives what ends that. */
export function onUnits(listener: () => void): () => void {
  for (const name of [EVENT, 'popstate']) addEventListener(name, listener);
  return () => {
    for (const name of [EVENT, 'popstate']) removeEventListener(name, listener);
  };
}

/** Shows one system: pages that are written for both hide the other, and the switch stands at it. */
export function showUnits(system: MeasureSystem): void {
  const name = nameOfSystem(system);
  document.documentElement.dataset.units = name;
  for (const input of document.querySelectorAll<HTMLInputElement>(`input[name="${NAME}"]`)) {
    input.checked = input.value === name;
  }
}

export const unitsShown = (): MeasureSystem | undefined => systemNamed(document.documentElement.dataset.units ?? null);

/** An address (from "?", or empty) with the units that were chosen, so that a link says them; without a choice it stays as it is. */
export function withUnits(address: string): string {
  const { address: said, device } = chosenUnits();
  const system = said ?? (device === unitsShown() ? device : undefined);
  return system === undefined ? address : saying(address, system);
}

/** The same without them, for what reads its own names only. */
export function withoutUnits(address: string): string {
  const search = new URLSearchParams(address);
  search.delete(NAME);
  const rest = search.toString();
  return rest === '' ? '' : `?${rest}`;
}

function saying(address: string, system: MeasureSystem): string {
  const search = new URLSearchParams(address);
  search.set(NAME, nameOfSystem(system));
  search.sort();
  return `?${search}`;
}

/** A link to another page of this site goes on in the units shown here, where that page would not show them by itself. */
export function keepUnitsIn(link: HTMLAnchorElement): void {
  const shown = unitsShown();
  if (shown === undefined || link.origin !== location.origin || link.pathname === location.pathname) return;
  if (shown === (readStored(UNITS) ?? 'metric') || new URLSearchParams(link.search).has(NAME)) return;
  link.search = saying(link.search, shown);
}
