// Divisions judged by a routine that shares nothing with the engine’s: every rule of a division, one by one. And layouts to divide.
import type { DivisionJoint, DivisionStage } from '../src/engine/districts/problem.ts';
import type { Division, DivisionProblem } from '../src/engine/index.ts';
import { seeded } from './seeded.ts';

/** What is wrong with a division, in words; nothing where it keeps every rule. */
export function wrongWith(problem: DivisionProblem, division: Division): string[] {
  const { sections, stages } = problem;
  const { parts } = division;
  const strays = sections.flatMap((_, section) => {
    const of = parts.filter((part) => part.includes(section)).length;
    return of === 1 ? [] : [`section ${section} is in ${of} districts`];
  });
  const count = parts.length === stages.length ? [] : [`${parts.length} districts for ${stages.length} stages`];
  return [
    ...strays,
    ...count,
    ...wrongGaps(problem, division),
    ...parts.flatMap((_, at) => wrongPart(problem, division, at)),
  ];
}

function wrongGaps({ joints, conflicts = [] }: DivisionProblem, { parts, cuts, cost: told }: Division): string[] {
  const home = (section: number): number => parts.findIndex((part) => part.includes(section));
  const between = joints.flatMap(({ a, b, gap }, joint) => (gap === 'cut' || home(a) !== home(b) ? [joint] : []));
  const cost = between.reduce((sum, at) => sum + (joints[at]?.gap === 'cut' ? 0 : (joints[at]?.cost ?? 0)), 0);
  const kept = between.filter((joint) => joints[joint]?.gap === 'kept');
  const both = conflicts.filter((pair) => pair.every((joint) => between.includes(joint)));
  return [
    ...(between.join() === cuts.join() ? [] : [`gaps ${cuts.join()} and not ${between.join()}`]),
    ...(Math.abs(cost - told) < 1e-6 ? [] : [`costs ${cost} and not ${told}`]),
    ...kept.map((joint) => `joint ${joint} is cut`),
    ...both.map((pair) => `both of ${pair.join()} are gaps`),
  ];
}

function wrongPart({ sections, joints, stages }: DivisionProblem, { parts, shares }: Division, at: number): string[] {
  const part = parts[at] ?? [];
  const total = sections.reduce((sum, { traffic }) => sum + traffic, 0);
  const traffic = part.reduce((sum, section) => sum + (sections[section]?.traffic ?? 0), 0);
  const fixed = part.reduce((sum, section) => sum + (sections[section]?.fixedAmps ?? 0), 0);
  const share = total === 0 ? 0 : traffic / total;
  const feeds = (stages[at]?.feeds ?? []).filter((section) => !part.includes(section));
  return [
    ...(part.length > 0 && reached(part, joints) === part.length ? [] : [`district ${at} is not in one piece`]),
    ...(Math.abs(share - (shares[at] ?? Number.NaN)) < 1e-9 ? [] : [`share of district ${at}`]),
    ...(stages[at]?.bears(share, fixed) === true ? [] : [`stage ${at} does not bear ${share} and ${fixed} A`]),
    ...feeds.map((section) => `feed ${section} is not of stage ${at}`),
  ];
}

/** How many sections of a part one gets to from its first without leaving it. */
function reached(part: readonly number[], joints: readonly DivisionJoint[]): number {
  const [first] = part;
  const seen = new Set(first === undefined ? [] : [first]);
  for (const section of seen) {
    for (const { a, b, gap } of joints) {
      const other = a === section ? b : a;
      if (gap !== 'cut' && (a === section || b === section) && part.includes(other)) seen.add(other);
    }
  }
  return seen.size;
}

/** A stage that bears such a share, whatever is on besides. */
export const bearing = (share: number): DivisionStage => ({ bears: (part) => part <= share + 1e-9 });

/** So many stages, all alike, that each bear everything. */
export function alike(count: number, share = 1): DivisionStage[] {
  const stage = bearing(share);
  return Array.from({ length: count }, () => stage);
}

export const link = (a: number, b: number, cost = 1): DivisionJoint => ({ a, b, cost, gap: 'free' });

/** A square of sections, each joined to those beside, above and below. */
export function grid(rows: number, columns = rows): Pick<DivisionProblem, 'sections' | 'joints'> {
  const at = (row: number, column: number): number => row * columns + column;
  const joints: DivisionJoint[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (column + 1 < columns) joints.push(link(at(row, column), at(row, column + 1)));
      if (row + 1 < rows) joints.push(link(at(row, column), at(row + 1, column)));
    }
  }
  return { sections: Array.from({ length: rows * columns }, () => ({ traffic: 1 })), joints };
}

/** A made-up layout: a line with branches, and loops that close over a few sections; gaps of one or two awkward kinds. */
export function layout(
  count: number,
  joined: number,
  seed: number,
  awkward = false,
): Pick<DivisionProblem, 'sections' | 'joints'> {
  const random = seeded(seed);
  const upTo = (most: number): number => Math.floor(random() * most);
  const sections = Array.from({ length: count }, () => ({ traffic: 1 + upTo(12) }));
  const joints: DivisionJoint[] = [];
  const add = (a: number, b: number): void => {
    if (a === b || joints.some((joint) => joint.a === Math.min(a, b) && joint.b === Math.max(a, b))) return;
    joints.push(link(Math.min(a, b), Math.max(a, b), awkward ? 1 + upTo(3) : 1));
  };
  for (let section = 1; section < count; section++) add(section, Math.max(0, section - 1 - upTo(3)));
  while (joints.length < joined) {
    const from = upTo(count);
    add(from, Math.min(count - 1, from + 2 + upTo(8)));
  }
  return { sections, joints };
}
