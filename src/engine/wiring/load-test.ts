// The harmless test with a resistor that comes before the coin: which resistor, what to read, and what the reading says.
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { FaultLoop } from './trips.ts';
import { SHORT_MARGIN } from './trips.ts';

/** Smallest step that a cheap meter shows on its 200 V range, volts. Source: from-memory. */
export const METER_STEP = 0.1;
/** A resistor is bought for this many times the heat it makes. Source: common-practice. */
export const RESISTOR_MARGIN = 1.5;

export type LoadTestResult =
  | {
      readonly kind: 'measured';
      /** What a dead short would draw there, amperes. */
      readonly amps: number;
      /** The same with the meter's step for and against; `to` is absent where the drop is smaller than the step. */
      readonly least: number;
      readonly most?: number;
      /** Resistance of everything before the resistor, ohms. */
      readonly ohms: number;
      /** Through the resistor, amperes. */
      readonly loadAmps: number;
      readonly working: Working;
    }
  | {
      readonly kind: 'no-solution';
      readonly because: 'no-drop' | 'no-volts' | 'not-a-number';
      readonly parts: string[];
    };

/**
 * The harmless test: V0 without and V1 with a resistor across the rails, read on the same meter. I_sc = I_L x V0/(V0 - V1) with
 * I_L = V1/R, where a meter that reads a constant share too high or low cancels but for I_L. Volts, ohms; `step` of the meter in volts. No
 * answer where the drop is less than half a step or nothing is left. Source: loop-test.
 */
export function shortFromLoadTest(
  { open, loaded, ohms }: { readonly open: number; readonly loaded: number; readonly ohms: number },
  step = METER_STEP,
): LoadTestResult {
  const wrong = Object.entries({ open, loaded, ohms }).filter(([, value]) => !(value >= 0 && Number.isFinite(value)));
  if (wrong.length > 0)
    return noTest(
      'not-a-number',
      wrong.map(([name]) => name),
    );
  if (ohms === 0) return noTest('not-a-number', ['ohms']);
  if (loaded === 0 || open === 0) return noTest('no-volts', [open === 0 ? 'open' : 'loaded']);
  const drop = open - loaded;
  if (drop <= step / 2) return noTest('no-drop', ['open', 'loaded']);
  const loadAmps = loaded / ohms;
  const amps = (loadAmps * open) / drop;
  const inputs = [
    ['open-volts', open, 'V'],
    ['loaded-volts', loaded, 'V'],
    ['load-ohms', ohms, 'ohm'],
  ] as const;
  return {
    kind: 'measured',
    amps,
    least: (loadAmps * open) / (drop + step),
    ...(drop > step ? { most: (loadAmps * open) / (drop - step) } : {}),
    ohms: drop / loadAmps,
    loadAmps,
    working: working('load-test', amps, 'A', inputs, ['loop-test']),
  };
}

function noTest(because: 'no-drop' | 'no-volts' | 'not-a-number', parts: string[]): LoadTestResult {
  return { kind: 'no-solution', because, parts };
}

/** Volts a meter should show across the resistor (ohms > 0) behind a loop of these ohms. Source: own-derivation. */
export function loadedVolts({ volts, ohms }: FaultLoop, resistor: number): number {
  return (volts * resistor) / (resistor + ohms);
}

/** Least volts across the resistor at which a dead short there would still draw `margin` times the trip current. All > 0. */
export function leastLoadedVolts(volts: number, trip: number, resistor: number, margin = SHORT_MARGIN): number {
  return loadedVolts({ volts, ohms: volts / (margin * trip) }, resistor);
}
