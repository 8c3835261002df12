// May this supply be plugged into this unit? Only what is printed decides.
import type { Supply } from './capacity.ts';

export type Plug = 'centre-plus' | 'centre-minus' | 'terminals';

/** What is printed on a supply; undefined: not known. */
export interface SupplyLabel {
  readonly kind: Supply['kind'] | undefined;
  readonly volts: number | undefined;
  readonly amps: number | undefined;
  readonly plug: Plug | undefined;
}

/** What is printed at a unit's power input. */
export interface InputLabel {
  readonly kind: 'dc' | 'ac' | 'either' | undefined;
  /** Highest permitted input, volts. */
  readonly volts: number | undefined;
  /** Lowest, volts; where left out none is printed. */
  readonly leastVolts?: number | undefined;
  readonly plug: Plug | undefined;
}

export type LabelFinding =
  | { readonly kind: 'permitted'; readonly plugSeen: boolean }
  | { readonly kind: 'unknown' }
  | {
      readonly kind: 'not-permitted';
      readonly because: 'wrong-kind' | 'too-many-volts' | 'too-few-volts' | 'plug-reversed';
    };

/** A known misfit counts before anything unknown. Plugs are compared where both are known; else it must still be looked at. */
export function checkLabels(supply: SupplyLabel, input: InputLabel): LabelFinding {
  const wrong = (because: (LabelFinding & { kind: 'not-permitted' })['because']): LabelFinding => ({
    kind: 'not-permitted',
    because,
  });
  if (supply.kind !== undefined && input.kind !== undefined && input.kind !== 'either' && input.kind !== supply.kind)
    return wrong('wrong-kind');
  if (supply.volts !== undefined && input.volts !== undefined && supply.volts > input.volts + 1e-9)
    return wrong('too-many-volts');
  if (supply.volts !== undefined && supply.volts < (input.leastVolts ?? 0) - 1e-9) return wrong('too-few-volts');
  if (supply.kind !== 'ac' && opposed(supply.plug, input.plug)) return wrong('plug-reversed');
  if (
    supply.kind === undefined ||
    supply.volts === undefined ||
    supply.amps === undefined ||
    input.kind === undefined ||
    input.volts === undefined
  )
    return { kind: 'unknown' };
  return { kind: 'permitted', plugSeen: supply.plug !== undefined && input.plug !== undefined };
}

function opposed(one: Plug | undefined, other: Plug | undefined): boolean {
  return (one === 'centre-plus' && other === 'centre-minus') || (one === 'centre-minus' && other === 'centre-plus');
}
