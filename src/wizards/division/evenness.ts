// How evenly a way uses its units, as anybody can check it: shares of the traffic against shares of the amperes.
import { evennessOf } from '../../engine/index.ts';

type Evenness = ReturnType<typeof evennessOf>;

/** A part: its share of the traffic, the largest share that its unit would bear, and the amperes that its unit has for trains. */
export interface PartUse {
  readonly share: number;
  readonly most: number;
  readonly forTrains: number;
}

/** Five trains of six in one part are no division that anybody wants. Source: common-practice. */
export const LEAST_SHARE = 1 / 6;

/** Shares that fit: as the amperes for trains, and no part more than its unit bears; what is left goes to the others. */
export function fitting(parts: readonly Pick<PartUse, 'most' | 'forTrains'>[]): readonly number[] {
  const full = new Set<number>();
  for (;;) {
    const left = 1 - parts.reduce((sum, { most }, at) => sum + (full.has(at) ? most : 0), 0);
    const amps = parts.reduce((sum, { forTrains }, at) => sum + (full.has(at) ? 0 : Math.max(0, forTrains)), 0);
    const fits = parts.map(({ most, forTrains }, at) =>
      full.has(at) || amps === 0 ? most : (Math.max(0, left) * Math.max(0, forTrains)) / amps,
    );
    const over = fits.flatMap((fit, at) => (!full.has(at) && fit > (parts[at]?.most ?? 0) + SAME ? [at] : []));
    if (over.length === 0 || amps === 0) return fits;
    for (const at of over) full.add(at);
  }
}

/** Shares nearer than this are one. Source: own-choice. */
const SAME = 1e-9;

/** Whether no part is left next to nothing, unless its unit bears no more. */
export const givesEachSome = (parts: readonly Pick<PartUse, 'share' | 'most'>[]): boolean =>
  parts.length < 2 || parts.every(({ share, most }) => share >= Math.min(LEAST_SHARE, most) - SAME);

/**
 * Good up to a fifth over what is even, fair up to two fifths, in the part that has most of it; never where a part has next to nothing.
 * As many trains as any other part has are even, and so is what fits the amperes, and all between the two.
 */
export function useOf(parts: readonly PartUse[]): Evenness {
  if (!givesEachSome(parts)) return 'poor';
  const fits = fitting(parts);
  const even = (at: number): number => Math.max(1 / parts.length, fits[at] ?? 0);
  return evennessOf(Math.max(1, ...parts.map(({ share }, at) => share / even(at))));
}

interface Judged {
  readonly evenness: Evenness;
  readonly asked: readonly { readonly share: number }[];
}

/** The way to take, of those in order of their gaps: the first that is used evenly, else the one whose least part has most, of those a little uneven if any are. Source: common-practice. */
export function bestOf<Made extends Judged>(ways: readonly Made[]): Made | undefined {
  const good = ways.find(({ evenness }) => evenness === 'good');
  if (good !== undefined) return good;
  const fair = ways.filter(({ evenness }) => evenness === 'fair');
  const leastOf = ({ asked }: Judged): number => Math.min(...asked.map(({ share }) => share));
  return (fair.length > 0 ? fair : ways).toSorted((a, b) => leastOf(b) - leastOf(a))[0];
}

/** The best way, where it is used evenly, be it a little unevenly: nothing is advised where none is. */
export function advisedOf<Made extends Judged>(ways: readonly Made[]): Made | undefined {
  const best = bestOf(ways);
  return best?.evenness === 'poor' ? undefined : best;
}
