// What is said of a sheet: names of its parts, and sentences for what could not be read.
import type { Flaw, Sheet, SheetProblem, SheetStage, SheetSupply } from '../../wizards/sheet/index.ts';
import type { Say } from '../words/index.ts';

export type Words = Readonly<Record<string, string>>;

/** The sheet with a name for each section that the words know by its mark. */
export const named = (sheet: Sheet, words: Words): Sheet => ({
  ...sheet,
  sections: sheet.sections.map((section) => {
    const name = words[`part-${section.id}`];
    return name === undefined || section.name !== undefined ? section : { ...section, name };
  }),
});

export const sectionName = ({ sections }: Pick<Sheet, 'sections'>, mark: string): string =>
  sections.find(({ id }) => id === mark)?.name ?? mark;

export function stageName({ stages }: Pick<Sheet, 'stages'>, { id, name }: SheetStage, say: Say): string {
  if (name !== undefined && name.trim() !== '') return name;
  const n = stages.findIndex((stage) => stage.id === id);
  return n === 0 ? say('sheet-station') : say('sheet-booster', { n });
}

export function supplyName({ supplies }: Pick<Sheet, 'supplies'>, { id, name }: SheetSupply, say: Say): string {
  if (name !== undefined && name.trim() !== '') return name;
  return say('sheet-supply', { n: 1 + supplies.findIndex((supply) => supply.id === id) });
}

export function problemSaid(problem: SheetProblem | { readonly why: 'not-read' }, what: string, say: Say): string {
  const at = 'at' in problem ? { at: problem.at } : {};
  return say(`sheet-problem-${problem.why}`, { what, ...at });
}

/** Where it is wrong, and why. */
export function flawSaid({ why, list, at, field, mark }: Flaw, say: Say): string {
  const part = list === undefined ? say('sheet-part-whole') : say(`sheet-part-${list}`, { at: at ?? '' });
  const known = field === undefined ? undefined : fieldSaid(field, say);
  return say(`sheet-flaw-${why}`, {
    where: known === undefined ? part : say('sheet-part-field', { part, field: known }),
    mark: mark ?? '',
  });
}

/** A field as its words are named: `fixed-amps`. */
export const wordOf = (field: string): string => field.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`);

/** A field’s name, or what stands in the file where nobody knows it. */
function fieldSaid(field: string, say: Say): string {
  return FIELDS.has(field) ? say(`sheet-field-${wordOf(field)}`) : `“${field}”`;
}

const FIELDS: ReadonlySet<string> = new Set([
  ...([
    'id',
    'name',
    'scale',
    'trains',
    'moving',
    'coaches',
    'sections',
    'joints',
    'stages',
    'supplies',
    'districts',
  ] as const),
  ...([
    'metres',
    'traffic',
    'tags',
    'fixedAmps',
    'at',
    'from',
    'to',
    'gap',
    'cut',
    'awkward',
    'kind',
    'count',
  ] as const),
  ...([
    'sound',
    'runningAmps',
    'standingAmps',
    'limitAmps',
    'tripAmps',
    'supply',
    'inputKind',
    'plug',
    'rails',
  ] as const),
  ...(['leastInputVolts', 'inputVolts', 'railVolts', 'ownUseAmps', 'tripSeconds', 'comesBack', 'common'] as const),
  ...(['cutout', 'autoReversing', 'breakers', 'feeds', 'volts', 'amps', 'earthed', 'rail', 'stage'] as const),
]);
