// What the engine takes of a sheet: the trains, and each stage with its supply; with what nobody has read named.
import type { Fleet, Scale, Stage, Supply } from '../../engine/index.ts';
import {
  BOOSTER_OWN_USE,
  countedTrains,
  DRAWS,
  dcVoltsFor,
  measuredTrains,
  middle,
  trainCount,
} from '../../engine/index.ts';
import type { Sheet, SheetStage, SheetSupply, SheetTrains } from './sheet.ts';

/** What is taken for the most that an input bears where nobody has read it, volts. Source: nem-609. */
const MOST_INPUT = 24;

/**
 * All trains of a sheet: half of them move where nobody has told. Fixed draws of sections are not in it.
 */
export function fleetOf(sheet: Sheet): Fleet {
  const trains = sheet.trains.filter(({ count }) => count > 0).flatMap((group) => groupOf(group, sheet.scale));
  const count = trainCount({ trains });
  return {
    trains,
    moving: Math.min(count, sheet.moving ?? Math.ceil(count / 2)),
    coaches: sheet.coaches ?? 0,
    lamps: sheet.lamps ?? 'filament',
    accessories: sheet.accessoryBus === 'own' ? 0 : (sheet.accessories ?? 0),
    stored: Math.min(count, sheet.stored ?? 0),
  };
}

function groupOf({ kind, count, sound, runningAmps, standingAmps }: SheetTrains, scale: Scale): Fleet['trains'] {
  if (kind === 'measured') {
    const standing = standingAmps ?? middle(DRAWS[scale].standing);
    return [measuredTrains(count, runningAmps ?? DRAWS[scale].modern, standing)];
  }
  const [modern, older] = kind === 'modern' ? [count, 0] : [0, count];
  return countedTrains(scale, modern, older, sound === true ? count : 0);
}

/**
 * What of a stage or its supply nobody has read, and was taken as usual instead.
 */
export type Unread = 'limitAmps' | 'rails' | 'railVolts' | 'inputKind' | 'inputVolts' | 'supply' | SupplyLabel;
type SupplyLabel = 'supplyKind' | 'supplyVolts' | 'supplyAmps';

/**
 * A stage of the sheet as the engine takes it. What is in `unread` is never good, only possible.
 */
export interface StageRead {
  readonly id: string;
  readonly stage: Stage;
  readonly supply: Supply;
  readonly unread: readonly Unread[];
}

/**
 * The stages in order, the command station first.
 */
export const stagesOf = (sheet: Sheet): StageRead[] =>
  sheet.stages.map((stage) => {
    const supply = sheet.supplies.find(({ id }) => id === stage.supply);
    const limit = stage.limitAmps ?? middle(DRAWS[sheet.scale].trip);
    return {
      id: stage.id,
      stage: {
        limit,
        rails: railsOf(stage),
        ownUse: stage.ownUseAmps ?? (stage.kind === 'booster' ? BOOSTER_OWN_USE : 0),
      },
      supply: supplyOf(supply, limit, sheet.scale),
      unread: [...unreadOf(stage), ...(supply === undefined ? (['supply'] as const) : unreadSupply(supply))],
    };
  });

/** Rails whose volts nobody has read are taken to follow the supply, which errs to the safe side for current. */
function railsOf({ rails, railVolts }: SheetStage): Stage['rails'] {
  if (rails === undefined || rails === 'follows' || railVolts === undefined) return { kind: 'follows' };
  return { kind: rails, volts: railVolts };
}

/** A supply that nobody has read is taken as one that just fills the stage. */
const supplyOf = (supply: SheetSupply | undefined, limit: number, scale: Scale): Supply => ({
  kind: supply?.kind ?? 'dc',
  volts: supply?.volts ?? dcVoltsFor(scale, MOST_INPUT) ?? MOST_INPUT,
  amps: supply?.amps ?? limit,
});

function unreadOf(stage: SheetStage): Unread[] {
  const asked = ['limitAmps', 'rails', 'inputKind', 'inputVolts'] as const;
  const railVolts = stage.rails !== undefined && stage.rails !== 'follows' && stage.railVolts === undefined;
  return [...asked.filter((field) => stage[field] === undefined), ...(railVolts ? (['railVolts'] as const) : [])];
}

function unreadSupply({ kind, volts, amps }: SheetSupply): Unread[] {
  return [
    ...(kind === undefined ? (['supplyKind'] as const) : []),
    ...(volts === undefined ? (['supplyVolts'] as const) : []),
    ...(amps === undefined ? (['supplyAmps'] as const) : []),
  ];
}
