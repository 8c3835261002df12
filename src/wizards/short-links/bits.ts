// Bits one after the other, and the signs of a link that hold six of them each.

/** Signs that every mail program and forum leaves alone within a link. */
const SIGNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
/** Bits in a sign. */
const IN_A_SIGN = 6;

/** What a sign stands for, 0 to 63; -1 for any other. */
export const sixOf = (sign: string): number => (sign === '' ? -1 : SIGNS.indexOf(sign));
export const signOf = (value: number): string => SIGNS.charAt(value);

export class BitWriter {
  readonly #bits: number[] = [];

  /** A whole number of `width` bits, from 0. */
  write(value: number, width: number): void {
    for (let at = width - 1; at >= 0; at--) this.#bits.push(Math.floor(value / 2 ** at) % 2);
  }

  /** Filled up with zeros to whole signs. */
  signs(): string {
    let text = '';
    for (let at = 0; at < this.#bits.length; at += IN_A_SIGN) {
      let value = 0;
      for (let bit = 0; bit < IN_A_SIGN; bit++) value = 2 * value + (this.#bits[at + bit] ?? 0);
      text += signOf(value);
    }
    return text;
  }
}

/** Thrown where bits are wanted that are not there. */
export class BitsEnd extends Error {}

export class BitReader {
  readonly #signs: string;
  #at = 0;

  constructor(signs: string) {
    this.#signs = signs;
  }

  /** A whole number of `width` bits; throws `BitsEnd`. */
  read(width: number): number {
    let value = 0;
    for (let bit = 0; bit < width; bit++) {
      const sign = sixOf(this.#signs.charAt(Math.floor(this.#at / IN_A_SIGN)));
      if (sign < 0) throw new BitsEnd();
      value = 2 * value + (Math.floor(sign / 2 ** (IN_A_SIGN - 1 - (this.#at % IN_A_SIGN))) % 2);
      this.#at += 1;
    }
    return value;
  }
}
