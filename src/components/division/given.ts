// What the parts of the division are given.
import type { Sheet } from '../../wizards/sheet/index.ts';
import type { Districts } from '../../wizards/sheet-drawing/index.ts';
import type { Numbers, Say } from '../words/index.ts';

export interface DivisionProps {
  readonly sheet: Sheet;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly language: string;
  /** What a section is called, by its mark. */
  readonly nameOf: (id: string) => string;
  /** Shows a division in the drawing; undefined: the one that the sheet holds. */
  readonly onShow: (districts: Districts | undefined) => void;
  /** Takes a division into the sheet. */
  readonly onTake: (districts: Districts) => void;
}
