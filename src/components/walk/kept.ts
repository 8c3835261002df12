// What a walk fetches it keeps while the page is open: what was begun before it is drawn, or was drawn before, is there at once.
import { useCallback } from 'preact/hooks';
import { type Loaded, useLoaded } from '../shared/index.ts';

export class Kept<Value> {
  readonly #there = new Map<string, Value>();
  readonly #coming = new Map<string, Promise<Value>>();

  now(address: string): Value | undefined {
    return this.#there.get(address);
  }

  /** What failed is not kept: it is loaded anew when it is asked for again. */
  get(address: string, load: () => Promise<Value>): Promise<Value> {
    const coming = this.#coming.get(address) ?? this.#begin(address, load);
    this.#coming.set(address, coming);
    return coming;
  }

  async #begin(address: string, load: () => Promise<Value>): Promise<Value> {
    try {
      const value = await load();
      this.#there.set(address, value);
      return value;
    } catch (error) {
      this.#coming.delete(address);
      throw error;
    }
  }
}

/** As `useLoaded`, and there at once where it is kept. */
export function useKept<Value>(kept: Kept<Value>, address: string, load: () => Promise<Value>): Loaded<Value> {
  const there = kept.now(address);
  const begin = useCallback(() => kept.get(address, load), [kept, address, load]);
  const loaded = useLoaded(there === undefined ? begin : undefined);
  return { ...loaded, value: there ?? loaded.value };
}
