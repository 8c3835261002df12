// Where the drawing of a sheet and the choice of its division stand on its page: loaded once there is a sheet to draw.
import type { Sheet } from '../../wizards/sheet/index.ts';
import { useLoaded } from '../shared/index.ts';
import type { Say } from '../words/index.ts';
import { NotLoaded } from './NotLoaded.tsx';
import type { Words } from './sayings.ts';

interface SheetPartsProps {
  readonly sheet: Sheet;
  readonly say: Say;
  readonly language: string;
  readonly words: Words;
  /** The mark of the section or joint that is selected, in the drawing and the tables alike. */
  readonly selected: string | undefined;
  readonly onSelect: (mark: string | undefined) => void;
  /** Takes a changed sheet, to be undone like any other change. */
  readonly onChange: (sheet: Sheet) => void;
}

const loadParts = () => import('../division/index.ts');

export function SheetParts(props: SheetPartsProps) {
  const parts = useLoaded(loadParts);
  if (parts.failed) return <NotLoaded part={parts} say={props.say} />;
  const Parts = parts.value?.default;
  return Parts === undefined ? null : <Parts {...props} />;
}
