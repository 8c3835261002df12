// Where the drawing of a sheet and the choice of its division stand on its page: loaded once there is a sheet to draw.
import { useState } from 'preact/hooks';
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

export const loadParts = () => import('../division/index.ts');

/** Also lays the sheet out, a part at a time, so that a hand never waits for it. */
async function loadDrawn(sheet: Sheet) {
  const { default: Drawn, layAhead } = await loadParts();
  return { Drawn, ahead: await layAhead(sheet) };
}

export function SheetParts(props: SheetPartsProps) {
  const [load] = useState(() => () => loadDrawn(props.sheet));
  const parts = useLoaded(load);
  if (parts.failed) return <NotLoaded part={parts} say={props.say} />;
  if (parts.value === undefined) return null;
  const { Drawn, ahead } = parts.value;
  return <Drawn {...props} ahead={ahead} />;
}
