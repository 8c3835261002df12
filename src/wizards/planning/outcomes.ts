// Every outcome a planning wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.

export const ENOUGH_CURRENT_OUTCOMES = [
  'power-is-enough',
  'calm-the-consumption',
  'fewer-moving',
  'put-on-in-two-groups',
  'larger-supply',
  'leds-and-larger-supply',
  'booster-with-freed-supply',
  'booster-with-own-supply',
  'more-districts',
  'breakers-and-sub-districts',
  'read-both-labels',
  'wrong-supply',
  'rail-voltage-too-high',
  'out-of-scope-three-rail',
  'out-of-scope-battery',
  'out-of-scope-analogue',
] as const;

export const WHICH_SUPPLY_OUTCOMES = [
  'supplies-either-way',
  'larger-to-command-station',
  'larger-to-booster',
  'higher-rails-to-command-station',
  'set-both-outputs-equal',
  'two-supplies-alike',
  'measure-rail-volts-first',
  'read-both-labels',
  'wrong-supply',
  'rail-voltage-too-high',
  'out-of-scope-three-rail',
  'out-of-scope-battery',
  'out-of-scope-analogue',
] as const;

export const WIRE_IT_OUTCOMES = [
  'wiring-not-known',
  'wiring-good',
  'more-feeders',
  'thicker-bus',
  'feed-bus-from-middle',
  'lower-trip-level',
  'booster-near-load',
  'out-of-scope-three-rail',
  'out-of-scope-battery',
  'out-of-scope-analogue',
] as const;

/** Advice about a train across the gap that is no outcome of `which-supply-where` and has a fix page all the same. */
export const BESIDE_THE_OUTCOME = ['fewer-trains-there', 'do-not-stop-across-the-gap'] as const;

/** The fix pages that a planning wizard can point at, by the wizard's id. */
export const WIZARD_FIXES = {
  'enough-current': ENOUGH_CURRENT_OUTCOMES,
  'which-supply-where': [...WHICH_SUPPLY_OUTCOMES, ...BESIDE_THE_OUTCOME],
  'wire-it': WIRE_IT_OUTCOMES,
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type WizardId = keyof typeof WIZARD_FIXES;
export const WIZARD_IDS: readonly WizardId[] = ['enough-current', 'which-supply-where', 'wire-it'];

/** The planning wizards that can point at a fix page, none for a fix of the troubleshooting wizard. */
export function wizardsFor(fix: string): WizardId[] {
  return WIZARD_IDS.filter((wizard) => new Set<string>(WIZARD_FIXES[wizard]).has(fix));
}

export type OutcomeId =
  | (typeof ENOUGH_CURRENT_OUTCOMES)[number]
  | (typeof WHICH_SUPPLY_OUTCOMES)[number]
  | (typeof WIRE_IT_OUTCOMES)[number];
