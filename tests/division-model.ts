// A division as a mixed-integer linear programme, for a solver that knows nothing of track: each section has one district, a joint between
// two is a gap, and in each district something flows from a root, its lowest section, over joints that are no gaps to all others.
// Source: validi-buchanan-2022 (labels and cut edges; connected by a flow).
import type { DivisionProblem } from '../src/engine/index.ts';

/** Least and most traffic of each district. */
export type Windows = readonly { readonly least: number; readonly most: number }[];

type Graph = Pick<DivisionProblem, 'sections' | 'joints'>;

const sum = (terms: readonly string[]): string => terms.join(' + ');
const upTo = (section: number): readonly number[] => Array.from({ length: section + 1 }, (_, at) => at);

/** The programme in the format of CPLEX. `alike`: districts may be exchanged, so only the order of their roots is looked at. */
export function divisionModel(graph: Graph, windows: Windows, alike: boolean): string {
  const { sections, joints } = graph;
  const districts = [...windows.keys()];
  const links = joints.flatMap(({ gap }, e) => (gap === 'cut' ? [] : [e]));
  const rows = [
    ...sections.map((_, i) => `${sum(districts.map((c) => `x${i}_${c}`))} = 1`),
    ...windows.flatMap((window, c) => heldBy(graph, window, c)),
    ...(alike ? districts.slice(1).flatMap((c) => rootsInOrder(sections.length, c)) : []),
    ...links.flatMap((e) => gapAt(graph, e, districts)),
    ...sections.map((_, i) => flowInto(graph, i, links, districts)),
  ];
  const binaries = [
    ...sections.flatMap((_, i) => districts.flatMap((c) => [`x${i}_${c}`, `r${i}_${c}`])),
    ...links.map((e) => `y${e}`),
  ];
  return [
    'Minimize',
    ` gaps: ${sum(links.map((e) => `${joints[e]?.cost} y${e}`))}`,
    'Subject To',
    ...rows.map((row, at) => ` c${at}: ${row}`),
    'Binary',
    ...binaries.map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n');
}

/** What a district holds, and that its root is its lowest section. */
function heldBy({ sections }: Graph, { least, most }: Windows[number], c: number): string[] {
  const held = sum(sections.map(({ traffic }, i) => `${traffic} x${i}_${c}`));
  const roots = sections.flatMap((_, i) => [
    `r${i}_${c} - x${i}_${c} <= 0`,
    `x${i}_${c} - ${upTo(i)
      .map((j) => `r${j}_${c}`)
      .join(' - ')} <= 0`,
  ]);
  return [`${held} <= ${most}`, `${held} >= ${least}`, `${sum(sections.map((_, i) => `r${i}_${c}`))} = 1`, ...roots];
}

const rootsInOrder = (sections: number, c: number): string[] =>
  upTo(sections - 1).map((i) => {
    const before = upTo(i - 1).map((j) => ` - r${j}_${c - 1}`);
    return `${sum(upTo(i).map((j) => `r${j}_${c}`))}${before.join('')} <= 0`;
  });

/** More than flows to all sections of the largest district. */
const enough = ({ sections }: Graph, districts: number): number => sections.length - districts + 1;

function gapAt(graph: Graph, e: number, districts: readonly number[]): string[] {
  const joint = graph.joints[e];
  if (joint === undefined) return [];
  const { a, b, gap } = joint;
  const most = enough(graph, districts.length);
  return [
    ...districts.flatMap((c) => [`y${e} - x${a}_${c} + x${b}_${c} >= 0`, `y${e} + x${a}_${c} - x${b}_${c} >= 0`]),
    `f${e}a + f${e}b + ${most} y${e} <= ${most}`,
    ...(gap === 'kept' ? [`y${e} = 0`] : []),
  ];
}

function flowInto(graph: Graph, i: number, links: readonly number[], districts: readonly number[]): string {
  const flow = links.flatMap((e) => {
    if (graph.joints[e]?.a === i) return [`- f${e}a + f${e}b`];
    return graph.joints[e]?.b === i ? [`+ f${e}a - f${e}b`] : [];
  });
  const most = enough(graph, districts.length);
  return `${flow.join(' ')} + ${sum(districts.map((c) => `${most} r${i}_${c}`))} >= 1`;
}
