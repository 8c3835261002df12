// From answers to what the engine takes, with what was assumed on the way.
import type {
  Fleet,
  InputLabel,
  NamedSupply,
  Plug,
  RailSetting,
  Scale,
  Span,
  Stage,
  SupplyLabel,
} from '../../engine/index.ts';
import { countedTrains, DRAWS, measuredTrains, middle, OWN_USE, trainCount } from '../../engine/index.ts';
import type { Answers } from './answers.ts';
import { fieldOf, optionOf, spanOf } from './answers.ts';
import type { Answer } from './field.ts';

/** Something the person did not know, and what was taken instead. */
export interface Assumption {
  readonly field: string;
  readonly answer: Answer;
}

const SCALES: readonly Scale[] = ['z', 'n', 'tt', 'h0', '0', '1'];
const PLUGS: readonly Plug[] = ['centre-plus', 'centre-minus', 'terminals'];

/** Reads fields by id and keeps note of what had to be assumed. */
export class Reader {
  readonly answers: Answers;
  readonly assumptions: Assumption[] = [];

  constructor(answers: Answers) {
    this.answers = answers;
  }

  option(id: string): string | undefined {
    const field = fieldOf(id);
    const option = field === undefined ? undefined : optionOf(this.answers, field);
    if (option !== undefined && this.answers[id]?.kind === 'unknown') this.assume(id, { kind: 'choice', option });
    return option;
  }

  span(id: string): Span | undefined {
    const field = fieldOf(id);
    if (field === undefined || this.answers[id] === undefined) return undefined;
    const span = spanOf(this.answers, field);
    if (span !== undefined && this.answers[id]?.kind === 'unknown') this.assume(id, { kind: 'number', span });
    return span;
  }

  number(id: string): number | undefined {
    return this.span(id)?.from;
  }

  assume(field: string, answer: Answer): void {
    if (!this.assumptions.some((one) => one.field === field)) this.assumptions.push({ field, answer });
  }

  scale(): Scale {
    const option = this.option('scale');
    return SCALES.find((scale) => scale === option) ?? 'h0';
  }

  fleet(scale: Scale): Fleet {
    const measured = this.option('draw') === 'measured';
    const trains = measured ? this.measured(scale) : this.countedTrains(scale);
    const count = trainCount({ trains });
    return {
      trains,
      moving: Math.min(count, this.moving(count)),
      coaches: this.number('coaches') ?? 0,
      lamps: this.option('lamps') === 'led' ? 'led' : 'filament',
      accessories: this.number('accessories') ?? 0,
      stored: Math.min(count, this.number('stored') ?? 0),
    };
  }

  private countedTrains(scale: Scale) {
    const modern = this.number('modern') ?? 0;
    const older = this.number('older') ?? 0;
    return countedTrains(scale, modern, older, Math.min(modern + older, this.number('sound') ?? 0));
  }

  private measured(scale: Scale) {
    let running = this.span('running');
    if (running === undefined) {
      running = DRAWS[scale].modern;
      this.assume('running', { kind: 'number', span: running });
    }
    return [
      measuredTrains(this.number('trains') ?? 1, running, this.number('standing') ?? middle(DRAWS[scale].standing)),
    ];
  }

  private moving(count: number): number {
    const given = this.number('moving');
    if (given !== undefined) return given;
    const half = Math.ceil(count / 2);
    if (count > 0) this.assume('moving', { kind: 'number', span: { from: half, to: half } });
    return half;
  }

  /** How long the busiest spell lasts, hours: ten minutes where nobody has told. */
  evening(): number {
    return this.number('evening') ?? 1 / 6;
  }

  supplyLabel(prefix: string): SupplyLabel {
    const kind = this.option(`${prefix}-kind`);
    return {
      kind: kind === 'dc' || kind === 'ac' ? kind : undefined,
      volts: this.number(`${prefix}-volts`),
      amps: this.number(`${prefix}-amps`),
      plug: this.plug(prefix),
    };
  }

  inputLabel(prefix: string): InputLabel {
    const kind = this.option(`${prefix}-input`);
    const volts = this.span(`${prefix}-input-volts`);
    return {
      kind: kind === 'dc' || kind === 'ac' || kind === 'either' ? kind : undefined,
      volts: volts?.to,
      // One figure alone is the most.
      leastVolts: volts === undefined || volts.from === volts.to ? undefined : volts.from,
      plug: this.plug(prefix),
    };
  }

  private plug(prefix: string): Plug | undefined {
    const plug = this.option(`${prefix}-plug`);
    return PLUGS.find((one) => one === plug);
  }

  /** Rail setting; undefined while it, or the volts it is set to, is not known. */
  rails(prefix: string): RailSetting | undefined {
    const kind = this.option(`${prefix}-rails`);
    if (kind === 'follows') return { kind };
    const volts = this.number(`${prefix}-rail-volts`);
    return (kind === 'set' || kind === 'converter') && volts !== undefined ? { kind, volts } : undefined;
  }

  /** Limit of a stage; the scale's usual district trip current where it is not known. */
  stageLimit(prefix: string, scale: Scale): number {
    const given = this.number(`${prefix}-limit`);
    if (given !== undefined) return given;
    const usual = middle(DRAWS[scale].trip);
    this.assume(`${prefix}-limit`, { kind: 'number', span: { from: usual, to: usual } });
    return usual;
  }

  ownUse(): number {
    const kind = this.option('own-use');
    if (kind === 'measured') return this.number('idle') ?? OWN_USE.handhelds;
    return kind === 'handhelds' || kind === 'many' ? OWN_USE[kind] : OWN_USE.bare;
  }

  /** Where rail volts are not known the stage is taken not to convert, which errs to the safe side for current. */
  stage(prefix: string, scale: Scale, ownUse: number): Stage {
    return { limit: this.stageLimit(prefix, scale), rails: this.rails(prefix) ?? { kind: 'follows' }, ownUse };
  }
}

/** What is to be read before anything is bought: what the unit's input asks for at all, which pole of its plug is where, or a coach's lamps. */
export type ReadFirst = 'input' | 'plug' | 'lamps';

/** What of a unit's label. */
export function readFirst(answers: Answers, prefix: string): Exclude<ReadFirst, 'lamps'> | undefined {
  const isRead = (id: string): boolean => answers[id]?.kind === 'choice' || answers[id]?.kind === 'number';
  if (!(isRead(`${prefix}-input`) && isRead(`${prefix}-input-volts`))) return 'input';
  // Alternating current has no poles.
  return new Reader(answers).option(`${prefix}-input`) === 'ac' || isRead(`${prefix}-plug`) ? undefined : 'plug';
}

/** A supply whose label is complete enough to compute with, else undefined. */
export function knownSupply(label: SupplyLabel): NamedSupply | undefined {
  const { kind, volts, amps, plug } = label;
  return kind === undefined || volts === undefined || amps === undefined ? undefined : { kind, volts, amps, plug };
}
