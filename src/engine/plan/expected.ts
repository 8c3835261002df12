// What meters show of a plan that is built right.
import { railsRead } from '../crossing/index.ts';
import type { Stage, Supply } from '../power/index.ts';
import { trackCurrent } from '../power/index.ts';
import type { Span } from '../units.ts';

/** Rail to rail on an a.c. range, volts: from what a true meter shows of the least to what an averaging one makes of the most. Source: own-derivation. */
export function metersShow({ from, to }: Span): Span {
  const high = railsRead('averaging', to);
  return { from, to: high.kind === 'shows' ? Math.max(to, high.volts) : to };
}

/** Amperes in the d.c. lead of a supply while so many are on the track (>= 0). Undefined for a.c., which a usual meter cannot read there. Source: own-derivation. */
export function leadAmps(supply: Supply, stage: Stage, track: number): number | undefined {
  if (supply.kind === 'ac') return undefined;
  const one = trackCurrent({ ...supply, amps: 1 }, { ...stage, ownUse: 0 });
  return one > 0 ? track / one + stage.ownUse : undefined;
}
