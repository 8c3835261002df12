// How rail grows with warmth, which is what closes gaps.

/** Nickel silver grows by this share for each degree, the middle of 16 to 19 millionths. Source: nickel-silver-data. */
const RAIL_EXPANSION = 17e-6;

/** Metres by which a rail of so many metres grows when it gets so many degrees (kelvin) warmer; below 0 when it gets colder. */
export const railGrowth = (length: number, warmer: number): number => RAIL_EXPANSION * length * warmer;
