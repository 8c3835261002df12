// What is named in a sheet is there, and once: what does not fit the rest is left out and told.
import type { Flaw, List } from './flaws.ts';
import type { Joint, Sheet, SheetStage } from './sheet.ts';

/** The sheet with only what fits together. */
export function fitting(sheet: Sheet, flaws: Flaw[]): Sheet {
  const sections = once('sections', sheet.sections, flaws);
  const supplies = once('supplies', sheet.supplies, flaws);
  const known = new Set(sections.map(({ id }) => id));
  const joints = once('joints', sheet.joints, flaws).filter((joint) => {
    const flaw = jointFlaw(joint, known);
    if (flaw !== undefined) flaws.push({ ...flaw, list: 'joints', at: placeOf(sheet.joints, joint.id) });
    return flaw === undefined;
  });
  const stages = stationFirst(once('stages', sheet.stages, flaws), flaws);
  const { districts, ...rest } = sheet;
  const fed = fedRight({ stages, sections, supplies }, flaws);
  const fit = { ...rest, trains: measuredRight(sheet, flaws), sections, joints, supplies, stages: fed };
  const flaw = districts === undefined ? undefined : divisionFlaw(fit, districts);
  if (flaw !== undefined) flaws.push(flaw);
  return districts === undefined || flaw !== undefined ? fit : { ...fit, districts };
}

type Marked = readonly { readonly id: string }[];
const placeOf = (parts: Marked, mark: string): number => 1 + parts.findIndex(({ id }) => id === mark);
const holds = (parts: Marked, mark: string): boolean => parts.some(({ id }) => id === mark);

function once<Part extends { readonly id: string }>(list: List, parts: readonly Part[], flaws: Flaw[]): Part[] {
  const met = new Set<string>();
  return parts.filter(({ id }, index) => {
    const isNew = !met.has(id);
    met.add(id);
    if (!isNew) flaws.push({ why: 'twice', list, at: index + 1, mark: id });
    return isNew;
  });
}

function jointFlaw({ from, to }: Joint, known: ReadonlySet<string>): Flaw | undefined {
  const missing = [from, to].find((end) => !known.has(end));
  if (missing !== undefined) return { why: 'names-nothing', mark: missing };
  return from === to ? { why: 'to-itself', mark: from } : undefined;
}

/** Stages with the supplies and sections that are there; a section is fed by one stage. */
function fedRight(
  { stages, sections, supplies }: Pick<Sheet, 'stages' | 'sections' | 'supplies'>,
  flaws: Flaw[],
): SheetStage[] {
  const taken = new Set<string>();
  return stages.map(({ supply, feeds, ...rest }, index) => {
    const at = index + 1;
    const fed = feeds?.filter((mark) => {
      const isFree = !taken.has(mark);
      const isThere = holds(sections, mark);
      taken.add(mark);
      if (!isThere) flaws.push({ why: 'names-nothing', list: 'stages', at, field: 'feeds', mark });
      else if (!isFree) flaws.push({ why: 'twice', list: 'stages', at, field: 'feeds', mark });
      return isThere && isFree;
    });
    const isFed = supply !== undefined && holds(supplies, supply);
    if (supply !== undefined && !isFed)
      flaws.push({ why: 'names-nothing', list: 'stages', at, field: 'supply', mark: supply });
    return { ...rest, ...(isFed ? { supply } : {}), ...(fed === undefined ? {} : { feeds: fed }) };
  });
}

/** A range that ends below its beginning is turned round. */
const measuredRight = ({ trains }: Sheet, flaws: Flaw[]): Sheet['trains'] =>
  trains.map((group, index) => {
    const { runningAmps } = group;
    if (runningAmps === undefined || runningAmps.from <= runningAmps.to) return group;
    flaws.push({ why: 'not-allowed', list: 'trains', at: index + 1, field: 'runningAmps' });
    return { ...group, runningAmps: { from: runningAmps.to, to: runningAmps.from } };
  });

/** The command station stands first, and there is but one. */
function stationFirst(stages: Sheet['stages'], flaws: Flaw[]): Sheet['stages'] {
  const first = stages.findIndex(({ kind }) => kind === 'station');
  if (stages.length > 0 && first !== 0)
    flaws.push({ why: 'first-no-station', list: 'stages', at: Math.max(first, 0) + 1 });
  const [station] = stages.slice(Math.max(first, 0));
  if (station === undefined) return [];
  const others = stages.filter((stage) => stage !== station);
  for (const { kind, id } of others) {
    if (kind === 'station')
      flaws.push({ why: 'second-station', list: 'stages', at: 1 + stages.findIndex((one) => one.id === id), mark: id });
  }
  return [{ ...station, kind: 'station' }, ...others.map((stage) => ({ ...stage, kind: 'booster' as const }))];
}

type Districts = NonNullable<Sheet['districts']>;

/** Why a division does not fit its sheet; undefined where it does: every section belongs to one district, each district to a stage of its own. */
function divisionFlaw(
  { sections, stages }: Pick<Sheet, 'sections' | 'stages'>,
  districts: Districts,
): Flaw | undefined {
  const named = districts.flatMap(({ stage, sections: held }, index) => [
    { field: 'stage', mark: stage, at: index + 1, among: stages },
    ...held.map((mark) => ({ field: 'sections', mark, at: index + 1, among: sections })),
  ]);
  const met = { stage: new Set<string>(), sections: new Set<string>() };
  for (const { field, mark, at, among } of named) {
    const before = field === 'stage' ? met.stage : met.sections;
    const place = { list: 'districts', at, field, mark } as const;
    if (!holds(among, mark)) return { why: 'names-nothing', ...place };
    if (before.has(mark)) return { why: 'twice', ...place };
    before.add(mark);
  }
  const left = sections.find(({ id }) => !met.sections.has(id));
  return left === undefined ? undefined : { why: 'not-whole', list: 'districts', mark: left.id };
}
