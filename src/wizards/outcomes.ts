// Every outcome a planning wizard can end in. Each has a fix page of the same id in src/content/<language>/fixes.

export const ENOUGH_CURRENT_OUTCOMES = [
  'power-is-enough',
  'calm-the-consumption',
  'fewer-moving',
  'put-on-in-two-groups',
  'larger-supply',
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

export type OutcomeId = (typeof ENOUGH_CURRENT_OUTCOMES)[number] | (typeof WHICH_SUPPLY_OUTCOMES)[number];
