// Between a sheet and the planning wizards: what a wizard would ask and the sheet knows, and what answers tell of a layout.

import { SQUARE_MILLIMETRE } from '../../engine/index.ts';
import type { Answer, Answers } from '../planning/index.ts';
import { answerText, FURTHER_DISTRICTS, fieldOf, isAsked, parseField, Reader } from '../planning/index.ts';
import type { Sheet, SheetStage, SheetSupply, SheetTrains } from './sheet.ts';

/** Traffic is told to wizards in tenths. Source: own-choice. */
const TENTHS = 10;
/** A district of which nobody has told how long it is, metres. Source: own-choice. */
const UNTOLD_METRES = 5;

/** What is told of a field: nothing where the sheet does not know it, or where the wizard does not take it. */
class Told {
  readonly answers: Record<string, Answer> = {};

  choose(id: string, option: string | undefined): void {
    if (option !== undefined) this.put(id, { kind: 'choice', option });
  }

  number(id: string, from: number | undefined, to: number | undefined = from): void {
    if (from !== undefined && to !== undefined) this.put(id, { kind: 'number', span: { from, to } });
  }

  private put(id: string, answer: Answer): void {
    const field = fieldOf(id);
    if (field === undefined) return;
    if (parseField(field, answerText(answer, field)).kind === 'answer') this.answers[id] = answer;
  }
}

/** What the planning wizards would ask and the sheet knows, by field: a wizard takes those that it asks. */
export function answersOf(sheet: Sheet): Answers {
  const told = new Told();
  told.choose('system', 'two-rail');
  told.choose('scale', sheet.scale);
  tellTrains(told, sheet);
  const [station, booster] = sheet.stages;
  const feeds = (stage: SheetStage | undefined) => sheet.supplies.find(({ id }) => id === stage?.supply);
  tellStage(told, 'unit', station);
  tellStage(told, 'station', station);
  tellStage(told, 'booster', booster);
  tellSupply(told, 'supply', feeds(station));
  tellSupply(told, 'one', feeds(station));
  tellSupply(told, 'two', feeds(booster));
  if (station?.ownUseAmps !== undefined) {
    told.choose('own-use', 'measured');
    told.number('idle', station.ownUseAmps);
  }
  if (sheet.stages.length > 0) told.number('boosters', sheet.stages.length - 1);
  tellDistricts(told, sheet);
  tellWiring(told, sheet);
  return onlyAsked(told.answers);
}

/** Fields that hang on another are told only where that one wants them. */
function onlyAsked(answers: Answers): Answers {
  const kept = Object.entries(answers).filter(([id]) => {
    const field = fieldOf(id);
    return field !== undefined && isAsked(field, answers);
  });
  return Object.fromEntries(kept);
}

function tellTrains(told: Told, sheet: Sheet): void {
  const groups = sheet.trains.filter(({ count }) => count > 0);
  const all = groups.reduce((sum, { count }) => sum + count, 0);
  const of = (does: (group: SheetTrains) => boolean): number =>
    groups.reduce((sum, group) => sum + (does(group) ? group.count : 0), 0);
  if (all > 0) {
    const measured = groups.filter(({ kind }) => kind === 'measured');
    const older = of(({ kind }) => kind === 'older');
    told.number('modern', all - older);
    told.number('older', older);
    told.number(
      'sound',
      of(({ sound }) => sound === true),
    );
    if (measured.length === groups.length) {
      told.choose('draw', 'measured');
      told.number('trains', all);
      const ranges = measured.flatMap(({ runningAmps }) => (runningAmps === undefined ? [] : [runningAmps]));
      if (ranges.length > 0) {
        told.number('running', Math.min(...ranges.map(({ from }) => from)), Math.max(...ranges.map(({ to }) => to)));
      }
      const [{ standingAmps } = {}] = measured;
      told.number('standing', standingAmps);
    }
  }
  told.number('stored', sheet.stored);
  told.number('moving', sheet.moving === undefined ? undefined : Math.min(all, sheet.moving));
  told.number('evening', sheet.eveningHours);
  told.number('coaches', sheet.coaches);
  told.choose('lamps', sheet.coaches !== undefined && sheet.coaches > 0 ? sheet.lamps : undefined);
  told.number('accessories', sheet.accessoryBus === 'own' ? 0 : sheet.accessories);
}

function tellStage(told: Told, prefix: string, stage: SheetStage | undefined): void {
  if (stage === undefined) return;
  told.number(`${prefix}-limit`, stage.limitAmps);
  told.choose(`${prefix}-input`, stage.inputKind);
  const most = stage.inputVolts;
  told.number(
    `${prefix}-input-volts`,
    most === undefined ? undefined : Math.min(most, stage.leastInputVolts ?? most),
    most,
  );
  told.choose(`${prefix}-plug`, stage.plug);
  told.choose(`${prefix}-rails`, stage.rails);
  if (stage.rails !== undefined && stage.rails !== 'follows') told.number(`${prefix}-rail-volts`, stage.railVolts);
}

function tellSupply(told: Told, prefix: string, supply: SheetSupply | undefined): void {
  told.choose(`${prefix}-kind`, supply?.kind);
  told.number(`${prefix}-volts`, supply?.volts);
  told.number(`${prefix}-amps`, supply?.amps);
  told.choose(`${prefix}-plug`, supply?.plug);
}

/**
 * Share of the traffic in each district of the sheet, in their order; together 1, or all 0 where there is none.
 */
export function trafficOf({ sections, districts = [] }: Pick<Sheet, 'sections' | 'districts'>): number[] {
  const traffic = new Map(sections.map((section) => [section.id, section.traffic]));
  const sums = districts.map(({ sections: held }) => held.reduce((sum, id) => sum + (traffic.get(id) ?? 0), 0));
  const total = sums.reduce((sum, one) => sum + one, 0);
  return sums.map((sum) => (total > 0 ? sum / total : 0));
}

/** The letters of the planning wizards: the first is the command station's. */
const LETTERS = ['a', ...FURTHER_DISTRICTS] as const;

function tellDistricts(told: Told, sheet: Sheet): void {
  const { districts = [], stages, supplies } = sheet;
  if (districts.length < 2 || districts.length > LETTERS.length) return;
  const shares = trafficOf(sheet);
  // The district of the command station is told first.
  const order = stages.flatMap((stage) => {
    const at = districts.findIndex((district) => district.stage === stage.id);
    return at < 0 ? [] : [{ stage, share: shares[at] ?? 0 }];
  });
  told.choose('divided', 'divided');
  told.number('districts', order.length);
  for (const [index, { stage, share }] of order.entries()) {
    const letter = LETTERS[index];
    if (letter === undefined) continue;
    told.number(`traffic-${letter}`, Math.round(TENTHS * share));
    if (index === 0) continue;
    told.number(`limit-${letter}`, stage.limitAmps);
    told.number(`amps-${letter}`, supplies.find(({ id }) => id === stage.supply)?.amps);
  }
  const [first = 0, second = 0] = order.map(({ share }) => Math.round(TENTHS * share));
  const busier = first > second ? 'station' : 'booster';
  told.choose('busier', first === second ? 'same' : busier);
}

/** The wires of the district of the command station, or of the whole layout while it is not divided. */
function tellWiring(told: Told, sheet: Sheet): void {
  const { wiring = {}, stages, sections, districts = [] } = sheet;
  const [station] = stages;
  const own = districts.find(({ stage }) => stage === station?.id)?.sections;
  const held = own === undefined ? sections : sections.filter(({ id }) => own.includes(id));
  const metres = held.reduce((sum, section) => sum + section.metres, 0);
  const area = (squares: number | undefined) => (squares === undefined ? undefined : squares * SQUARE_MILLIMETRE);
  told.number('wire-volts', station?.railVolts);
  told.number('wire-trip', station?.tripAmps ?? station?.limitAmps);
  told.number('bus-length', wiring.busMetres);
  told.number('bus-wire', area(wiring.busSquareMillimetres));
  if (sections.length > 0) told.number('track-length', Number(metres.toPrecision(3)));
  if (wiring.metresBetweenFeeders !== undefined && metres > 0) {
    told.number('feeder-count', Math.max(1, Math.ceil(metres / wiring.metresBetweenFeeders)));
  }
  told.number('feeder-length', wiring.feederMetres);
  told.number('feeder-wire', area(wiring.feederSquareMillimetres));
  told.choose('rail-kind', wiring.railOhmsPerMetre === undefined ? wiring.rail : 'measured');
  told.number('rail-ohms', wiring.railOhmsPerMetre);
}

/**
 * A sheet with what the answers of a wizard tell of the layout; what they do not tell stays as it is.
 */
export function withAnswers(sheet: Sheet, answers: Answers): Sheet {
  const reader = new Reader(answers);
  const told = <Value>(id: string, value: Value): Value | undefined =>
    answers[id]?.kind === 'choice' || answers[id]?.kind === 'number' ? value : undefined;
  const number = (id: string): number | undefined => told(id, reader.number(id));
  const counted = trainsIn(answers, reader);
  const scale = told('scale', reader.scale()) ?? sheet.scale;
  const plain = {
    ...sheet,
    scale,
    ...(counted === undefined ? {} : { trains: counted }),
    ...given({
      moving: number('moving'),
      eveningHours: number('evening'),
      coaches: number('coaches'),
      lamps: told('lamps', reader.option('lamps') === 'led' ? ('led' as const) : ('filament' as const)),
      accessories: number('accessories'),
      stored: number('stored'),
    }),
  };
  const powered = withStages(plain, reader, number, told);
  const wired = withWiring(powered, reader, number, told);
  return withDistricts(wired, reader, number);
}

type Number_ = (id: string) => number | undefined;
type TellIf = <Value>(id: string, value: Value) => Value | undefined;

/** The fields that are known. */
function given<Fields extends Readonly<Record<string, unknown>>>(
  fields: Fields,
): { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> };
function given(fields: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

/** Undefined where the answers count no trains. */
function trainsIn(answers: Answers, reader: Reader): SheetTrains[] | undefined {
  const draw = answers['draw'];
  if (draw?.kind === 'choice' && draw.option === 'measured' && answers['trains']?.kind === 'number') {
    const running = answers['running']?.kind === 'number' ? reader.span('running') : undefined;
    const standing = answers['standing']?.kind === 'number' ? reader.number('standing') : undefined;
    return [
      {
        kind: 'measured',
        count: reader.number('trains') ?? 1,
        ...given({ runningAmps: running === undefined ? undefined : { ...running }, standingAmps: standing }),
      },
    ];
  }
  if (answers['modern']?.kind !== 'number' && answers['older']?.kind !== 'number') return undefined;
  const modern = reader.number('modern') ?? 0;
  const older = reader.number('older') ?? 0;
  // As the demand takes it: sound is in the modern ones first.
  const sound = Math.min(modern + older, reader.number('sound') ?? 0);
  const soundModern = Math.min(sound, modern);
  const soundOlder = sound - soundModern;
  const groups: SheetTrains[] = [
    { kind: 'modern', count: modern - soundModern },
    { kind: 'modern', count: soundModern, sound: true },
    { kind: 'older', count: older - soundOlder },
    { kind: 'older', count: soundOlder, sound: true },
  ];
  return groups.filter(({ count }) => count > 0);
}

/** A mark that no part has yet: `booster-2`. */
export function freshMark(prefix: string, parts: readonly { readonly id: string }[]): string {
  let number = 1;
  while (parts.some(({ id }) => id === `${prefix}-${number}`)) number++;
  return `${prefix}-${number}`;
}

function withStages(sheet: Sheet, reader: Reader, number: Number_, told: TellIf): Sheet {
  const unit = (prefix: string) => {
    const span = told(`${prefix}-input-volts`, reader.span(`${prefix}-input-volts`));
    const { kind, plug } = reader.inputLabel(prefix);
    const rails = told(`${prefix}-rails`, reader.option(`${prefix}-rails`));
    return given({
      limitAmps: number(`${prefix}-limit`),
      inputKind: kind,
      inputVolts: span?.to,
      leastInputVolts: span === undefined || span.from === span.to ? undefined : span.from,
      plug,
      rails: RAILS.find((one) => one === rails),
      railVolts: number(`${prefix}-rail-volts`),
    });
  };
  const label = (prefix: string) => given({ ...reader.supplyLabel(prefix) });
  const ownUse = told('own-use', reader.ownUse());
  const first = { ...unit('unit'), ...unit('station'), ...given({ ownUseAmps: ownUse }) };
  const one = putStage(sheet, 0, first, { ...label('supply'), ...label('one') });
  return putStage(one, 1, unit('booster'), label('two'));
}

const RAILS = ['follows', 'set', 'converter'] as const;

/** Lays what is told over the stage at that place and its supply; nothing told, nothing made. */
function putStage(sheet: Sheet, at: number, stage: Partial<SheetStage>, supply: Partial<SheetSupply>): Sheet {
  const [tellsStage, tellsSupply] = [stage, supply].map((part) => Object.keys(part).length > 0);
  if (!(tellsStage || tellsSupply) || at > sheet.stages.length) return sheet;
  const kind = at === 0 ? 'station' : 'booster';
  const old = sheet.stages[at] ?? { id: at === 0 ? 'station' : freshMark('booster', sheet.stages), kind };
  const known = sheet.supplies.find(({ id }) => id === old.supply);
  const fed = known ?? (tellsSupply ? { id: freshMark('supply', sheet.supplies) } : undefined);
  const stages = [...sheet.stages];
  stages[at] = { ...old, ...stage, ...given({ supply: fed?.id }) };
  if (fed === undefined) return { ...sheet, stages };
  const others = sheet.supplies.map((one) => (one.id === fed.id ? { ...one, ...supply } : one));
  return { ...sheet, stages, supplies: known === undefined ? [...others, { ...fed, ...supply }] : others };
}

function withWiring(sheet: Sheet, reader: Reader, number: Number_, told: TellIf): Sheet {
  const squares = (id: string) => {
    const area = number(id);
    return area === undefined ? undefined : Number((area / SQUARE_MILLIMETRE).toPrecision(6));
  };
  const track = number('track-length');
  const feeders = number('feeder-count');
  const kind = told('rail-kind', reader.option('rail-kind'));
  const wires = given({
    busMetres: number('bus-length'),
    busSquareMillimetres: squares('bus-wire'),
    feederMetres: number('feeder-length'),
    feederSquareMillimetres: squares('feeder-wire'),
    metresBetweenFeeders:
      track === undefined || feeders === undefined ? undefined : Math.min(50, Math.max(0.1, track / feeders)),
    rail: kind === 'measured' ? undefined : kind,
    railOhmsPerMetre: number('rail-ohms'),
  });
  return Object.keys(wires).length === 0 ? sheet : { ...sheet, wiring: { ...sheet.wiring, ...wires } };
}

/** Districts that there are: units and supplies by letter; a layout without sections gets one for each, cut where they meet. */
function withDistricts(sheet: Sheet, reader: Reader, number: Number_): Sheet {
  const count = reader.option('divided') === 'divided' ? (number('districts') ?? 1) : 1;
  if (count < 2) return sheet;
  let grown = putStage(sheet, 0, sheet.stages.length === 0 ? { kind: 'station' } : {}, {});
  const letters = LETTERS.slice(0, count);
  for (const [at, letter] of letters.entries()) {
    if (at === 0) continue;
    const amps = number(`amps-${letter}`);
    grown = putStage(
      grown,
      at,
      { kind: 'booster', ...given({ limitAmps: number(`limit-${letter}`) }) },
      given({ amps }),
    );
  }
  if (grown.sections.length > 0) return grown;
  const shares = letters.map((letter) => number(`traffic-${letter}`));
  const evenly = shares.some((share) => share === undefined) || shares.every((share) => share === 0);
  const sections = letters.map((letter, at) => ({
    id: `district-${letter}`,
    metres: UNTOLD_METRES,
    traffic: evenly ? 1 : (shares[at] ?? 0),
    at: { column: at, row: 0 },
  }));
  const joints = sections.slice(1).map(({ id }, at) => ({
    id: `gap-${at + 1}`,
    from: sections[at]?.id ?? id,
    to: id,
    gap: 'possible' as const,
    cut: 'both' as const,
    awkward: 0,
  }));
  const districts = sections.map(({ id }, at) => ({ stage: grown.stages[at]?.id ?? 'station', sections: [id] }));
  return { ...grown, sections, joints, districts };
}
