// A draw that is always on takes its part of the unit and of the supply before any train does.
import type { Stage, Supply } from '../power/index.ts';
import { trackCurrent } from '../power/index.ts';

/**
 * The stage as the trains find it beside a draw that is always on (amperes on the track, >= 0): so much less passes, and so much more is
 * used before them. What it can trip on is unchanged, for both sides of that comparison lose the same. Source: own-derivation.
 */
export function withFixedDraw(supply: Supply, stage: Stage, amps: number): Stage {
  if (!(amps > 0)) return stage;
  // Behind a step-down converter the supply gives less than the track takes.
  const one = trackCurrent({ ...supply, amps: 1 }, { ...stage, ownUse: 0 });
  const ofSupply = supply.kind === 'ac' || !(one > 0) ? amps : amps / one;
  return { ...stage, limit: Math.max(0, stage.limit - amps), ownUse: stage.ownUse + ofSupply };
}
