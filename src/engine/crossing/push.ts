// One moment of a crossing in phase: the higher stage pushes current through the train into the lower district. Exact, in single
// values; ranges are made of its corners elsewhere.
//
// The loop is one resistance between the higher stage and the rails of the lower district. Current that the lower district does not
// use runs back through the lower stage into its d.c. link, a capacitor whose supply is a diode: it gives and takes nothing back.

export interface PushInput {
  /** Volts that the higher stage holds at the gap. */
  readonly higherVolts: number;
  /** Volts that the lower stage holds there while nothing spans the gap. */
  readonly lowerVolts: number;
  /** Whole loop: both stages, wires, rails, four contact groups, ohms > 0. */
  readonly ohms: number;
  /** What the lower district draws from its rails, amperes >= 0. */
  readonly load: number;
  /** What the lower stage needs for itself from its link, amperes >= 0. */
  readonly ownUse: number;
  /** Capacitor of the lower stage's link, farads >= 0. */
  readonly linkFarads: number;
  /** Volts that its rails must stand above its link before current runs back through it: 0 for a switching stage. */
  readonly backDrop?: number;
  /** Inner resistance of the lower supply, ohms >= 0; 0 (a supply that holds its volts) where left out. */
  readonly supplyOhms?: number;
  /** True for the rare supply that takes current back. */
  readonly sinks?: boolean;
}

export interface Push {
  /** Higher less lower volts. */
  readonly step: number;
  /** Current at the first instant, the link not yet lifted, amperes. */
  readonly pulse: number;
  /** Largest current of the whole crossing, amperes. */
  readonly peak: number;
  /** Steady current after the pulse, amperes: what the higher stage takes over. */
  readonly takeOver: number;
  /** What the lower supply still gives, amperes; negative where it takes current back. */
  readonly lowerGives: number;
  /** Steady volts of the lower stage's link, and how far above its own they are lifted. */
  readonly link: number;
  readonly lift: number;
  /** The current goes from pulse to take-over with this time constant, seconds. */
  readonly timeConstant: number;
  /** Charge that a link without any draw would take up, coulombs. */
  readonly charge: number;
}

/**
 * What flows from the higher into the lower side. Every input finite, `ohms` > 0; a lower side that stands higher gives no current.
 * Source: own-derivation (Millman's theorem, a diode in the lower supply, a capacitor charged through a resistance).
 */
export function pushAt(input: PushInput): Push {
  const { higherVolts, lowerVolts, ohms, load, linkFarads } = input;
  const { backDrop = 0, supplyOhms = 0, sinks = false } = input;
  const step = higherVolts - lowerVolts;
  const drawn = load + input.ownUse;
  // Current as if the lower supply still gave: into the rails, and back through the stage.
  const intoRails = (step + supplyOhms * drawn) / (ohms + supplyOhms);
  const intoLink = (step - backDrop + supplyOhms * drawn) / (ohms + supplyOhms);
  const blocked = !sinks && intoLink >= drawn;
  const takeOver = Math.max(0, Math.min(intoRails, load), sinks ? intoLink : Math.min(intoLink, drawn));
  const pulse = Math.max(0, Math.min(step / ohms, load), (step - backDrop) / ohms);
  const lowerGives = drawn - takeOver;
  const link = blocked ? higherVolts - ohms * takeOver - backDrop : lowerVolts - supplyOhms * lowerGives;
  const chargedThrough = blocked ? ohms : (ohms * supplyOhms) / (ohms + supplyOhms);
  return {
    step,
    pulse,
    peak: Math.max(pulse, takeOver),
    takeOver,
    lowerGives,
    link,
    lift: link - lowerVolts,
    timeConstant: chargedThrough * linkFarads,
    charge: Math.max(0, step - backDrop) * linkFarads,
  };
}

/** How long the current stays above `amps` >= 0, seconds; Infinity where the steady current does. */
export function secondsAbove({ pulse, takeOver, timeConstant }: Push, amps: number): number {
  if (takeOver > amps) return Number.POSITIVE_INFINITY;
  if (pulse <= amps) return 0;
  return takeOver === amps ? Number.POSITIVE_INFINITY : timeConstant * Math.log((pulse - takeOver) / (amps - takeOver));
}
