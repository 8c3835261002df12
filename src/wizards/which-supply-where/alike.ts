// Two supplies alike: which of the two that there are suits both units, which one stays where, and what is got beside it.
import type { LabelFinding, LoadedStage, NamedSupply, Plug, Scale } from '../../engine/index.ts';
import { checkLabels, dcVoltsFor, isCommonVolts, recommendedRating, supplyTrip } from '../../engine/index.ts';

export type UnitId = 'station' | 'booster';
export const UNITS = ['station', 'booster'] as const satisfies readonly UnitId[];

/** Why a supply does not suit both units: the first whose label it does not go with. What it would put on the rails has been looked at before. */
export interface Unfit {
  readonly unit: UnitId;
  readonly because: Extract<LabelFinding, { kind: 'not-permitted' }>['because'];
}

/** A supply to get. */
export interface Wanted {
  readonly unit: UnitId;
  readonly supply: NamedSupply;
  /** What is printed on it has to be more than this, amperes. */
  readonly above: number;
}

export interface Alike {
  /** For each supply that there is; undefined where it suits both units. */
  readonly unfit: readonly (Unfit | undefined)[];
  /** The one that stays, and whether it is still to be proven that a short trips its unit. */
  readonly kept: { readonly supply: number; readonly unit: UnitId; readonly proves: boolean } | undefined;
  /** One for the other unit, or one for each. */
  readonly buy: readonly Wanted[];
}

interface There {
  readonly supplies: readonly NamedSupply[];
  /** The command station, then the booster; their rails follow their supplies. */
  readonly stages: readonly LoadedStage[];
  readonly scale: Scale;
}

/** Undefined where a plug sign is not read, or where no supply that is commonly sold would do: then nothing is named that one might buy. */
export function alikeOf(there: There): Alike | undefined {
  const { supplies, stages } = there;
  if (!(supplies.every(hasPlug) && stages.every(({ input }) => input.kind === 'ac' || input.plug !== undefined)))
    return undefined;
  const unfit = supplies.map((supply) => unfitOf(supply, there));
  const ways = supplies.flatMap((supply, at) => (unfit[at] === undefined ? waysToKeep(supply, at, there) : []));
  const [best] = ways.sort(byEase);
  if (best !== undefined) return { unfit, ...best };
  const buy = twoNew(there);
  return buy === undefined ? undefined : { unfit, kept: undefined, buy };
}

const hasPlug = ({ kind, plug }: NamedSupply): boolean => kind === 'ac' || plug !== undefined;

function unfitOf(supply: NamedSupply, { stages }: There): Unfit | undefined {
  return UNITS.flatMap((unit, at): Unfit[] => {
    const stage = stages[at];
    if (stage === undefined) return [];
    const label = checkLabels(supply, stage.input);
    return label.kind === 'not-permitted' ? [{ unit, because: label.because }] : [];
  })[0];
}

interface Way {
  readonly kept: NonNullable<Alike['kept']>;
  readonly buy: readonly Wanted[];
}

/** What can commonly be bought first, then what needs no proof, then what is smaller. */
const byEase = (a: Way, b: Way): number =>
  Number(isSold(b)) - Number(isSold(a)) || Number(a.kept.proves) - Number(b.kept.proves) || ratingOf(a) - ratingOf(b);

const isSold = ({ buy }: Way): boolean =>
  buy.every(({ supply: { kind, volts } }) => kind === 'ac' || isCommonVolts(volts));

const ratingOf = ({ buy }: Way): number => buy.reduce((sum, { supply }) => sum + supply.amps, 0);

/** It stays on one unit, which it may trip, and the other gets one like it, which surely trips that. */
function waysToKeep(supply: NamedSupply, at: number, { stages, scale }: There): Way[] {
  return UNITS.flatMap((unit, index): Way[] => {
    const [stage, other] = [stages[index], stages[1 - index]];
    const otherUnit = UNITS[1 - index];
    if (stage === undefined || other === undefined || otherUnit === undefined) return [];
    const trip = supplyTrip(supply, stage).kind;
    const wanted = wantedFor(otherUnit, other, supply, scale);
    if (trip === 'surely-not' || wanted === undefined) return [];
    return [{ kept: { supply: at, unit, proves: trip === 'perhaps' }, buy: [wanted] }];
  });
}

/** Regulated d.c., since an a.c. one would have been left alone; undefined where a unit takes none. */
function twoNew({ stages, scale }: There): readonly Wanted[] | undefined {
  if (stages.some(({ input }) => input.kind === 'ac')) return undefined;
  const most = Math.min(...stages.map(({ input }) => input.volts ?? 0));
  const volts = dcVoltsFor(scale, most);
  if (volts === undefined) return undefined;
  const found = UNITS.flatMap((unit, at) => {
    const stage = stages[at];
    return stage === undefined ? [] : (wantedFor(unit, stage, { kind: 'dc', volts }, scale) ?? []);
  });
  return found.length < stages.length ? undefined : found;
}

type Kind = Pick<NamedSupply, 'kind' | 'volts'>;

function wantedFor(unit: UnitId, stage: LoadedStage, { kind, volts }: Kind, scale: Scale): Wanted | undefined {
  const plug: Plug | undefined = kind === 'ac' ? 'terminals' : stage.input.plug;
  const advice = recommendedRating({ kind, volts, plug, stage, input: stage.input, scale });
  if (advice.kind !== 'rating') return undefined;
  return { unit, supply: { kind, volts, amps: advice.amps, plug }, above: advice.finding.ratingAbove };
}
