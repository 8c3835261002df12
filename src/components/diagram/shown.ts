// What the parts of the drawing are given.
import type { ComponentChildren } from 'preact';
import type { Sheet } from '../../wizards/sheet/index.ts';
import type { Districts, Dressed, Laid, NameOf } from '../../wizards/sheet-drawing/index.ts';
import type { Numbers, Say } from '../words/index.ts';

export interface Selected {
  readonly kind: 'section' | 'joint';
  readonly id: string;
}

/** A layout that was laid out before its drawing was due; `of` says which, and by which names. */
export interface Ahead {
  readonly of: string;
  readonly laid: Laid;
}

export interface DiagramProps {
  readonly sheet: Sheet;
  /** Laid out before; while its track is as it was then, it is not laid out anew. */
  readonly ahead?: Ahead | undefined;
  /** The division that is shown; left out: the one that the sheet holds. */
  readonly districts?: Districts | undefined;
  readonly say: Say;
  readonly numbers: Numbers;
  readonly language: string;
  /** What a section is called; left out: its name, else its mark. */
  readonly nameOf?: NameOf | undefined;
  /** What gaps are called beside the drawing, by their joints. */
  readonly gapNumbers?: ReadonlyMap<string, number> | undefined;
  readonly selected?: Selected | undefined;
  /** What stands right below the drawing. */
  readonly children?: ComponentChildren;
  /** Left out, nothing can be selected. */
  readonly onSelect?: ((selected: Selected | undefined) => void) | undefined;
}

export interface Shown {
  readonly laid: Laid;
  readonly dressed: Dressed;
  readonly names: ReadonlyMap<string, string>;
  readonly sheet: Sheet;
}
