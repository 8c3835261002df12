// Lengths and wires that stand in sentences of the content: placeholders, so that each reader gets them as they measure.
//   {m:0.3} {cm:30} {mm:1} {mm2:1.5}                       a fact, in that metric unit
//   {mm2:1.5 or-thicker} {m:3 or-closer} {m:2 or-longer}   what to buy or to do: in feet and gauges at least as good as in metric
//   {either:a few millimetres|an eighth of an inch}        where words say it
import { fromMetric } from '../../engine/index.ts';
import type { Numbers, Telling } from './numbers.ts';

const SIGNS = { m: 'm', cm: 'cm', mm: 'mm', mm2: 'mm²' } as const;
type Unit = keyof typeof SIGNS;

const TELLINGS: Readonly<Record<string, Telling>> = {
  'or-thicker': 'at-least',
  'or-longer': 'at-least',
  'or-closer': 'at-most',
};

const PLACE = /\{(?:(m|cm|mm|mm2):(\d+(?:\.\d+)?)(?: (or-thicker|or-longer|or-closer))?|either:([^|{}]*)\|([^{}]*))\}/g;

/** The words with each placeholder filled in the system of the numbers; any shape, of which only the texts change. */
export function inMeasures<Words>(words: Words, numbers: Numbers): Words;
export function inMeasures(words: unknown, numbers: Numbers): unknown {
  if (typeof words === 'string') return filled(words, numbers);
  if (Array.isArray(words)) return words.map((one: unknown) => inMeasures(one, numbers));
  if (typeof words !== 'object' || words === null) return words;
  return Object.fromEntries(Object.entries(words).map(([key, one]) => [key, inMeasures(one, numbers)]));
}

const filled = (text: string, numbers: Numbers): string =>
  text.includes('{') ? text.replace(PLACE, (...found: string[]) => told(found, numbers)) : text;

/** A sentence in pieces: plain text, and what differs between the two systems. */
export type Piece = string | { readonly metric: string; readonly feet: string };

/** For a page that is written once for both systems. */
export function measureParts(text: string, metric: Numbers, feet: Numbers): Piece[] {
  const pieces: Piece[] = [];
  let end = 0;
  for (const found of text.matchAll(PLACE)) {
    if (found.index > end) pieces.push(text.slice(end, found.index));
    end = found.index + found[0].length;
    pieces.push({ metric: told(found, metric), feet: told(found, feet) });
  }
  if (end < text.length) pieces.push(text.slice(end));
  return pieces;
}

function told([, unit, value, how = '', inMetric = '', inFeet = '']: readonly string[], numbers: Numbers): string {
  const metric = (unit === 'mm2' ? numbers.wires : numbers.system) === 'metric';
  if (unit === undefined || !isUnit(unit)) return metric ? inMetric : inFeet;
  if (metric) return `${numbers.plain(Number(value), 3)}\u00a0${SIGNS[unit]}`;
  const telling = TELLINGS[how] ?? 'near';
  const si = fromMetric(Number(value), unit);
  if (unit !== 'mm2') return numbers.metres(si, telling);
  return numbers.wire(si, telling === 'near' ? 'near' : 'at-least');
}

const isUnit = (unit: string): unit is Unit => Object.hasOwn(SIGNS, unit);
