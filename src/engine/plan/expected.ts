// What meters show of a plan that is built right.
import { railsRead } from '../crossing/index.ts';
import type { Stage, Supply } from '../power/index.ts';
import { trackCurrent } from '../power/index.ts';
import type { Span } from '../units.ts';
import { loadedVolts, METER_STEP, TEST_RESISTOR } from '../wiring/index.ts';

/** “Hardly” in the load test: of the volts before, less than this share is lost. Source: common-practice. */
export const HARDLY = 0.1;

/**
 * Share of the rail volts (> 0) that the load test may show lost behind so many ohms (>= 0) of stage, supply and wires where all is as it should be: what they
 * take with the resistor, and a step of the meter. Never more than “hardly”. Source: own-derivation.
 */
export function lostAsPlanned(volts: number, ohms: number): number {
  const left = loadedVolts({ volts, ohms }, TEST_RESISTOR.ohms);
  return Math.min(HARDLY, (volts - left + METER_STEP) / volts);
}

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
