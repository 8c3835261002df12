// Where the drawing of a sheet and the choice of its division stand on its page.
import type { Sheet } from '../../wizards/sheet/index.ts';
import type { Say } from '../words/index.ts';

interface SheetPartsProps {
  readonly sheet: Sheet;
  readonly say: Say;
  /** The mark of the section or joint that is selected, in the drawing and the tables alike. */
  readonly selected: string | undefined;
  readonly onSelect: (mark: string | undefined) => void;
  /** Takes a changed sheet, to be undone like any other change. */
  readonly onChange: (sheet: Sheet) => void;
}

export function SheetParts(_: SheetPartsProps) {
  return null;
}
