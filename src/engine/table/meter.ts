// What the person's own meter shows on the virtual layout, with its habits.
import type { PieceId, TableLayout, TableRail } from './layout.ts';
import type { Moment, World } from './moment.ts';
import { railNode, solveMoment } from './moment.ts';

export type Place = readonly [PieceId, TableRail];

/** The cheapest meters show nothing below this, volts. Source: from-memory. */
const DEAD_ZONE = 1;

/** What the meter shows between two rails, volts: on its a.c. and on its d.c. range. */
export interface Reading {
  readonly ac: number;
  readonly dc: number;
  /** Mains that strays into it through the supplies' filter capacitors, volts; part of `ac`. */
  readonly ghost: number;
}

/** Stray volts from which a reading says nothing of the rails: so many, and such a share of all that is shown. Source: from-memory. */
const STRAY = { volts: 2, share: 0.5 } as const;

/** Whether a reading is mostly mains that strays in, and so no sign that the rails are alive. */
export const mostlyStray = ({ ac, ghost }: Reading): boolean => ghost > STRAY.volts && ghost > STRAY.share * ac;

/** Reads the layout's own meter between two rails while the world stands as it does. Source: own-derivation. */
export function meterReads(layout: TableLayout, world: World, from: Place, to: Place): Reading {
  const { meter } = layout;
  const nodes = { from: railNode(...from), to: railNode(...to), ohms: meter.ohms };
  const clean = solveMoment(layout, world, { ...nodes, ghost: false });
  const strayed = solveMoment(layout, world, { ...nodes, ghost: true });
  const across = (moment: Moment, half: 'plus' | 'minus'): number =>
    (moment[half].state.volts[nodes.from] ?? 0) - (moment[half].state.volts[nodes.to] ?? 0);
  const changing = Math.abs(across(clean, 'plus') - across(clean, 'minus')) / 2;
  const standing = (across(clean, 'plus') + across(clean, 'minus')) / 2;
  const ghost = Math.abs(across(strayed, 'plus') - across(clean, 'plus'));
  const shown = Math.hypot(meter.factor * changing, ghost);
  const dead = meter.kind === 'cheapest' && shown < DEAD_ZONE;
  return { ac: dead ? 0 : shown, dc: Math.abs(standing), ghost };
}
