// Every way to part a graph into connected pieces, one by one; and the cheapest that keeps the rules of a problem.
import type { DivisionProblem } from '../../src/engine/index.ts';

/** Neighbours of each section as bits. */
function neighbours({ sections, joints }: Pick<DivisionProblem, 'sections' | 'joints'>): number[] {
  const near = sections.map(() => 0);
  for (const { a, b, gap } of joints) {
    if (gap === 'cut') continue;
    near[a] = (near[a] ?? 0) | (1 << b);
    near[b] = (near[b] ?? 0) | (1 << a);
  }
  return near;
}

const lowest = (bits: number): number => 31 - Math.clz32(bits & -bits);

/** Every connected set within `free` that holds its lowest section. */
function* pieces(near: readonly number[], free: number): Generator<number> {
  const start = free & -free;
  yield* grown(near, start, free & ~start);
}

function* grown(near: readonly number[], piece: number, free: number): Generator<number> {
  yield piece;
  let left = free;
  for (let edge = edgeOf(near, piece) & left; edge !== 0; edge = edgeOf(near, piece) & left) {
    const next = edge & -edge;
    left &= ~next;
    yield* grown(near, piece | next, left);
  }
}

function edgeOf(near: readonly number[], piece: number): number {
  let edge = 0;
  for (let bits = piece; bits !== 0; bits &= bits - 1) edge |= near[lowest(bits)] ?? 0;
  return edge & ~piece;
}

/** Every way into so many connected pieces, each as bits; up to 30 sections. */
export function* everyParting(
  graph: Pick<DivisionProblem, 'sections' | 'joints'>,
  count: number,
  suits: (piece: number) => boolean = () => true,
): Generator<readonly number[]> {
  const near = neighbours(graph);
  yield* into((1 << graph.sections.length) - 1, count);

  function* into(free: number, left: number): Generator<readonly number[]> {
    if (left === 0) {
      if (free === 0) yield [];
      return;
    }
    if (free === 0) return;
    for (const piece of pieces(near, free)) {
      if (!suits(piece)) continue;
      for (const others of into(free & ~piece, left - 1)) yield [piece, ...others];
    }
  }
}

/** What the cheapest division that keeps every rule costs; undefined where none does. */
export function cheapestDivision(problem: DivisionProblem): number | undefined {
  let best: number | undefined;
  for (const pieces of everyParting(problem, problem.stages.length)) {
    const cost = costOf(problem, pieces);
    if (cost === undefined || (best !== undefined && cost >= best)) continue;
    if (isGiven(problem, pieces, 0)) best = cost;
  }
  return best;
}

function costOf({ joints, conflicts = [] }: DivisionProblem, pieces: readonly number[]): number | undefined {
  const home = (section: number): number => pieces.findIndex((piece) => (piece >>> section) & 1);
  const isGap = joints.map(({ a, b, gap }) => gap === 'cut' || home(a) !== home(b));
  if (joints.some(({ gap }, joint) => gap === 'kept' && isGap[joint])) return undefined;
  if (conflicts.some((pair) => pair.every((joint) => isGap[joint]))) return undefined;
  return joints.reduce((sum, { cost, gap }, joint) => (isGap[joint] && gap !== 'cut' ? sum + cost : sum), 0);
}

/** Whether the pieces can be given to the stages from one on, each bearing its own. */
function isGiven(problem: DivisionProblem, pieces: readonly number[], stage: number): boolean {
  if (stage === problem.stages.length) return true;
  return pieces.some(
    (piece, at) => suits(problem, piece, stage) && isGiven(problem, pieces.toSpliced(at, 1), stage + 1),
  );
}

function suits({ sections, stages }: DivisionProblem, piece: number, at: number): boolean {
  const stage = stages[at];
  if (stage === undefined || (stage.feeds ?? []).some((section) => ((piece >>> section) & 1) === 0)) return false;
  const total = sections.reduce((sum, { traffic }) => sum + traffic, 0);
  let [traffic, fixed] = [0, 0];
  for (const [section, one] of sections.entries()) {
    if (((piece >>> section) & 1) === 0) continue;
    traffic += one.traffic;
    fixed += one.fixedAmps ?? 0;
  }
  return stage.bears(total === 0 ? 0 : traffic / total, fixed);
}
