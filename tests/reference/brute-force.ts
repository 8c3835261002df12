// The slow twin of the demand: every choice of movers, every state of every consumer, here or elsewhere, one by one.
import type { DemandInput } from '../../src/engine/power/demand.ts';
import type { Draw } from '../../src/engine/power/kernels.ts';

type State = readonly [cell: number, probability: number];

/** Chance of each grid cell. Currents have to lie on the grid; an even spread is one only where it is a single current. */
export function bruteForce(input: DemandInput): Map<number, number> {
  const step = input.step ?? 0.005;
  const share = input.share ?? 1;
  const here = (draw: Draw): State[] => placed(statesOf(draw, step), share);
  const trains = input.trains.flatMap((group) =>
    Array.from({ length: group.count }, () => ({
      always: group.alwaysMoving === true,
      running: here(group.running),
      standing: here(group.standing),
    })),
  );
  const lamps = input.fixed.flatMap((group) => Array.from({ length: group.count }, () => here(group.draw)));
  const choices = subsets(trains.length).filter(
    (moves) => moves.filter(Boolean).length === input.moving && trains.every((train, i) => !train.always || moves[i]),
  );
  const total = new Map<number, number>();
  for (const moves of choices) {
    const consumers = [...trains.map((train, i) => (moves[i] ? train.running : train.standing)), ...lamps];
    everyCase(consumers, 0, 0, 1 / choices.length, total);
  }
  return total;
}

function everyCase(
  consumers: readonly (readonly State[])[],
  next: number,
  cell: number,
  chance: number,
  total: Map<number, number>,
): void {
  const states = consumers[next];
  if (states === undefined) {
    total.set(cell, (total.get(cell) ?? 0) + chance);
    return;
  }
  for (const [more, probability] of states) everyCase(consumers, next + 1, cell + more, chance * probability, total);
}

function statesOf(draw: Draw, step: number): State[] {
  if (draw.kind === 'even') return [[Math.round(draw.span.from / step), 1]];
  return draw.states.map(({ current, probability }): State => [Math.round(current / step), probability]);
}

function placed(states: readonly State[], share: number): State[] {
  const present = states.map(([cell, probability]): State => [cell, probability * share]);
  return share === 1 ? present : [...present, [0, 1 - share]];
}

function subsets(of: number): boolean[][] {
  if (of === 0) return [[]];
  return subsets(of - 1).flatMap((rest) => [
    [...rest, false],
    [...rest, true],
  ]);
}

/** Chances by cell as a list of `length` cells. */
export function asList(chances: ReadonlyMap<number, number>, length: number): number[] {
  return Array.from({ length }, (_, cell) => chances.get(cell) ?? 0);
}
