// A sheet in a link: compressed, in signs that an address may hold. Apart from what reads one, which comes with every page that opens a sheet.
import { type Sheet, writeSheet } from '../../wizards/sheet/index.ts';

/** Longest that a link may be: mail programs and messengers cut longer ones, characters. Source: from-memory. */
export const MOST_LINK = 8000;
/** So much text in one go, bytes: arguments of a call are limited. */
const CHUNK = 8192;

/** The link would be longer than most places take. */
export class TooLong extends Error {}

/** This page with a sheet in its address. Rejects with `TooLong`. */
export async function linkTo(sheet: Sheet): Promise<string> {
  const link = `${location.origin}${location.pathname}#sheet=${await packSheet(sheet)}`;
  if (link.length > MOST_LINK) throw new TooLong();
  return link;
}

/** A sheet as the part of an address after `sheet=`. */
export async function packSheet(sheet: Sheet): Promise<string> {
  const bare = new Blob([JSON.stringify(JSON.parse(writeSheet(sheet)))]);
  const packed = bare.stream().pipeThrough(new CompressionStream('deflate-raw'));
  const bytes = new Uint8Array(await new Response(packed).arrayBuffer());
  let text = '';
  for (let at = 0; at < bytes.length; at += CHUNK) text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}
