// What the walk makes of faults put into the virtual layout, in figures, for the report of the judge.
import { TOOLS } from '../../src/engine/diagnosis/model.ts';
import type { Person, Walked } from './walks.ts';
import { allInjected, endsWell, isFirst, questionsAt, shareAsMet, WITHOUT_METER, walk } from './walks.ts';

/** So many layouts are drawn for each fault and title: with every answer right, and with one in ten wrong. */
export const LAYOUTS = { right: 5, wrong: 3 } as const;
/** Share of answers that are wrong where people slip. */
export const WRONG = 0.1;
const THREE = 3;

/** Walks, and how many of them went how; `met`: the share of right first proposals as people meet the causes, 0 to 1. */
export interface TableFigures {
  readonly walks: number;
  readonly first: number;
  readonly met: number;
  readonly three: number;
  readonly found: number;
  /** In the median; null where fewer than half came to an end. */
  readonly questions: number | null;
}

interface WithTools {
  readonly meter: TableFigures;
  readonly bare: TableFigures;
}

export interface OnTable {
  /** Every answer right, and one in ten wrong. */
  readonly right: WithTools;
  readonly wrong: WithTools;
}

export interface Walks {
  readonly meter: readonly Walked[];
  readonly bare: readonly Walked[];
}

/** All faults in so many layouts each, walked with a multimeter and without. */
export function walksOf(layouts: number, slips: Pick<Person, 'wrong'> = {}): Walks {
  const all = [...allInjected(layouts)];
  return {
    meter: all.map((one) => walk(one, { tools: TOOLS, ...slips })),
    bare: all.map((one) => walk(one, { tools: WITHOUT_METER, ...slips })),
  };
}

export const amongThree = (one: Walked): boolean => endsWell(one) && one.proposed.length <= THREE;

function figuresOf(walks: readonly Walked[]): TableFigures {
  const questions = questionsAt(walks, 0.5);
  return {
    walks: walks.length,
    first: walks.filter(isFirst).length,
    met: Math.round(1000 * shareAsMet(walks, isFirst)) / 1000,
    three: walks.filter(amongThree).length,
    found: walks.filter(endsWell).length,
    questions: Number.isFinite(questions) ? questions : null,
  };
}

export const figuresWith = ({ meter, bare }: Walks): WithTools => ({ meter: figuresOf(meter), bare: figuresOf(bare) });

/** Takes about two minutes. */
export const onTable = (): OnTable => ({
  right: figuresWith(walksOf(LAYOUTS.right)),
  wrong: figuresWith(walksOf(LAYOUTS.wrong, { wrong: WRONG })),
});
