// What a sample can say of a whole: drawn without putting back (hypergeometric).
import { seeded } from '../../tests/seeded.ts';

/** ln n! by adding up; n up to some thousands. */
function lnFactorials(most) {
  const all = [0];
  for (let n = 1; n <= most; n += 1) all.push(all[n - 1] + Math.log(n));
  return all;
}

/** The chance that `drawn` of `of` hold at most `most` of the `noticed` ones. */
function chanceOfAtMost(most, { noticed, of }, drawn) {
  const ln = lnFactorials(of);
  const choose = (n, k) => (k < 0 || k > n ? Number.NEGATIVE_INFINITY : ln[n] - ln[k] - ln[n - k]);
  let sum = 0;
  for (let count = 0; count <= most; count += 1)
    sum += Math.exp(choose(noticed, count) + choose(of - noticed, drawn - count) - choose(of, drawn));
  return sum;
}

/**
 * The fewest of `drawn` that must be noticed, beside what was measured before: were the room as it was then, both
 * together would fall apart as unevenly with a chance under `chance` (Fisher's exact test, one-sided; textbook, from memory).
 */
export function fewestNoticed(measured, drawn, chance) {
  for (let least = 0; least < drawn; least += 1) {
    const both = { noticed: measured.noticed + least, of: measured.of + drawn };
    if (chanceOfAtMost(least, both, drawn) >= chance) return least;
  }
  return drawn;
}

/** Between which shares the whole lies, 19 times out of 20, when `noticed` of `of` drawn were (Wilson; textbook, from memory). */
export function between({ noticed, of }) {
  const z = 1.96;
  const middle = (noticed + z ** 2 / 2) / (of + z ** 2);
  const half = (z / (of + z ** 2)) * Math.sqrt((noticed * (of - noticed)) / of + z ** 2 / 4);
  return [middle - half, middle + half];
}

/** `many` of `all`, the same for the same seed. */
export function draw(all, many, seed) {
  const random = seeded(seed);
  const rest = [...all];
  for (let i = 0; i < many && i < rest.length; i += 1) {
    const other = i + Math.floor(random() * (rest.length - i));
    [rest[i], rest[other]] = [rest[other], rest[i]];
  }
  return rest.slice(0, many);
}
