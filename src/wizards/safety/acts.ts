// What a person does at a step of a fix or in a check: one vocabulary for both. Which dangers an act brings: dangers.ts. What of it a
// complaint forbids: put-it-right/model/acts.ts.

/** Acts with the power on, or that the whole layout feels. The fault model lists them for each check, and withholds a check by them. */
export const POWER_ACTS = [
  // Power comes on, or stays on: switched on, reset, or a stop released.
  'switches-on',
  // A train is driven over the gap, or over the end of a loop, as a test.
  'sends-a-train-over-the-gap',
  'stands-across-the-gap',
  // What the person came with is made to happen again with nothing changed, or more than once.
  'brings-it-about-again',
  // A train is driven in the part with the trouble. Not so a locomotive that is put there by hand, with a hand ready.
  'runs-trains-in-the-new-part',
  // A vehicle is needed on the track, also where the trouble needs none.
  'puts-a-vehicle-on-the-track',
  // The new part's own unit is connected to it.
  'feeds-the-new-part',
  'adds-power',
] as const;
export type PowerAct = (typeof POWER_ACTS)[number];

/** Acts of the hand. Each step of a fix and each check names its own beside its words. */
export const HAND_ACTS = [
  // A supply, its mains plug or its lead is pulled, carried, looked at or set up.
  'handles-a-supply',
  // A supply is plugged into a unit.
  'plugs-a-supply',
  // A supply is compared with a unit, bought for it, or a unit is set that follows it.
  'chooses-a-supply',
  // Two supplies are at hand whose outputs could be joined.
  'has-two-supplies',
  // An analogue controller or transformer may still be joined to the track.
  'meets-an-old-controller',
  'meets-an-earth-pin',
  // Rails or wires are touched that are held to be off.
  'touches-what-is-off',
  // Hands or tools among rails or screws with the power on.
  'touches-what-is-live',
  'cuts-or-files-rail',
  'pulls-joiners',
  'solders',
  'strips-wire',
  'plugs-the-control-cable',
  // Rails are joined, or may be, by a wire, a wheel or a part that is turned round.
  'bridges-the-rails',
  'puts-a-coin-on-the-rails',
  'puts-a-resistor-on-the-rails',
  'uses-a-lamp-as-load',
  // With tips in the hand on live rails or screws.
  'measures-volts',
  // Clipped on with everything off, on ohms, or at a supply's own plug.
  'takes-a-meter',
  'measures-amperes',
  // A fault may be there that draws too little to switch anything off.
  'meets-a-weak-fault',
  // It runs for long, or is watched for heat.
  'lets-it-run',
  'sets-what-trips',
  'uses-cleaner-or-glue',
  'throws-a-coil',
  'takes-small-parts',
  'fits-a-reference-wire',
] as const;
export type HandAct = (typeof HAND_ACTS)[number];

export type Act = PowerAct | HandAct;
export const ACTS: readonly Act[] = [...POWER_ACTS, ...HAND_ACTS];
