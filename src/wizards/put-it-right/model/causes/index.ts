// All causes, and the names of them.
import { ACCESSORIES } from './accessories.ts';
import { BOUNDARY } from './boundary.ts';
import { BREAKERS } from './breakers.ts';
import { CONTROL } from './control.ts';
import { DECODERS } from './decoders.ts';
import { HOUSE } from './house.ts';
import { ISOLATION } from './isolation.ts';
import { LOAD } from './load.ts';
import { LOOPS } from './loops.ts';
import { MISLED } from './misled.ts';
import { NO_POWER_CAUSES } from './no-power.ts';
import { POLARITY } from './polarity.ts';
import { PROGRAMMING } from './programming.ts';
import { SENSING } from './sensing.ts';
import { SIGNAL } from './signal.ts';
import { TRACK_SHORTS } from './track-shorts.ts';
import { TURNOUTS } from './turnouts.ts';
import { UNITS } from './units.ts';
import { WHEELS } from './wheels.ts';
import { WIRES_AND_RAILS } from './wires-and-rails.ts';

export const CAUSES = [
  ...ACCESSORIES,
  ...BOUNDARY,
  ...BREAKERS,
  ...CONTROL,
  ...DECODERS,
  ...HOUSE,
  ...ISOLATION,
  ...LOAD,
  ...LOOPS,
  ...MISLED,
  ...NO_POWER_CAUSES,
  ...POLARITY,
  ...PROGRAMMING,
  ...SENSING,
  ...SIGNAL,
  ...TRACK_SHORTS,
  ...TURNOUTS,
  ...UNITS,
  ...WHEELS,
  ...WIRES_AND_RAILS,
] as const;

export type CauseId = (typeof CAUSES)[number]['id'];
export type FixClass = (typeof CAUSES)[number]['fixClass'];
