// The whole public surface of the engine.
export * from './assignment.ts';
export * from './capacity.ts';
export * from './demand.ts';
export * from './districts.ts';
export * from './draws.ts';
export * from './labels.ts';
export * from './layout.ts';
export * from './rail-voltage.ts';
export * from './random.ts';
export * from './remedies.ts';
export * from './rules.ts';
export * from './supplies.ts';
export * from './units.ts';
export * from './workings.ts';
