// What this room lets out.
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
