// With what a person would come who has this virtual layout on the table: what they have met, and the complaint that it makes.

import { DRAWS } from '../../src/engine/power/draws.ts';
import type { PieceId, TableLayout } from '../../src/engine/table/layout.ts';
import { idleVolts } from '../../src/engine/table/moment.ts';
import type { ComplaintId } from '../../src/wizards/put-it-right/model/index.ts';
import type { TableFault } from './injection.ts';
import { inject } from './injection.ts';
import { coinTest } from './instruments.ts';
import { makeLayout } from './layouts.ts';
import type { VehicleKind } from './observation.ts';
import type { SceneOrder, Shutdown } from './scenes.ts';
import { atRest, crossed, drops, restState, shutdown, stoodAcross, stoodIn, thrown, volts } from './scenes.ts';

/** What a person meets on the virtual layout: the titles whose scenes it can play. */
export const MET = [
  'stops-at-gap',
  'trips-at-gap',
  'shuts-down-after-swap',
  'trips-with-traffic',
  'trips-at-power-on',
  'ignores-commands',
  'slow-far-away',
  'jerks-at-gap',
  'accessories-misbehave',
  'short-not-noticed',
  'loop-trips',
  'trips-at-one-spot',
  'still-runs-past-gap',
  'cuts-out-after-a-while',
] as const satisfies readonly ComplaintId[];
export type MetId = (typeof MET)[number];

/** What a check is asked about: the layout, and what the person has met there. */
export interface Situation {
  readonly layout: TableLayout;
  readonly complaint: MetId;
}

export const NEW_PIECES = ['new-gap', 'new-mid', 'new-far'] as const;

/** The first time a unit goes off, as the person of this complaint has met it; undefined where none does. */
export function shutdownOf({ layout, complaint }: Situation): Shutdown | undefined {
  return shutdown(layout, SCENES_OF[complaint]).found;
}

const SCENES_OF: Readonly<Record<MetId, SceneOrder>> = {
  'stops-at-gap': 'quiet',
  'trips-at-gap': 'gap-first',
  'shuts-down-after-swap': 'gap-first',
  'trips-with-traffic': 'traffic-first',
  'trips-at-power-on': 'gap-first',
  'ignores-commands': 'at-rest',
  'slow-far-away': 'busy',
  'jerks-at-gap': 'quiet',
  'accessories-misbehave': 'at-rest',
  'short-not-noticed': 'at-rest',
  'loop-trips': 'loop-first',
  'trips-at-one-spot': 'spot-first',
  'still-runs-past-gap': 'at-rest',
  'cuts-out-after-a-while': 'traffic-first',
};

export const isFed = (layout: TableLayout): boolean => {
  const states = [restState(layout, 0), restState(layout, 1)];
  return states.every((state) => state !== 'no-power' && state !== 'fault');
};

// --- how things are now, in the far part --------------------------------------------------------------------------------------

export type FarState = 'dark' | 'lit-but-deaf' | 'takes-off' | 'runs-poorly' | 'runs-well';

/** Dimmer than this share of what the rails should have is clearly slow. */
export const SLOW = 0.13;

export const inPiece = (layout: TableLayout, piece: PieceId): FarState => {
  const { lit, hears, offs, stutters, volts: shown } = stoodIn(layout, piece);
  const { locomotive } = layout.vehicles;
  if (!lit || offs.length > 0) return 'dark';
  if (hears === 'direct') return locomotive.dcRunning ? 'takes-off' : 'lit-but-deaf';
  if (hears === 'foreign' || !locomotive.obeys) return 'lit-but-deaf';
  if (hears === 'garbled') return layout.capacitor > 0 && layout.capacitor < 0.4e-6 ? 'runs-poorly' : 'lit-but-deaf';
  const slow = shown < (1 - SLOW) * idleVolts(layout, 0);
  return slow || stutters || isWeakVehicle(layout) ? 'runs-poorly' : 'runs-well';
};

export const isWeakVehicle = ({ vehicles }: TableLayout): boolean => {
  const { locomotive, long } = vehicles;
  return locomotive.pickUps.length <= 2 || locomotive.running > 2 * long.running;
};

const RANK: readonly FarState[] = ['dark', 'takes-off', 'lit-but-deaf', 'runs-poorly', 'runs-well'];

/** The worst of the places in the far part: the person looks where the trouble is. */
export const inFarPart = (layout: TableLayout): { readonly state: FarState; readonly piece: PieceId } => {
  let worst: { state: FarState; piece: PieceId } = { state: 'runs-well', piece: 'new-gap' };
  for (const piece of NEW_PIECES) {
    const state = inPiece(layout, piece);
    if (RANK.indexOf(state) < RANK.indexOf(worst.state)) worst = { state, piece };
  }
  return worst;
};

// Its front is farther beyond the gap than a locomotive gets that stops once its last wheel has left.
export const runsBeyond = (layout: TableLayout, kind: VehicleKind): boolean => {
  const { outcome, front } = crossed(layout, kind);
  return outcome === 'crosses' || front > 2 * layout.vehicles.locomotive.length;
};

/** Heat in whatever joins the rails without tripping anything, watts. */
export const leakWatts = (layout: TableLayout): number => {
  if (atRest(layout, 'lifted').offs.length > 0) return 0;
  const leaks = layout.bridges.filter(({ kind }) => kind === 'leak' || kind === 'damp' || kind === 'metal');
  return leaks.reduce((sum, { ohms, from }) => sum + volts(layout, from[0], 'lifted') ** 2 / ohms, 0);
};

// --- with what a person would come -------------------------------------------------------------------------------------------------

interface MetSign {
  readonly id: MetId;
  readonly shows: (layout: TableLayout) => boolean;
}

/** A supply or a unit was exchanged last. */
export const isSinceExchange = ({ lastChange }: TableLayout): boolean =>
  lastChange === 'supply' || lastChange === 'supply-or-unit';

const tripsWhenCrossing = (layout: TableLayout): boolean => {
  const scene = shutdown(layout, 'gap-first').found?.scene;
  return scene === 'gap' || scene === 'round' || scene === 'busy-gap' || scene === 'loop';
};

/** Units that are back so soon hardly look off, seconds. Source: from-memory. */
const BLINK = 0.5;

/** Whether the units are back in a blink, so that a train rolls over what trips them. */
export const isBlink = ({ stages }: TableLayout): boolean =>
  stages.every(({ comesBack, retrySeconds }) => comesBack === 'retry' && retrySeconds < BLINK);

const RUNS: readonly FarState[] = ['runs-well', 'runs-poorly'];

export const COMPLAINT_SIGNS: readonly MetSign[] = [
  {
    id: 'stops-at-gap',
    shows: (layout) =>
      layout.stopped ||
      (isFedOld(layout) && (inFarPart(layout).state === 'dark' || crossed(layout, layout.usual).outcome === 'stops')),
  },
  { id: 'trips-at-gap', shows: tripsWhenCrossing },
  {
    id: 'shuts-down-after-swap',
    shows: (layout) => isSinceExchange(layout) && (!isFed(layout) || shutdown(layout, 'gap-first').found !== undefined),
  },
  {
    id: 'trips-with-traffic',
    shows: (layout) => {
      const scene = shutdown(layout, 'traffic-first').found?.scene;
      return scene === 'traffic' || scene === 'turnout';
    },
  },
  {
    id: 'trips-at-power-on',
    shows: (layout) => {
      const scene = shutdown(layout, 'gap-first').found?.scene;
      return (
        scene === 'empty' ||
        scene === 'standing' ||
        restState(layout, 1) === 'fault' ||
        restState(layout, 0) === 'fault'
      );
    },
  },
  {
    id: 'ignores-commands',
    shows: (layout) => {
      const { state, piece } = inFarPart(layout);
      if (state === 'lit-but-deaf' || state === 'takes-off') return isFedOld(layout);
      return state === 'runs-poorly' && stoodIn(layout, piece).hears === 'garbled';
    },
  },
  {
    id: 'slow-far-away',
    shows: (layout) => {
      if (!RUNS.includes(inFarPart(layout).state)) return false;
      const { beyondGap, firstHalf, secondHalf } = drops(layout, 'run');
      return beyondGap + firstHalf + secondHalf > SLOW;
    },
  },
  {
    id: 'jerks-at-gap',
    shows: (layout) => {
      const { outcome, blinks, voltsBefore, voltsAfter } = crossed(layout, layout.usual);
      if (outcome === 'trips') return isBlink(layout) && tripsWhenCrossing(layout);
      if (outcome !== 'crosses') return false;
      return blinks > 0 || Math.abs(voltsAfter - voltsBefore) > 1 || stoodAcross(layout, 'locomotive').edgeAmps > 0.3;
    },
  },
  {
    id: 'short-not-noticed',
    shows: (layout) => {
      if (atRest(layout, 'lifted').offs.length > 0 || volts(layout, 'new-far', 'lifted') < 5) return false;
      const slow = ['new-gap', 'new-far'] as const;
      const tooMuch = layout.stages[1].trip > 1.05 * DRAWS[layout.scale].tripCeiling;
      return (
        tooMuch || leakWatts(layout) > 5 || slow.some((piece) => (coinTest(layout, piece).trips?.seconds ?? 9) > 0.5)
      );
    },
  },
  {
    id: 'trips-at-one-spot',
    shows: (layout) => ['turnout', 'thrown'].includes(shutdown(layout, 'spot-first').found?.scene ?? ''),
  },
  { id: 'loop-trips', shows: (layout) => layout.hasLoop && shutdown(layout, 'loop-first').found?.scene === 'loop' },
  {
    id: 'still-runs-past-gap',
    shows: (layout) => layout.believedUnfed && runsBeyond(layout, layout.usual),
  },
  { id: 'cuts-out-after-a-while', shows: (layout) => shutdown(layout, 'traffic-first').found?.scene === 'evening' },
];

const isFedOld = (layout: TableLayout): boolean => !layout.stopped && inPiece(layout, 'old-gap') !== 'dark';

const JOINED: readonly TableFault[] = ['forgotten-path', 'old-feeder-left', 'gap-closed', 'leftover-wiring'];

const MADE = new Map<string, TableLayout>();
const MOST_KEPT = 20;

/** Layouts that are alike are one, so that its scenes are run once for all complaints. */
function known(layout: TableLayout): TableLayout {
  const key = JSON.stringify(layout);
  const there = MADE.get(key);
  if (there !== undefined) return there;
  if (MADE.size >= MOST_KEPT) MADE.clear();
  MADE.set(key, layout);
  return layout;
}

/**
 * A layout with this fault in it, out of which a person would come with this complaint; undefined where the circuit does not show it
 * so. A joined path that trips at switching on has its polarity reversed as well: in phase it shows nothing there.
 */
export function caseOf(fault: TableFault, complaint: string, random: () => number): TableLayout | undefined {
  const reversedToo = complaint === 'trips-at-power-on' && JOINED.includes(fault);
  const wasExchanged = complaint === 'shuts-down-after-swap';
  const wrong = inject(makeLayout(random), fault, random, {
    unfed: complaint === 'still-runs-past-gap',
    reversedToo,
    atLoop: complaint === 'loop-trips',
  });
  const bySetting = complaint === 'trips-at-one-spot' && (fault === 'live-frog' || fault === 'moving-contact');
  const exchanged = wasExchanged && !isSinceExchange(wrong) ? ({ lastChange: 'supply-or-unit' } as const) : {};
  const layout = known({ ...(bySetting ? thrown(wrong) : wrong), ...exchanged });
  return COMPLAINT_SIGNS.find(({ id }) => id === complaint)?.shows(layout) === true ? layout : undefined;
}

/** The complaints with which a person would come with this layout, by what the circuit shows; empty where all is well. */
export function showsAs(layout: TableLayout): string[] {
  return COMPLAINT_SIGNS.filter(({ shows }) => shows(layout)).map(({ id }) => id);
}
