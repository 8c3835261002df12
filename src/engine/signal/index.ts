// The track signal: bits, packets, their line on both sides of a gap, and what a decoder and a meter make of it.
export type { GapPicture, Joined, SideState } from './gap.ts';
export { gapPicture } from './gap.ts';
export type { Heard } from './heard.ts';
export type { Packet } from './packets.ts';
export {
  CUT_PACKET,
  IDLE_PACKET,
  meaningOf,
  packetBits,
  packetParts,
  RESET_PACKET,
  STOP_PACKET,
  speedPacket,
} from './packets.ts';
export type { Wave, WaveReadings } from './waves.ts';
export { bitTimes } from './waves.ts';
