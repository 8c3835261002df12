// Changes that change nothing anybody could notice, each with its reason (`alike.json`): they are not counted.
import { readFileSync } from 'node:fs';

const oneLine = (text) => text.replace(/\s+/g, ' ').trim();

/** @returns {readonly { file: string, line: string, from: string, to: string, why: string }[]} */
const listed = () => JSON.parse(readFileSync(new URL('alike.json', import.meta.url), 'utf8'));

/** What a change is known by when lines move: its file, the line it begins on, what stood there and what stands there now. */
const keyOf = ({ file, line, from, to }) => [file, line, from, to].map(oneLine).join('\n');

/** The text of the line on which a change begins, and the text that it takes away. */
export function told(source, { location: { start, end }, replacement }) {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  const line = lines[0];
  lines[lines.length - 1] = lines[lines.length - 1].slice(0, end.column);
  lines[0] = lines[0].slice(start.column);
  return { line: oneLine(line), from: oneLine(lines.join('\n')), to: oneLine(replacement) };
}

/** What a comparison is given for the rounding of machines alone: a millionth of a unit or less. */
const ROUNDING = /\b1e-(?:6|9|1\d)\b|\bSAME(?:_PLACE)?\b/;

/**
 * Whether just “or the same” comes or goes of one comparison that leaves room for rounding: nobody meets a value that stands at such a border to
 * its last digit. That the room is on the right side can be noticed, and counts.
 */
export const isBorderOfRounding = ({ from, to }) =>
  ROUNDING.test(from) && !/&&|\|\||[?=]>/.test(from) && from.replace(/([<>])=/, '$1') === to.replace(/([<>])=/, '$1');

/** Says of a change why nobody could notice it, and at the end which entries fit no change any more. */
export function alikeIn(files) {
  const reasons = new Map(listed().map((one) => [keyOf(one), one]));
  const met = new Set();
  return {
    why(change) {
      if (isBorderOfRounding(change)) return 'the border of what is there for rounding';
      const key = keyOf(change);
      if (reasons.has(key)) met.add(key);
      return reasons.get(key)?.why;
    },
    fitNothing: () => listed().filter((one) => files.includes(one.file) && !met.has(keyOf(one))),
  };
}
