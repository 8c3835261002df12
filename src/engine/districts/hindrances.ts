// Why there is no division: what can be seen without looking for one, and what to leave out to see whether it is the reason.
import { partsOf } from './division.ts';
import type { Division, DivisionOptions, DivisionProblem, Hindrance } from './problem.ts';
import type { Whole } from './whole.ts';
import { sum } from './whole.ts';

/** Reasons that hold whatever else is done. */
export function hindrancesOf(problem: DivisionProblem, whole: Whole): readonly Hindrance[] {
  return [
    ...tooFew(whole),
    ...islandsOf(whole),
    ...feedsThatMeet(problem, whole),
    ...cutBoth(problem),
    ...tooLarge(whole),
    ...tooMuch(whole),
  ];
}

const tooFew = ({ traffic, districts }: Whole): readonly Hindrance[] =>
  traffic.length < districts ? [{ kind: 'few-sections' }] : [];

function islandsOf(whole: Whole): readonly Hindrance[] {
  const islands = partsOf(whole, () => true);
  return islands.length > whole.districts
    ? [{ kind: 'islands', sections: islands.flatMap(([first]) => first ?? []) }]
    : [];
}

/** Feeds of two stages on one section, or on sections between which no gap may be made. */
function feedsThatMeet({ stages }: DivisionProblem, whole: Whole): readonly Hindrance[] {
  const feeders = whole.traffic.map((_, section) =>
    stages.flatMap(({ feeds = [] }, stage) => (feeds.includes(section) ? [stage] : [])),
  );
  return partsOf(whole, (link) => whole.links[link]?.kept === true).flatMap((sections): readonly Hindrance[] => {
    const fed = sections.filter((section) => (feeders[section]?.length ?? 0) > 0);
    const by = new Set(fed.flatMap((section) => feeders[section] ?? []));
    return by.size > 1 ? [{ kind: 'feeds', sections: fed }] : [];
  });
}

const cutBoth = ({ joints, conflicts = [] }: DivisionProblem): readonly Hindrance[] =>
  conflicts.flatMap((pair): readonly Hindrance[] =>
    pair.every((joint) => joints[joint]?.gap === 'cut') ? [{ kind: 'near', joints: pair }] : [],
  );

function tooLarge({ traffic, fixed, kinds }: Whole): readonly Hindrance[] {
  return traffic.flatMap((amount, section): readonly Hindrance[] =>
    kinds.every(({ bears }) => bears(fixed[section] ?? 0) < amount) ? [{ kind: 'one-section', section }] : [],
  );
}

function tooMuch({ kinds, total }: Whole): readonly Hindrance[] {
  const bearable = sum(kinds.map(({ bears, stages }) => stages.length * Math.max(0, bears(0))));
  return bearable < total ? [{ kind: 'too-much', bearable: bearable / total }] : [];
}

interface Looser {
  readonly without: { readonly problem: DivisionProblem; readonly options: DivisionOptions };
  /** What is said where there is a division then. */
  readonly say: (division: Division) => Hindrance;
}

/** The problem with one of its demands left out, each in its turn. */
export function looser(problem: DivisionProblem, options: DivisionOptions): readonly Looser[] {
  const { joints, stages, conflicts = [] } = problem;
  const found: Looser[] = [];
  if (options.tolerance !== undefined || options.fullest !== undefined) {
    found.push({ without: { problem, options: {} }, say: () => ({ kind: 'tolerance' }) });
  }
  const kept = joints.flatMap(({ gap }, joint) => (gap === 'kept' ? [joint] : []));
  if (kept.length > 0) {
    const free = joints.map((joint) => (joint.gap === 'kept' ? { ...joint, gap: FREE } : joint));
    found.push({
      without: { problem: { ...problem, joints: free }, options },
      say: ({ cuts }) => ({ kind: 'kept', joints: kept.filter((joint) => cuts.includes(joint)) }),
    });
  }
  const fed = stages.flatMap(({ feeds = [] }) => feeds);
  if (fed.length > 0) {
    const unfed = stages.map(({ bears }) => ({ bears }));
    found.push({
      without: { problem: { ...problem, stages: unfed }, options },
      say: () => ({ kind: 'feeds', sections: fed }),
    });
  }
  if (conflicts.length > 0) {
    found.push({
      without: { problem: { ...problem, conflicts: [] }, options },
      say: ({ cuts }) => ({
        kind: 'near',
        joints: conflicts.filter((pair) => pair.every((joint) => cuts.includes(joint))).flat(),
      }),
    });
  }
  return found;
}

const FREE = 'free' as const;
