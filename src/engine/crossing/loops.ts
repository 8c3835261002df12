// What closes the loop: polarity, the common that the two stages share, how many rails are gapped, and how many a vehicle bridges.
//
// A stage puts its link's plus on one rail and its minus on the other, and changes over with every half of a bit. So in phase the two
// upper rails face each other, reversed the upper rail of one side faces the lower rail of the other. Each rail's way across the gap
// is half of the loop's resistance, bridged or never cut; a shared wire counts as having none.

import type { Span } from '../units.ts';
import type { Working } from '../workings.ts';
import { working } from '../workings.ts';
import type { CrossingOhms } from './ohms.ts';
import { ohmsProblem, typicalOhms } from './ohms.ts';
import type { CrossingProblem, Ranged } from './range.ts';
import { endsOf, problemIn, spanAround, usualOf } from './range.ts';

export type CrossingPhase = 'in-phase' | 'reversed';
/** Nothing shared; the inner minus of both links joined (earthed supplies and computer cables do it unseen); rail B in common. */
export type CommonReference = 'floating' | 'joined-negatives' | 'common-rail';
export type RailsBridged = 'none' | 'one' | 'both';

export interface LoopInput {
  readonly phase: CrossingPhase;
  readonly reference: CommonReference;
  /** Which rails are cut: with one rail gapped, rail A, the other joins the two sides at all times. */
  readonly gapped: 'one' | 'both';
  /** Gapped rails that a vehicle joins; of one gapped rail, `both` joins it as well. */
  readonly bridged: RailsBridged;
  readonly nearVolts: Ranged;
  readonly farVolts: Ranged;
  /** The whole loop over both rails, ohms > 0. */
  readonly ohms: number | CrossingOhms;
}

/** `open`: no loop, no current. `equalising`: the difference of the volts drives it. `short`: a short circuit. */
export type LoopKind = 'open' | 'equalising' | 'short';

export interface CrossingLoop {
  readonly kind: LoopKind;
  /** Largest volts that drive a current, and the largest current by Ohm's law alone, amperes. */
  readonly volts: Span;
  readonly amps: Span;
  readonly typicalAmps: number;
  /** Share of the time in which it flows. */
  readonly share: number;
  /** True where the current flows without any vehicle: through an uncut rail. */
  readonly withoutVehicle: boolean;
  /** True where it returns through a shared wire, such as the control cable. */
  readonly throughCommon: boolean;
  readonly working: Working;
}

interface Drive {
  readonly volts: number;
  /** Share of the loop's resistance in the way. */
  readonly ohmsShare: number;
  readonly share: number;
  readonly throughCommon: boolean;
}

/**
 * What flows, and through what, for one pair of stages. An equalising current is the one of stages that sink it: where they cannot, it
 * lasts for the pulse, and then `crossingInPhase` says what is left. Source: own-derivation (circuit laws).
 */
export function crossingLoop(input: LoopInput): CrossingLoop | CrossingProblem {
  const { nearVolts, farVolts, ohms } = input;
  const problem =
    problemIn([
      ['near.volts', nearVolts, 'not-negative'],
      ['far.volts', farVolts, 'not-negative'],
    ]) ?? ohmsProblem(ohms);
  if (problem !== undefined) return problem;
  const cases = endsOf(nearVolts).flatMap((near) =>
    endsOf(farVolts).flatMap((far) =>
      endsOf(ohms).map((r) => ({ near, far, ohms: r, drive: driveOf(input, near, far) })),
    ),
  );
  const ampsOf = (one: (typeof cases)[number]) => one.drive.volts / (one.ohms * one.drive.ohmsShare);
  const worst = cases.reduce((a, b) => (ampsOf(b) > ampsOf(a) ? b : a));
  const usual = driveOf(input, usualOf(nearVolts), usualOf(farVolts));
  const volts = spanAround(cases.map(({ drive }) => drive.volts));
  const amps = spanAround(cases.map(ampsOf));
  return {
    kind: kindOf(input, amps.to),
    volts,
    amps,
    typicalAmps: usual.volts / (typicalOhms(ohms) * usual.ohmsShare),
    share: worst.drive.share,
    withoutVehicle: amps.to > 0 && driveOf({ ...input, bridged: 'none' }, worst.near, worst.far).volts > 0,
    throughCommon: amps.to > 0 && worst.drive.throughCommon,
    working: working(
      'crossing-loop',
      amps.to,
      'A',
      [
        ['near-volts', worst.near, 'V'],
        ['far-volts', worst.far, 'V'],
        ['driving-volts', worst.drive.volts, 'V'],
        ['ohms', worst.ohms * worst.drive.ohmsShare, 'ohm'],
      ],
      ['own-derivation'],
    ),
  };
}

function kindOf({ phase }: LoopInput, amps: number): LoopKind {
  if (amps === 0) return 'open';
  return phase === 'reversed' ? 'short' : 'equalising';
}

const NOTHING: Drive = { volts: 0, ohmsShare: 1, share: 0, throughCommon: false };

function driveOf(input: LoopInput, near: number, far: number): Drive {
  const { phase, reference, bridged } = input;
  const joined = joinedRails(input);
  if (joined === 0) return NOTHING;
  if (reference === 'joined-negatives') return throughNegatives(phase, near, far, joined);
  const volts = phase === 'in-phase' ? Math.abs(near - far) : near + far;
  if (reference === 'floating') return joined === 2 ? { volts, ohmsShare: 1, share: 1, throughCommon: false } : NOTHING;
  // The shared rail closes one half of the loop; joining it again at the gap adds nothing.
  return bridged === 'none' ? NOTHING : { volts, ohmsShare: 0.5, share: 1, throughCommon: true };
}

// Rails that are joined across the gap, by a vehicle or because they were never cut.
function joinedRails({ gapped, bridged }: LoopInput): 0 | 1 | 2 {
  if (gapped === 'one') return bridged === 'none' ? 1 : 2;
  if (bridged === 'none') return 0;
  return bridged === 'one' ? 1 : 2;
}

// With the minus of both links joined, every joined rail is a loop of its own. In phase the difference drives it while that rail is the
// upper one, half of the time; reversed the whole rail voltage of one or the other side does, all the time.
function throughNegatives(phase: CrossingPhase, near: number, far: number, joined: 1 | 2): Drive {
  if (phase === 'reversed') return { volts: Math.max(near, far), ohmsShare: 0.5, share: 1, throughCommon: true };
  return { volts: Math.abs(near - far), ohmsShare: 0.5, share: joined / 2, throughCommon: true };
}
