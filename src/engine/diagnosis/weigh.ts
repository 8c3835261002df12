// The inner loops: what is wasted from some chances on by fixes alone, by one check and then fixes, or by asking on.
import type { Compiled } from './compile.ts';
import type { InParts } from './in-parts.ts';

/**
 * Bits the open checks must hold, as a multiple of those missing, before one trusts that asking on tells the causes apart. Source:
 * from-memory.
 */
const RESERVE = 2;

/** How many times as many minutes a bit costs later: the best checks are asked first. Source: from-memory. */
const LATER = 1.5;

/** Chances need not add up to 1; all minutes are times what they add up to. Holds the scratch arrays. */
export class Weigher {
  /** Minutes a bit costs by the checks that are open, infinite where they hold too little to tell the causes apart. */
  perBit = Number.POSITIVE_INFINITY;

  readonly #compiled: Compiled;
  /** Chance of each class, the same per minute, and over all: everything, `something-else`, the largest, the best per minute. */
  readonly #weights: Float64Array;
  readonly #ratios: Float64Array;
  readonly #ones: Float64Array;
  #total = 0;
  #other = 0;
  #most = 0;
  #best = 0;

  constructor(compiled: Compiled) {
    this.#compiled = compiled;
    this.#weights = new Float64Array(compiled.classes.length);
    this.#ratios = new Float64Array(compiled.classes.length);
    this.#ones = new Float64Array(compiled.faults.length).fill(1);
  }

  /** Fix classes with the most chance per minute, at most `count`; ties in the order of the rows. */
  promising(chances: Float64Array, count: number): number[] {
    this.#weigh(chances);
    const ratios = this.#ratios;
    return [...ratios.keys()]
      .filter((at) => (ratios[at] ?? 0) > 0)
      .sort((a, b) => (ratios[b] ?? 0) - (ratios[a] ?? 0) || a - b)
      .slice(0, count);
  }

  /**
   * Minutes per bit of the cheapest open checks that together hold the bits still missing, with a reserve because checks
   * overlap. Infinite when there are not enough, or not enough questions left to ask them. Check by check.
   */
  *minutesPerBit(chances: Float64Array, open: Uint8Array, questions: number): InParts<number> {
    this.#weigh(chances);
    const missing = this.#bits();
    const told: { bits: number; minutes: number }[] = [];
    for (const [at, isOpen] of open.entries()) {
      if (isOpen !== 1) continue;
      told.push({ bits: missing - this.#bitsAfter(chances, at), minutes: this.#compiled.checkCost[at] ?? 0 });
      yield;
    }
    told.sort((a, b) => b.bits * a.minutes - a.bits * b.minutes);
    let bits = 0;
    let minutes = 0;
    for (const one of told.slice(0, RESERVE * questions)) {
      if (bits >= RESERVE * missing || one.bits <= 0) break;
      bits += one.bits;
      minutes += one.minutes;
    }
    return bits > 0 && bits >= RESERVE * missing ? (LATER * minutes) / bits : Number.POSITIVE_INFINITY;
  }

  #bitsAfter(chances: Float64Array, at: number): number {
    const { optionStart } = this.#compiled;
    const end = optionStart[at + 1] ?? 0;
    let bits = 0;
    for (let option = optionStart[at] ?? 0; option < end; option++) {
      this.#weighAfter(chances, option);
      bits += this.#bits();
    }
    return bits;
  }

  /** Bits missing to know the fix class among the chances weighed. */
  #bits(): number {
    if (this.#total <= 0) return 0;
    let nats = this.#total * Math.log(this.#total);
    for (const weight of this.#weights) if (weight > 0) nats -= weight * Math.log(weight);
    return (this.#other > 0 ? nats - this.#other * Math.log(this.#other) : nats) * Math.LOG2E;
  }

  /** Asks the check, and goes on with fixes alone or by asking on. `mass` is what the chances add up to. Gives up beyond `most`. */
  check(chances: Float64Array, mass: number, at: number, most: number): number {
    const { optionStart, checkCost } = this.#compiled;
    const end = optionStart[at + 1] ?? 0;
    let total = mass * (checkCost[at] ?? 0);
    for (let option = optionStart[at] ?? 0; option < end && total < most; option++) {
      this.#weighAfter(chances, option);
      total += this.#plan();
    }
    return total;
  }

  /** Goes on with fixes alone or by asking on. */
  fixesAlone(chances: Float64Array): number {
    this.#weigh(chances);
    return this.#plan();
  }

  #weigh(chances: Float64Array): void {
    this.#weighBy(chances, this.#ones, 0);
  }

  /** The same together with the answer `option`. */
  #weighAfter(chances: Float64Array, option: number): void {
    this.#weighBy(chances, this.#compiled.likelihood, option * chances.length);
  }

  #weighBy(chances: Float64Array, by: Float64Array, row: number): void {
    const { classEnd, perCost } = this.#compiled;
    const weights = this.#weights;
    const ratios = this.#ratios;
    let i = 0;
    let known = 0;
    let most = 0;
    let best = 0;
    let bestRatio = 0;
    for (let at = 0; at < weights.length; at++) {
      const end = classEnd[at] ?? 0;
      let weight = 0;
      for (; i < end; i++) weight += (chances[i] ?? 0) * (by[row + i] ?? 0);
      const ratio = weight * (perCost[at] ?? 0);
      weights[at] = weight;
      ratios[at] = ratio;
      known += weight;
      most = Math.max(most, weight);
      if (ratio > bestRatio) {
        bestRatio = ratio;
        best = at;
      }
    }
    let other = 0;
    for (; i < chances.length; i++) other += (chances[i] ?? 0) * (by[row + i] ?? 0);
    this.#other = other;
    this.#total = known + other;
    this.#most = most;
    this.#best = best;
  }

  /** Minutes wasted from the chances weighed: fixes by chance per minute with a call where it comes cheapest, or asking on. */
  #plan(): number {
    const { classCost, settings } = this.#compiled;
    const weights = this.#weights;
    const ratios = this.#ratios;
    let next = this.#best;
    let remaining = this.#total;
    let wasted = 0;
    let least = remaining * settings.callMinutes;
    for (let left = weights.length; left > 0 && wasted < least; left--) {
      const weight = weights[next] ?? 0;
      // Later fixes have less chance per minute: none is worth it against what no fix mends.
      if ((ratios[next] ?? 0) * settings.callMinutes <= this.#other) break;
      remaining = Math.max(0, remaining - weight);
      wasted += (classCost[next] ?? 0) * remaining;
      least = Math.min(least, wasted + remaining * settings.callMinutes);
      ratios[next] = -1;
      for (let at = 0; at < ratios.length; at++) if ((ratios[at] ?? 0) > (ratios[next] ?? 0)) next = at;
    }
    return this.#orAskOn(least);
  }

  /** The lesser of `fixes` and of asking on until the class is known, with the call where it is `something-else`. */
  #orAskOn(fixes: number): number {
    if (this.perBit === Number.POSITIVE_INFINITY) return fixes;
    const call = this.#other * this.#compiled.settings.callMinutes;
    // At least two bits are missing for each time the likeliest is wrong (Hellman and Raviv 1970), which spares the logarithms.
    if (fixes <= this.perBit * 2 * (this.#total - Math.max(this.#most, this.#other)) + call) return fixes;
    return Math.min(fixes, this.perBit * this.#bits() + call);
  }
}
