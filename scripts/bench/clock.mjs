// How benches take their time; runs in Node and in a browser.

const CALIBRATION_CELLS = 2_000_000;

export const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

export function time(task) {
  const since = performance.now();
  task();
  return performance.now() - since;
}

/** Median of `runs` timings, after `warm` runs that do not count. */
export function medianTime(task, runs, warm) {
  for (let i = 0; i < warm; i++) task();
  return median(Array.from({ length: runs }, () => time(task)));
}

/** A plain loop over numbers, to tell how busy or slow the machine is: one multiplication and addition a cell. */
export function calibrate() {
  const cells = new Float64Array(1000).fill(1);
  let sum = 0;
  for (let round = 0; round < CALIBRATION_CELLS / cells.length; round++) {
    for (let i = 0; i < cells.length; i++) {
      cells[i] = cells[i] * 0.999 + 0.001;
      sum += cells[i];
    }
  }
  return sum;
}

export const ms = (value) => Number(value.toPrecision(3));
