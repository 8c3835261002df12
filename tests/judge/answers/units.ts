// What units and supplies show.
import { DRAWS } from '../../../src/engine/power/draws.ts';
import type { StageIndex, TableFeeder, TableLayout } from '../../../src/engine/table/layout.ts';
import { idleVolts } from '../../../src/engine/table/moment.ts';
import { lampOf } from '../../../src/engine/table/table.ts';
import type { UNIT_CHECKS } from '../../../src/wizards/put-it-right/faults/checks-units.ts';
import type { Situation } from '../complaints.ts';
import { COMPLAINT_SIGNS, isFed, leakWatts, shutdownOf } from '../complaints.ts';
import { eachAlone, pulled } from '../observation.ts';
import { again, atRest, evening, restState, unitState } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { isCured, isHungry, isLasting, terminalOf, troubled } from './shared.ts';

const boosterLamp: Look = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  const off = shutdownOf(asked)?.offs[0];
  if (off?.kind === 'restart' || off?.kind === 'supply-off' || off?.kind === 'supply-hot') return 'goes-out-and-on';
  if (off !== undefined) return 'fault';
  const lamp = lampOf(restState(layout, stage), layout.stages[stage].withoutSignal);
  return lamp === 'off' ? 'no-lamp' : lamp;
};

const commandDisplay: Look = (asked) => {
  const { layout } = asked;
  if (layout.stopped) return 'stop-or-programming';
  if (restState(layout, 0) === 'no-power') return 'dark-or-restarting';
  const offs = shutdownOf(asked)?.offs ?? [];
  if (offs.some(({ stage, kind }) => stage === 0 && kind !== 'trip' && kind !== 'hot')) return 'dark-or-restarting';
  return offs.some(({ stage }) => stage === 0 || layout.reportsShorts) ? 'short' : 'normal';
};

const supplyLamp: Look = (asked) => {
  const stage = troubled(asked);
  const { plugged, defect } = asked.layout.supplies[stage];
  if (!plugged || defect === 'dead') return 'dark';
  const offs = shutdownOf(asked)?.offs ?? [];
  return offs.some(({ kind }) => kind !== 'trip' && kind !== 'hot') ? 'pulses-or-goes-out' : 'steady';
};

const readLabels: Look = ({ layout }) => {
  const { supplies, stages } = layout;
  if (supplies.some(({ fits }) => !fits)) return 'wrong-kind';
  const labels = Math.abs(supplies[0].volts - supplies[1].volts) > 0.9;
  const settings = Math.abs(idleVolts(layout, 0) - idleVolts(layout, 1)) > 1.5;
  if (labels || (settings && supplies.every(({ defect }) => defect === undefined))) return 'volts-differ';
  if (stages.some(({ trip }) => trip > 1.05 * DRAWS[layout.scale].tripCeiling)) return 'unit-too-big';
  return stages.some(({ trip }, i) => (supplies[i]?.amps ?? trip) < trip) ? 'too-few-amps' : 'all-fit';
};

const whichCaseHot: Look = (asked) => {
  const { layout } = asked;
  const kinds = (evening(layout, 'all').offs ?? []).map(({ kind }) => kind);
  if (kinds.includes('hot')) return 'unit';
  if (kinds.includes('supply-hot') || kinds.includes('supply-off')) return 'supply';
  if (isHungry(layout)) return 'locomotive';
  if (leakWatts(layout) > 5) return 'wire-or-rail';
  return kinds.includes('trip') && shutdownOf(asked)?.scene === 'traffic' ? 'unit' : 'none';
};

const putSuppliesBack: Look = (asked) => {
  const { layout } = asked;
  if (layout.lastChange !== 'supply-or-unit' || (shutdownOf(asked) === undefined && isFed(layout))) return;
  return curedBy(asked, withGoodSupplies(layout));
};

// As they were before: alike, of the right kind, strong enough.
const withGoodSupplies = (layout: TableLayout): TableLayout => {
  const least = Math.min(layout.supplies[0].volts, layout.supplies[1].volts);
  const good = (stage: StageIndex) => {
    const { defect: _, ...supply } = layout.supplies[stage];
    const amps = Math.max(supply.amps, 1.3 * layout.stages[stage].trip + 0.3);
    return { ...supply, volts: least, fits: true, plugged: true, amps, continuous: amps };
  };
  return { ...layout, supplies: [good(0), good(1)] };
};

const curedBy = (asked: Situation, changed: TableLayout): string => {
  if (shutdownOf(asked) !== undefined) return isCured(asked, changed) ? 'cured' : 'no-change';
  return isFed(changed) && !shows(asked, changed) ? 'cured' : 'no-change';
};

/** Whether the person would still come with the same complaint after something was changed. */
const shows = ({ complaint }: Situation, changed: TableLayout): boolean =>
  COMPLAINT_SIGNS.find(({ id }) => id === complaint)?.shows(changed) ?? true;

const borrowSupply: Look = (asked) => {
  const stage = troubled(asked);
  const { layout } = asked;
  const { defect: _, ...supply } = layout.supplies[stage];
  const amps = Math.max(3 * supply.amps, 2 * layout.stages[stage].trip);
  const stronger = { ...supply, amps, continuous: amps, fits: true, plugged: true };
  const supplies = stage === 0 ? ([stronger, layout.supplies[1]] as const) : ([layout.supplies[0], stronger] as const);
  return curedBy(asked, { ...layout, supplies });
};

const feedFromOtherUnit: Look = (asked) => {
  const { layout } = asked;
  const suspect = troubled(asked);
  const stage = suspect === 0 ? 1 : 0;
  // The other unit is clipped on with its wires the right way round.
  const feeders = layout.feeders.map((feeder): TableFeeder => {
    if (feeder.stage === stage) return feeder;
    const rightWay = feeder.terminal === terminalOf(layout, feeder.rail, suspect);
    const rail = rightWay === (feeder.rail === 'a') ? 'a' : 'b';
    const terminal = terminalOf(layout, rail, stage);
    return { ...feeder, stage, terminal, state: feeder.state === 'programming' ? 'firm' : feeder.state };
  });
  const [first, second] = layout.trackPulled;
  const trackPulled = suspect === 0 ? ([true, second] as const) : ([first, true] as const);
  const other: TableLayout = { ...layout, feeders, loopStage: stage, trackPulled };
  const before = shutdownOf(asked);
  const still = before === undefined ? shows(asked, other) : again(other, before).length > 0;
  return still ? 'stays-with-part' : 'follows-unit';
};

const reportsFault = (layout: TableLayout, stage: StageIndex): boolean => {
  const state = restState(layout, stage);
  const { withoutSignal } = layout.stages[stage];
  return lampOf(state, withoutSignal) !== 'ready' || atRest(layout, 'standing').offs.some((off) => off.stage === stage);
};

const trackPlugPulled: Look = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  if (reportsFault(layout, stage)) return reportsFault(pulled(layout, stage), stage) ? 'still-a-fault' : 'clears';
  const scene = shutdownOf(asked)?.scene;
  const byLoad = scene === undefined || scene === 'traffic' || scene === 'evening' || scene === 'busy-gap';
  return byLoad || !isLasting(asked) ? 'no-fault-before' : 'clears';
};

const eachStageAlone: Look = ({ layout }) => {
  const { first, second, together } = eachAlone(layout);
  const alone = ([0, 1] as const).some((stage) => unitState(pulled(layout, stage), stage) !== 'ready');
  if (first.length > 0 || second.length > 0 || alone) return 'one-alone-faults';
  return together.length > 0 ? 'only-together' : 'all-fine';
};

const coolAir: Look = (asked) => {
  const off = shutdownOf(asked);
  if (off === undefined) return;
  const { layout } = asked;
  const cool = {
    ...layout,
    stages: [
      { ...layout.stages[0], continuous: 1.5 * layout.stages[0].continuous },
      { ...layout.stages[1], continuous: 1.5 * layout.stages[1].continuous },
    ] as const,
    supplies: [
      { ...layout.supplies[0], continuous: 1.5 * layout.supplies[0].continuous },
      { ...layout.supplies[1], continuous: 1.5 * layout.supplies[1].continuous },
    ] as const,
  };
  return again(cool, off).length === 0 ? 'much-longer' : 'no-change';
};

const unitSettings: Look = ({ layout }) => {
  const [first, second] = layout.stages;
  if (second.ownCommands) return 'sends-own';
  if (first.cutout !== second.cutout) return 'feedback-differs';
  if (Math.abs(first.late - second.late) > 1.5e-6) return 'kinds-differ';
  const set = first.setVolts !== undefined && second.setVolts !== undefined;
  return set && Math.abs(first.setVolts - second.setVolts) > 1 ? 'volts-differ' : 'alike';
};

/** What hangs together badly makes itself known when it is moved. */
const movePlugs: Look = ({ layout }) => {
  if (layout.supplies.some(({ mainsOhms }) => mainsOhms > 0)) return 'mains-lead';
  if (layout.link.state === 'faulty') return 'control-cable';
  const loose = layout.feeders.some(({ state }) => state === 'broken');
  return loose || layout.stages.some(({ wornSocket }) => wornSocket) ? 'track-plug' : 'nothing';
};

export const UNIT_ANSWERS = {
  'booster-lamp': boosterLamp,
  'command-display': commandDisplay,
  'supply-lamp': supplyLamp,
  'read-labels': readLabels,
  'which-case-hot': whichCaseHot,
  'put-supplies-back': putSuppliesBack,
  'borrow-supply': borrowSupply,
  'feed-from-other-unit': feedFromOtherUnit,
  'track-plug-pulled': trackPlugPulled,
  'each-stage-alone': eachStageAlone,
  'move-the-plugs': movePlugs,
  'lamp-on-the-strip': ({ layout }) =>
    layout.supplies.some(({ mainsOhms }) => mainsOhms > 0) ? 'dims-or-flickers' : 'steady',
  'cool-air': coolAir,
  'computer-and-earth': ({ layout }) => (layout.computerCable ? undefined : 'none-there'),
  'unit-settings': unitSettings,
} as const satisfies Answered<(typeof UNIT_CHECKS)[number]['id']>;
