// The one list of live figures: which folder of src/components/figures draws each, and the rooms of words it reads. A lesson names one by
// its id, which is not always the name of the folder: `larger-supply` and `booster-adds` are how-many-trains begun in another way,
// `voltage-along` and `short-along` are two sides of along-the-track, `track-scope` is gap-scope with one pair of rails. That the id is in this list is checked by src/content.config.ts, that it is drawn by Figure.astro.
import type { Room } from './rooms.ts';

interface Listed {
  /** Its folder below src/components/figures. */
  readonly folder: string;
  readonly rooms: readonly Room[];
}

const TRAINS = {
  folder: 'how-many-trains',
  rooms: ['how-many-trains', 'verdicts', 'charts', 'tables', 'units'],
} as const;
const ALONG = { folder: 'along-the-track', rooms: ['along-the-track', 'along', 'tables', 'units'] } as const;
const SCOPE = { folder: 'gap-scope', rooms: ['gap-scope', 'units'] } as const;

export const FIGURES = {
  'how-many-trains': TRAINS,
  'larger-supply': TRAINS,
  'booster-adds': TRAINS,
  'voltage-along': ALONG,
  'short-along': ALONG,
  'gap-scope': SCOPE,
  'track-scope': SCOPE,
  'train-across': { folder: 'train-across', rooms: ['train-across', 'crossing', 'units'] },
  'through-section': { folder: 'through-section', rooms: ['through-section', 'units'] },
  'who-opens': { folder: 'who-opens', rooms: ['who-opens', 'units'] },
  'drive-across': { folder: 'drive-across', rooms: ['drive-across', 'units'] },
} as const satisfies Readonly<Record<string, Listed>>;

export type FigureId = keyof typeof FIGURES;
const isFigure = (id: string): id is FigureId => Object.hasOwn(FIGURES, id);
export const FIGURE_IDS: readonly FigureId[] = Object.keys(FIGURES).filter(isFigure);
