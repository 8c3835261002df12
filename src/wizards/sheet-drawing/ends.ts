// At which end of its section each joint lies. A sheet does not say: what is drawn to the right of a section is joined to its right end, and a
// section with several joints has one at each end at least.
import type { Cell, Tracks } from './cells.ts';

export type End = 'left' | 'right';

/** The ends that a joint joins: of the section it comes from and of the one it leads to. */
export interface JointEnds {
  readonly from: End;
  readonly to: End;
}

/** Beside the wrong end of a section: the track has to lead round it. */
const ROUND = 3;
/** All joints of a section at one of its ends: that is no track to run through. */
const ONE_END = 10;
/** Above each other, joined at ends that point away from each other. */
const CROSSWISE = 2;
/** For each row that a track climbs. */
const CLIMB = 0.2;
/** For each joint more at one end than at the other. */
const LOPSIDED = 0.5;

export function endsOf({ joints }: Tracks, cells: ReadonlyMap<string, Cell>): ReadonlyMap<string, JointEnds> {
  const columns = [...cells.values()].map(({ column }) => column);
  const middle = (Math.min(...columns) + Math.max(...columns)) / 2;
  const ends = joints.map((joint) => firstEnds(joint, cells, middle));
  const used = new Map<string, { left: number; right: number }>();
  const take = ({ from, to }: JointOf, at: JointEnds, by: 1 | -1): void => {
    for (const [id, end] of [
      [from, at.from],
      [to, at.to],
    ] as const) {
      const ofSection = used.get(id) ?? { left: 0, right: 0 };
      ofSection[end] += by;
      used.set(id, ofSection);
    }
  };
  joints.forEach((joint, i) => {
    take(joint, ends[i] ?? EVERY[0], 1);
  });
  const costOf = (id: string): number => sectionCost(used.get(id)?.left ?? 0, used.get(id)?.right ?? 0);

  for (let changed = true, pass = 0; changed && pass < 20; pass++) {
    changed = false;
    joints.forEach((joint, i) => {
      const at = ends[i] ?? EVERY[0];
      const costs = (tried: JointEnds): number => {
        take(joint, tried, 1);
        const cost = jointCost(joint, tried, cells) + costOf(joint.from) + costOf(joint.to);
        take(joint, tried, -1);
        return cost;
      };
      take(joint, at, -1);
      let [best, least] = [at, costs(at)];
      for (const tried of EVERY) {
        const now = costs(tried);
        if (now < least - 1e-9) {
          [best, least] = [tried, now];
          changed = true;
        }
      }
      ends[i] = best;
      take(joint, best, 1);
    });
  }
  return new Map(joints.map(({ id }, i) => [id, ends[i] ?? EVERY[0]]));
}

const EVERY = [
  { from: 'right', to: 'left' },
  { from: 'left', to: 'right' },
  { from: 'left', to: 'left' },
  { from: 'right', to: 'right' },
] as const satisfies readonly JointEnds[];

type JointOf = Tracks['joints'][number];

function columnsTo({ from, to }: JointOf, cells: ReadonlyMap<string, Cell>): number {
  return (cells.get(to)?.column ?? 0) - (cells.get(from)?.column ?? 0);
}

function firstEnds(joint: JointOf, cells: ReadonlyMap<string, Cell>, middle: number): JointEnds {
  const columns = columnsTo(joint, cells);
  if (joint.from === joint.to || columns >= 1) return { from: 'right', to: 'left' };
  if (columns <= -1) return { from: 'left', to: 'right' };
  const end = (cells.get(joint.from)?.column ?? 0) < middle ? 'left' : 'right';
  return { from: end, to: end };
}

function jointCost(joint: JointOf, { from, to }: JointEnds, cells: ReadonlyMap<string, Cell>): number {
  const columns = columnsTo(joint, cells);
  const rows = Math.abs((cells.get(joint.to)?.row ?? 0) - (cells.get(joint.from)?.row ?? 0));
  if (joint.from === joint.to) return from === to ? ONE_END : 0;
  if (Math.abs(columns) < 1) return from === to ? 0 : CROSSWISE;
  const [nearFrom, nearTo] = columns > 0 ? (['right', 'left'] as const) : (['left', 'right'] as const);
  const round = (from === nearFrom ? 0 : ROUND) + (to === nearTo ? 0 : ROUND);
  return round === 0 ? CLIMB * rows : round;
}

function sectionCost(left: number, right: number): number {
  const all = left + right;
  if (all < 2) return 0;
  const lopsided = LOPSIDED * Math.max(0, Math.abs(left - right) - (all % 2));
  return lopsided + (left === 0 || right === 0 ? ONE_END : 0);
}
