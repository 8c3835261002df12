// The discrete Fourier transform of complex rows whose length is a power of two (Cooley and Tukey, in place).

/** A row of complex numbers: real and imaginary parts. */
export interface ComplexRow {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

export const complexRow = (length: number): ComplexRow => ({
  re: new Float64Array(length),
  im: new Float64Array(length),
});

/** Turns the row into sum over j of x(j) e^(sign * 2 pi i j k / n); nothing is divided by n. Throws RangeError unless n is a power of two. */
export function transform({ re, im }: ComplexRow, sign: 1 | -1): void {
  const n = re.length;
  if (n === 0 || (n & (n - 1)) !== 0) throw new RangeError(`transform: ${n} is not a power of two`);
  reorder(re, im);
  for (let half = 1; half < n; half *= 2) {
    const turn = (sign * Math.PI) / half;
    for (let k = 0; k < half; k++) {
      const cos = Math.cos(turn * k);
      const sin = Math.sin(turn * k);
      for (let i = k; i < n; i += 2 * half) butterfly(re, im, i, i + half, cos, sin);
    }
  }
}

function butterfly(re: Float64Array, im: Float64Array, i: number, j: number, cos: number, sin: number): void {
  const [x = 0, y = 0, u = 0, v = 0] = [re[i], im[i], re[j], im[j]];
  const a = u * cos - v * sin;
  const b = u * sin + v * cos;
  re[i] = x + a;
  im[i] = y + b;
  re[j] = x - a;
  im[j] = y - b;
}

/** Index i goes where its binary digits, read backwards, point. */
function reorder(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; (j & bit) !== 0; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      const [x = 0, y = 0] = [re[i], im[i]];
      re[i] = re[j] ?? 0;
      im[i] = im[j] ?? 0;
      re[j] = x;
      im[j] = y;
    }
  }
}
