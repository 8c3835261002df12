// What units and supplies show.
import type { StageIndex, TableFeeder, TableLayout } from '../../../src/engine/table/layout.ts';
import { lampOf } from '../../../src/engine/table/table.ts';
import type { Situation } from '../complaints.ts';
import { COMPLAINT_SIGNS, isFed, isSinceExchange, shutdownOf } from '../complaints.ts';
import { eachAlone, pulled } from '../observation.ts';
import { again, atRest, restState, unitState } from '../scenes.ts';
import type { Answered, Look } from './shared.ts';
import { isCured, isLasting, terminalOf, troubled } from './shared.ts';

export const commandDisplay: Look<'command-display'> = (asked) => {
  const { layout } = asked;
  if (layout.stopped) return 'stop-or-programming';
  if (restState(layout, 0) === 'no-power') return 'dark-or-restarting';
  const offs = shutdownOf(asked)?.offs ?? [];
  if (offs.some(({ stage, kind }) => stage === 0 && kind !== 'trip' && kind !== 'hot')) return 'dark-or-restarting';
  return offs.some(({ stage }) => stage === 0 || layout.reportsShorts) ? 'short' : 'normal';
};

export const putSuppliesBack: Look<'put-supplies-back'> = (asked) => {
  const { layout } = asked;
  if (!isSinceExchange(layout) || (shutdownOf(asked) === undefined && isFed(layout))) return;
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

const curedBy = (asked: Situation, changed: TableLayout): 'cured' | 'no-change' => {
  if (shutdownOf(asked) !== undefined) return isCured(asked, changed) ? 'cured' : 'no-change';
  return isFed(changed) && !shows(asked, changed) ? 'cured' : 'no-change';
};

/** Whether the person would still come with the same complaint after something was changed. */
const shows = ({ complaint }: Situation, changed: TableLayout): boolean =>
  COMPLAINT_SIGNS.find(({ id }) => id === complaint)?.shows(changed) ?? true;

export const borrowSupply: Look<'borrow-supply'> = (asked) => {
  const stage = troubled(asked);
  const { layout } = asked;
  const { defect: _, ...supply } = layout.supplies[stage];
  const amps = Math.max(3 * supply.amps, 2 * layout.stages[stage].trip);
  const stronger = { ...supply, amps, continuous: amps, fits: true, plugged: true };
  const supplies = stage === 0 ? ([stronger, layout.supplies[1]] as const) : ([layout.supplies[0], stronger] as const);
  return curedBy(asked, { ...layout, supplies });
};

const STAGES = [0, 1] as const;

/** With what was exchanged the trouble is gone, or another unit goes off first than before. */
function goesAlong(asked: Situation, changed: TableLayout): 'goes-along' | 'stays' {
  const before = shutdownOf(asked);
  if (before === undefined) {
    const faulty = (layout: TableLayout): StageIndex | undefined => STAGES.find((stage) => reportsFault(layout, stage));
    const isMovedFault = faulty(asked.layout) !== faulty(changed);
    return isMovedFault || !shows(asked, changed) ? 'goes-along' : 'stays';
  }
  const after = again(changed, before);
  // Of two units that both go off, which one is first is chance.
  const only = (offs: readonly { readonly stage: StageIndex }[]): StageIndex | undefined =>
    new Set(offs.map(({ stage }) => stage)).size === 1 ? offs[0]?.stage : undefined;
  const isAtTheGap = ['gap', 'busy-gap', 'round', 'loop', 'turnout'].includes(before.scene);
  const isMoved =
    !isAtTheGap && only(before.offs) !== undefined && only(after) !== undefined && only(after) !== only(before.offs);
  return after.length === 0 || isMoved ? 'goes-along' : 'stays';
}

/** The two supplies exchanged for each other. */
export const exchangeSupplies: Look<'exchange-supplies'> = (asked) => {
  const [first, second] = asked.layout.supplies;
  return goesAlong(asked, { ...asked.layout, supplies: [second, first] });
};

/** The two units exchanged for each other, each with its own supply. */
export const exchangeUnits: Look<'exchange-units'> = (asked) => {
  const { supplies, stages } = asked.layout;
  return goesAlong(asked, {
    ...asked.layout,
    supplies: [supplies[1], supplies[0]],
    stages: [stages[1], stages[0]],
  });
};

/** Another control cable, right in itself, in the right sockets where the old one was in the wrong one. */
export const exchangeCable: Look<'exchange-cable'> = (asked) => {
  const { state } = asked.layout.link;
  const link = { ...asked.layout.link, state: state === 'faulty' ? ('good' as const) : state, inverted: false };
  return curedBy(asked, { ...asked.layout, link });
};

/** With nothing but its supply, and then with the control cable too. */
export const unitBare: Look<'unit-bare'> = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  const state = unitState(pulled(pulled(layout, 0), 1), stage);
  return state === 'fault' ? 'alone' : 'well';
};

export const feedFromOtherUnit: Look<'feed-from-other-unit'> = (asked) => {
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

export const trackPlugPulled: Look<'track-plug-pulled'> = (asked) => {
  const { layout } = asked;
  const stage = troubled(asked);
  if (reportsFault(layout, stage)) return reportsFault(pulled(layout, stage), stage) ? 'still-a-fault' : 'clears';
  const scene = shutdownOf(asked)?.scene;
  const byLoad = scene === undefined || scene === 'traffic' || scene === 'evening' || scene === 'busy-gap';
  return byLoad || !isLasting(asked) ? 'no-fault-before' : 'clears';
};

export const eachStageAlone: Look<'each-stage-alone'> = ({ layout }) => {
  const { first, second, together } = eachAlone(layout);
  const alone = ([0, 1] as const).some((stage) => unitState(pulled(layout, stage), stage) !== 'ready');
  if (first.length > 0 || second.length > 0 || alone) return 'one-alone-faults';
  return together.length > 0 ? 'only-together' : 'all-fine';
};

export const coolAir: Look<'cool-air'> = (asked) => {
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

export const UNIT_ANSWERS = {
  'command-display': commandDisplay,
  'put-supplies-back': putSuppliesBack,
  'borrow-supply': borrowSupply,
  'exchange-supplies': exchangeSupplies,
  'exchange-units': exchangeUnits,
  'exchange-cable': exchangeCable,
  'unit-bare': unitBare,
  'feed-from-other-unit': feedFromOtherUnit,
  'track-plug-pulled': trackPlugPulled,
  'each-stage-alone': eachStageAlone,
  'cool-air': coolAir,
  'computer-and-earth': ({ layout }) => (layout.computerCable ? undefined : 'none-there'),
} as const satisfies Answered;
