// How a number came about: shown when a person opens it. Ids only; words for them live in the content.

export interface WorkingInput {
  readonly name: string;
  readonly value: number;
  readonly unit: Unit;
}

export type Unit =
  | 'A'
  | 'V'
  | 'VA'
  | 'W'
  | 'J'
  | 'C'
  | 'ohm'
  | 'ohm/m'
  | 'F'
  | 'H'
  | 'm'
  | 'mm2'
  | 'degrees'
  | 'share'
  | 'trains'
  | 'pieces'
  | 'hours'
  | 's'
  | 'times';

export interface Working {
  /** Id of the formula; its words are `formula-<id>`. */
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly value: number;
  readonly unit: Unit;
  /** Ids of the sources page. */
  readonly sources: readonly string[];
}

export function working(
  formula: string,
  value: number,
  unit: Unit,
  inputs: readonly (readonly [name: string, value: number, unit: Unit])[],
  sources: readonly string[],
): Working {
  return { formula, value, unit, sources, inputs: inputs.map(([name, v, u]) => ({ name, value: v, unit: u })) };
}
