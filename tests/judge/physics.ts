// How often each sign has each value under each cause, by the circuit of the virtual layout, beside the word that the cause's row has for it.

import type { Mix, Shows } from '../../src/engine/diagnosis/sign-model.ts';
import type { LikelihoodWord } from '../../src/engine/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { LAYOUT_ANSWERS } from './answers/layout.ts';
import { SIGN_READS, signOf } from './signs.ts';
import type { Injected } from './walks.ts';

/** Shares that a word stands for, and the weight that it has in a mix. */
const BANDS: Readonly<Record<LikelihoodWord, readonly [from: number, to: number, weight: number]>> = {
  always: [0.9, 1, 0.97],
  usually: [0.6, 0.95, 0.8],
  sometimes: [0.1, 0.65, 0.3],
  rarely: [0.01, 0.2, 0.07],
  never: [0, 0.04, 0.01],
};

/** One word of a row, and how often the circuit shows the value where the word stands. */
export interface Cell {
  readonly cause: string;
  readonly sign: string;
  readonly value: string;
  readonly word: LikelihoodWord;
  /** Layouts on which the sign could be read, and those of them that show the value. */
  readonly of: number;
  readonly shown: number;
}

const SIGNS = new Map(SIGN_MODEL.signs.map((row) => [row.id, row]));
const CAUSES = new Map(SIGN_MODEL.causes.map((row) => [row.id, row]));

/** The circumstances of a virtual layout; what the table has not is what stands here for every table. */
function circumstancesOf({ layout, complaint }: Injected): ReadonlyMap<string, string> {
  const asked = { layout, complaint };
  return new Map<string, string>([
    ['parts', LAYOUT_ANSWERS['how-many-parts']()],
    ['protection', LAYOUT_ANSWERS['how-it-protects'](asked)],
    ['between', 'nothing'],
    ['sensing', LAYOUT_ANSWERS['detectors-there'](asked)],
    ['commons', LAYOUT_ANSWERS['common-wire'](asked)],
    ['rails', LAYOUT_ANSWERS['how-many-rails']()],
    ['trains', LAYOUT_ANSWERS['what-trains'](asked)],
    ['driven', 'at-the-unit'],
    ['frogs', LAYOUT_ANSWERS['live-frogs'](asked)],
    ['accessory-feed', 'own-supply'],
  ]);
}

function mixOf(shows: Shows, unaffected: Mix, told: ReadonlyMap<string, string>): Mix {
  if (shows === 'unaffected') return unaffected;
  if (!isBy(shows)) return shows;
  return mixOf(shows.is[told.get(shows.by) ?? ''] ?? 'unaffected', unaffected, told);
}

const isBy = (shows: Exclude<Shows, string>): shows is Extract<Shows, { readonly by: string }> =>
  Object.hasOwn(shows, 'by') && Object.hasOwn(shows, 'is');

interface Count {
  of: number;
  shown: number;
  /** The band of the word, normalised as the mix is. */
  from: number;
  to: number;
}

/** Counts what the circuits show, cell by cell. */
export class Physics {
  readonly #cells = new Map<string, Cell & Count>();

  add(one: Injected): void {
    const cause = CAUSES.get(one.fault);
    const told = new Map(circumstancesOf(one));
    const goesOff = signOf(one, 'goes-off');
    if (goesOff !== undefined) told.set('goes-off', goesOff);
    for (const id of Object.keys(SIGN_READS)) {
      const sign = SIGNS.get(id);
      const seen = signOf(one, id);
      if (sign === undefined || seen === undefined) continue;
      const mix = mixOf(cause?.shows[id] ?? 'unaffected', sign.unaffected, told);
      const total = sign.values.reduce((sum, value) => sum + BANDS[mix[value] ?? 'never'][2], 0);
      for (const value of sign.values) this.#count(one.fault, id, value, mix[value] ?? 'never', total, seen === value);
    }
  }

  #count(cause: string, sign: string, value: string, word: LikelihoodWord, total: number, is: boolean): void {
    const key = `${cause} ${sign} ${value} ${word}`;
    const [from, to] = BANDS[word];
    const cell = this.#cells.get(key) ?? { cause, sign, value, word, of: 0, shown: 0, from: 0, to: 0 };
    const { of } = cell;
    this.#cells.set(key, {
      ...cell,
      of: of + 1,
      shown: cell.shown + (is ? 1 : 0),
      from: (cell.from * of + from / Math.max(1, total)) / (of + 1),
      to: (cell.to * of + Math.min(1, to / Math.min(1, total))) / (of + 1),
    });
  }

  /**
   * Cells whose band does not hold what the circuits show, chance and the few layouts reckoned with (95 % interval of Wilson). `denied`: the row says
   * never or rarely, and the circuit shows it more often; the others are values that the row allows too and the table builds always or not at all.
   */
  outside(least = 8): { readonly denied: Cell[]; readonly others: Cell[] } {
    const cells = [...this.#cells.values()].filter(({ of, shown, from, to }) => {
      const [low, high] = wilson(shown, of);
      return of >= least && (high < from || low > to);
    });
    const isDenied = ({ word, shown, of, to }: Count & Cell): boolean =>
      (word === 'never' || word === 'rarely') && shown / of > to;
    return { denied: cells.filter(isDenied), others: cells.filter((cell) => !isDenied(cell)) };
  }
}

const Z = 1.96;

/** The 95 % interval of a share. Source: textbook (Wilson 1927). */
export function wilson(shown: number, of: number): readonly [low: number, high: number] {
  const share = shown / of;
  const middle = (share + Z ** 2 / (2 * of)) / (1 + Z ** 2 / of);
  const half = (Z / (1 + Z ** 2 / of)) * Math.sqrt((share * (1 - share)) / of + Z ** 2 / (4 * of ** 2));
  return [middle - half, middle + half];
}
