// What is done with wire while a plan is built.

/** Bare wire for a screw or spring clamp with a ferrule, and for a joint soldered to rail, metres; what a clamp says itself counts before it. Source: common-practice. */
export const STRIPPED = { clamp: 0.008, rail: 0.005 } as const;

/** From so many metres of bus on one side of its unit its two wires are kept together and it is fed from its middle. Source: common-practice. */
export const LONG_BUS = 10;

/** Whether a bus (metres from its unit to its far end) is long enough for its signal to ring. Source: common-practice. */
export const isLongBus = (metres: number): boolean => metres >= LONG_BUS;
