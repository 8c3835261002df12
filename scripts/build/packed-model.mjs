// Sends the model of "Put it right" to browsers in a compact form: by columns, words as digits. What it is unpacked by, and to what, is in
// src/wizards/put-it-right/model/packed.ts.
import { fileURLToPath } from 'node:url';
import { CAUSES } from '../../src/wizards/put-it-right/model/causes/index.ts';
import { CHECKS } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { CIRCUMSTANCES } from '../../src/wizards/put-it-right/model/circumstances.ts';
import { OPENINGS } from '../../src/wizards/put-it-right/model/openings.ts';
import { FIRST_LETTER, NOT_NAMED } from '../../src/wizards/put-it-right/model/packed.ts';
import { SIGNS } from '../../src/wizards/put-it-right/model/signs.ts';

const MODEL = fileURLToPath(new URL('../../src/wizards/put-it-right/model/', import.meta.url));
const WORDS = ['never', 'rarely', 'sometimes', 'usually', 'always'];

const digits = (mix, values) =>
  values
    .map((value) => (mix[value] === undefined ? '.' : String(WORDS.indexOf(mix[value]))))
    .join('')
    .replace(/\.+$/, '');

const rowsOf = (signs, circumstances) =>
  new Map([
    ...signs.map(({ id, values }) => [id, values]),
    ...circumstances.map(({ id, values }) => [id, Object.keys(values)]),
  ]);

function packShows(shows, values, rows) {
  if (shows === 'unaffected') return '';
  if ('by' in shows && 'is' in shows) {
    return [shows.by, ...rows.get(shows.by).map((value) => packShows(shows.is[value], values, rows))];
  }
  return digits(shows, values);
}

export function packCauses(causes, signs, circumstances) {
  const rows = rowsOf(signs, circumstances);
  const column = ({ id, values }) => {
    const met = new Map();
    const places = causes.map(({ shows }) => {
      if (shows[id] === undefined) return NOT_NAMED;
      const packed = packShows(shows[id], values, rows);
      const key = JSON.stringify(packed);
      if (!met.has(key)) met.set(key, packed);
      return String.fromCharCode(FIRST_LETTER + [...met.keys()].indexOf(key));
    });
    return [id, [[...met.values()], places.join('').replace(/ +$/, '')]];
  };
  const some = (name) =>
    Object.fromEntries(causes.flatMap((cause, at) => (cause[name] === undefined ? [] : [[at, cause[name]]])));
  return {
    ids: causes.map(({ id }) => id).join(' '),
    fixClasses: Object.fromEntries(causes.flatMap(({ id, fixClass }, at) => (fixClass === id ? [] : [[at, fixClass]]))),
    minutes: causes.map(({ minutes }) => minutes),
    needs: some('needs'),
    well: some('well'),
    shows: Object.fromEntries(signs.map(column)),
  };
}

const packGives = (gives, options) =>
  typeof gives === 'string' ? String.fromCharCode(0x61 + options.indexOf(gives)) : digits(gives, options);

function packReading(reading, values, options, rows) {
  if (Array.isArray(reading)) return reading.map(({ where, gives }) => [where, packGives(gives, options)]);
  if ('by' in reading && 'is' in reading) {
    const { by, is } = reading;
    return { by, is: rows.get(by).map((value) => packReading(is[value], values, options, rows)) };
  }
  return values.map((value) => packGives(reading[value], options)).join(' ');
}

/** By place, where a check has more than what stands in the columns. */
function moreOf({ id, minutes, tool, risk, needs, source, options, reads, reading, ...more }, at) {
  return Object.keys(more).length === 0 ? [] : [[at, more]];
}

export function packChecks(checks, signs, circumstances) {
  const rows = rowsOf(signs, circumstances);
  return {
    ids: checks.map(({ id }) => id).join(' '),
    minutes: checks.map(({ minutes }) => minutes),
    tools: checks.map(({ tool }) => tool),
    risks: checks.map(({ risk }) => risk),
    needs: checks.map(({ needs }) => needs),
    sources: checks.map(({ source }) => source),
    options: checks.map(({ options }) => options.join(' ')),
    reads: checks.map(({ reads }) => reads),
    readings: checks.map(({ reading, reads, options }) => packReading(reading, rows.get(reads) ?? [], options, rows)),
    more: Object.fromEntries(checks.flatMap(moreOf)),
  };
}

export function packOpenings(openings, causes) {
  const places = openings.map(({ shares }) => causes.flatMap(({ id }, at) => (shares[id] === undefined ? [] : [at])));
  return {
    ids: openings.map(({ id }) => id).join(' '),
    often: openings.map(({ often }) => often),
    says: openings.map(({ says }) => says),
    steps: places.map((all) => all.map((at, i) => at - (all[i - 1] ?? 0))),
    weights: openings.map(({ shares }, i) => places[i].map((at) => shares[causes[at].id])),
  };
}

/** What stands in place of each file of the model in a browser. */
const SENT = {
  'causes/index.ts': () => `
import { CIRCUMSTANCES } from '../circumstances.ts';
import { unpackCauses } from '../packed.ts';
import { SIGNS } from '../signs.ts';
export const CAUSES = unpackCauses(${JSON.stringify(packCauses(CAUSES, SIGNS, CIRCUMSTANCES))}, SIGNS, CIRCUMSTANCES);`,
  'checks/index.ts': () => `
import { CIRCUMSTANCES } from '../circumstances.ts';
import { unpackChecks } from '../packed.ts';
import { SIGNS } from '../signs.ts';
export const CHECKS = unpackChecks(${JSON.stringify(packChecks(CHECKS, SIGNS, CIRCUMSTANCES))}, SIGNS, CIRCUMSTANCES);`,
  'openings.ts': () => `
import { CAUSES } from './causes/index.ts';
import { unpackOpenings } from './packed.ts';
export const OPENINGS = unpackOpenings(${JSON.stringify(packOpenings(OPENINGS, CAUSES))}, CAUSES);`,
};

/**
 * @returns {{
 *   name: string, apply: 'build', enforce: 'pre',
 *   applyToEnvironment: (environment: { name: string }) => boolean,
 *   load: (id: string) => { code: string, map: null, moduleType: 'js' } | undefined,
 * }}
 */
export const packedModel = () => ({
  name: 'packed-model',
  apply: 'build',
  applyToEnvironment: ({ name }) => name === 'client',
  enforce: 'pre',
  load(id) {
    const file = id.replaceAll('\\', '/').split('?')[0];
    const found = Object.keys(SENT).find((one) => file === `${MODEL.replaceAll('\\', '/')}${one}`);
    return found === undefined ? undefined : { code: SENT[found](), map: null, moduleType: 'js' };
  },
});
