// What several answers look at.
import type { BridgeKind, StageIndex, TableConsumer, TableLayout } from '../../../src/engine/table/layout.ts';
import type { CHECKS, CheckId } from '../../../src/wizards/put-it-right/model/checks/index.ts';
import type { Situation } from '../complaints.ts';
import { isFed, shutdownOf } from '../complaints.ts';
import type { GapSides } from '../instruments.ts';
import { MAIN_GAP } from '../instruments.ts';
import { again, atRest, restState, volts } from '../scenes.ts';

type Option<Id extends CheckId> = Extract<(typeof CHECKS)[number], { id: Id }>['options'][number];

/** What a person sees who looks: an option of the check, or undefined where they cannot tell. */
export type Look<Id extends CheckId> = (asked: Situation) => Option<Id> | undefined;

/** Looks for checks that the virtual layout answers by itself. */
export type Answered = { readonly [id in CheckId]?: Look<id> };

/** True where nothing goes off any more where something did before. */
export const isCured = (asked: Situation, layout: TableLayout): boolean => {
  const before = shutdownOf(asked);
  return before !== undefined && again(layout, before).length === 0 && isFed(layout);
};

/** The unit that the person looks at: the one that went off first, else that of the new part. */
export const troubled = (asked: Situation): StageIndex => {
  const off = shutdownOf(asked)?.offs[0];
  if (off !== undefined) return off.stage;
  const { layout } = asked;
  return restState(layout, 0) === 'no-power' || restState(layout, 0) === 'fault' ? 0 : 1;
};

/** True where a unit that tries again trips again and again as long as nothing is taken away. */
export const isLasting = (asked: Situation): boolean => {
  const before = shutdownOf(asked);
  if (before === undefined) return false;
  const [first, second] = asked.layout.stages;
  const retry = { comesBack: 'retry', retrySeconds: 2 } as const;
  const stages = [
    { ...first, ...retry },
    { ...second, ...retry },
  ] as const;
  return again({ ...asked.layout, stages }, before).filter(({ kind }) => kind === 'trip').length >= 3;
};

export const isHungry = ({ vehicles }: TableLayout): boolean => vehicles.locomotive.running > 2 * vehicles.long.running;

export const without = (
  layout: TableLayout,
  which: (consumer: TableConsumer, index: number) => boolean,
): TableLayout => ({
  ...layout,
  consumers: layout.consumers.filter((consumer, i) => !which(consumer, i)),
});

export const isQuietAtRest = (layout: TableLayout): boolean => atRest(layout, 'standing').offs.length === 0;

export const hasBridge = ({ bridges }: TableLayout, ...kinds: readonly BridgeKind[]): boolean =>
  bridges.some(({ kind }) => kinds.includes(kind));

const ROUND_GAP = { from: 'old-far', to: 'new-far' } as const;

/** The gap at which the person meets the trouble. */
export const gapOf = (asked: Situation): GapSides => {
  if (shutdownOf(asked)?.scene !== 'round') return MAIN_GAP;
  const join = asked.layout.joins.find(({ from, to }) => from === ROUND_GAP.to && to === ROUND_GAP.from);
  return { ...ROUND_GAP, crossed: join?.crossed ?? false };
};

export const bothLit = (layout: TableLayout, { from, to }: GapSides): boolean =>
  volts(layout, from) > 5 && volts(layout, to) > 5;

const NEXT_TO_GAP = ['old-gap', 'new-gap'] as const;

export const terminalOf = ({ feeders }: TableLayout, rail: 'a' | 'b', of: StageIndex = 1): 'p' | 'n' =>
  feeders.find(({ stage, piece, rail: to }) => stage === of && piece === NEXT_TO_GAP[of] && to === rail)?.terminal ??
  'p';
