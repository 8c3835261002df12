// Which sheet a page works on: the one in its address, else the one last opened on this device.
import type { Flaw, Sheet, SheetProblem } from '../../wizards/sheet/index.ts';
import { packedIn, unpackSheet } from './packed.ts';
import { type KeptSheet, openShelf } from './sheets.ts';

/** `kept`: where it lies on this device; undefined for one that came in the address, which nobody has kept yet. */
export type OpenedSheet =
  | { readonly sheet: Sheet; readonly flaws: readonly Flaw[]; readonly kept: KeptSheet | undefined }
  | { readonly problem: SheetProblem }
  | { readonly none: true };

/** @param hash the part of the address from “#”. Never rejects. */
export async function openSheet(hash = location.hash): Promise<OpenedSheet> {
  const packed = packedIn(hash);
  if (packed !== undefined) {
    const read = await unpackSheet(packed);
    return 'problem' in read ? read : { ...read, kept: undefined };
  }
  try {
    const { sheets, last } = (await openShelf()).value;
    const kept = sheets.find(({ id }) => id === last);
    return kept === undefined ? { none: true } : { sheet: kept.sheet, flaws: [], kept };
  } catch {
    return { none: true };
  }
}
