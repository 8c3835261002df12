// The drawings that fixes and lessons may name. Each draws itself twice, for wide and for narrow places.
import AccessoryBus from './AccessoryBus.astro';
import AllPaths from './AllPaths.astro';
import Breakers from './Breakers.astro';
import BusWithFeeders from './BusWithFeeders.astro';
import CoinTest from './CoinTest.astro';
import ControlCables from './ControlCables.astro';
import CutAndFill from './CutAndFill.astro';
import FeederSoldering from './FeederSoldering.astro';
import FeedersAtTheGap from './FeedersAtTheGap.astro';
import FeedPieces from './FeedPieces.astro';
import FourParts from './FourParts.astro';
import InsulatedJoiners from './InsulatedJoiners.astro';
import JumperTest from './JumperTest.astro';
import Labels from './Labels.astro';
import LabelsAndSheet from './LabelsAndSheet.astro';
import LampAndMeter from './LampAndMeter.astro';
import LargerSupply from './LargerSupply.astro';
import LoadTestParts from './LoadTestParts.astro';
import MeterAcross from './MeterAcross.astro';
import MeterInTheLead from './MeterInTheLead.astro';
import OneSwitch from './OneSwitch.astro';
import OrderOfWork from './OrderOfWork.astro';
import OutAndBack from './OutAndBack.astro';
import ProgrammingTrack from './ProgrammingTrack.astro';
import ReversingLoop from './ReversingLoop.astro';
import TrainAcross from './TrainAcross.astro';
import TurntableBridge from './TurntableBridge.astro';
import TwoDistricts from './TwoDistricts.astro';
import TwoLamps from './TwoLamps.astro';

export const DRAWINGS = {
  'control-cables': ControlCables,
  'cut-and-fill': CutAndFill,
  'feed-pieces': FeedPieces,
  'feeders-at-the-gap': FeedersAtTheGap,
  'four-parts': FourParts,
  'insulated-joiners': InsulatedJoiners,
  'jumper-test': JumperTest,
  'larger-supply': LargerSupply,
  'load-test-parts': LoadTestParts,
  'meter-across': MeterAcross,
  'reversing-loop': ReversingLoop,
  'turntable-bridge': TurntableBridge,
  'order-of-work': OrderOfWork,
  'two-districts': TwoDistricts,
  'two-lamps': TwoLamps,
  breakers: Breakers,
  'bus-with-feeders': BusWithFeeders,
  'coin-test': CoinTest,
  'feeder-soldering': FeederSoldering,
  labels: Labels,
  'out-and-back': OutAndBack,
  'meter-in-the-lead': MeterInTheLead,
  'all-paths': AllPaths,
  'accessory-bus': AccessoryBus,
  'labels-and-sheet': LabelsAndSheet,
  'lamp-and-meter': LampAndMeter,
  'one-switch': OneSwitch,
  'programming-track': ProgrammingTrack,
  'train-across': TrainAcross,
} as const;

export type DrawingId = keyof typeof DRAWINGS;

export const isDrawing = (id: string): id is DrawingId => Object.hasOwn(DRAWINGS, id);
