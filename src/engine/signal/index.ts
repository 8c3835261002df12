// The track signal: bits, packets, their line on both sides of a gap, and what a decoder and a meter make of it.
export type { GapPicture, Heard, Joined, Packet, SideState, Wave, WaveReadings } from './signal.ts';
export {
  bitTimes,
  CUT_PACKET,
  gapPicture,
  IDLE_PACKET,
  meaningOf,
  packetBits,
  packetParts,
  RESET_PACKET,
  STOP_PACKET,
  speedPacket,
} from './signal.ts';
