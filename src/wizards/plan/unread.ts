// What nobody has read yet. Until it is, nothing is judged good, and no supply, unit or fuse is put on a list of parts.
import type { Sheet, SheetStage, SheetSupply } from '../sheet/index.ts';

/** What is printed on a supply, and on a unit at its input; how a unit makes its rail volts stands in its instructions. */
export type UnreadPart = 'kind' | 'volts' | 'amps' | 'plug' | 'limit' | 'input' | 'input-volts' | 'rails';

export interface Unread {
  readonly of: 'supply' | 'stage';
  readonly id: string;
  readonly parts: readonly UnreadPart[];
}

const missing = (parts: readonly (readonly [UnreadPart, boolean])[]): UnreadPart[] =>
  parts.flatMap(([part, isMissing]) => (isMissing ? [part] : []));

/** Alternating current has no poles. */
const unreadOfSupply = ({ kind, volts, amps, plug }: SheetSupply): UnreadPart[] =>
  missing([
    ['kind', kind === undefined],
    ['volts', volts === undefined],
    ['amps', amps === undefined],
    ['plug', kind !== 'ac' && plug === undefined],
  ]);

const unreadOfStage = ({ limitAmps, inputKind, inputVolts, plug, rails, railVolts }: SheetStage): UnreadPart[] =>
  missing([
    ['limit', limitAmps === undefined],
    ['input', inputKind === undefined],
    ['input-volts', inputVolts === undefined],
    ['plug', inputKind !== 'ac' && plug === undefined],
    ['rails', rails === undefined || (rails !== 'follows' && railVolts === undefined)],
  ]);

/** Units first, then supplies, each with what of it is not read; those that are read whole are left out. */
export function unreadIn({ stages, supplies }: Pick<Sheet, 'stages' | 'supplies'>): Unread[] {
  const all: Unread[] = [
    ...stages.map((stage): Unread => ({ of: 'stage', id: stage.id, parts: unreadOfStage(stage) })),
    ...supplies.map((supply): Unread => ({ of: 'supply', id: supply.id, parts: unreadOfSupply(supply) })),
  ];
  return all.filter(({ parts }) => parts.length > 0);
}
