// All files of a release in one: how long each is, in JSON behind a count of its bytes; then their bytes in that order; compressed as a whole,
// so that what pages share is there once.
import { decompress } from 'fzstd';

export interface Packed {
  readonly path: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

const COUNT = 4;

type Listed = readonly (readonly [path: string, length: number])[];

export function unpack(pack: Uint8Array): readonly Packed[] {
  const all = Uint8Array.from(decompress(pack));
  const begin = COUNT + new DataView(all.buffer).getUint32(0);
  const listed: Listed = JSON.parse(new TextDecoder().decode(all.subarray(COUNT, begin)));
  let at = begin;
  return listed.map(([path, length]) => {
    at += length;
    return { path, bytes: all.subarray(at - length, at) };
  });
}
