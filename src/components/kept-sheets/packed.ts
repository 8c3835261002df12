// A sheet that came in a link.
import { MOST_SHEET_TEXT, type ReadSheet, readSheet } from '../../wizards/sheet/index.ts';

/** The sheet of such a text; never rejects. A link that would unpack to more than any sheet is left where that shows. */
export async function unpackSheet(packed: string): Promise<ReadSheet> {
  const text = await unpacked(packed).catch(() => undefined);
  if (text === undefined) return { problem: { why: 'cut-link' } };
  const read = readSheet(text);
  return 'problem' in read && read.problem.why === 'broken-text' ? { problem: { why: 'cut-link' } } : read;
}

/** Undefined for what is no such text. */
async function unpacked(packed: string): Promise<string | undefined> {
  if (!/^[\w-]+$/.test(packed)) return;
  const bytes = Uint8Array.from(atob(packed.replaceAll('-', '+').replaceAll('_', '/')), (sign) => sign.charCodeAt(0));
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  const decoder = new TextDecoder();
  let text = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    text += decoder.decode(value, { stream: true });
    // `readSheet` says that it is too large.
    if (text.length > MOST_SHEET_TEXT) {
      await reader.cancel();
      return text;
    }
  }
}

/** What stands after `sheet=` in the part of an address from “#”; undefined where no sheet does. */
export const packedIn = (hash: string): string | undefined => /^#sheet=(.+)$/.exec(hash)?.[1];
