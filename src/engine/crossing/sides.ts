// The sides of a gap, and what one of them pushes into the other while a train spans it, as ranges.
//
// Every range is the range over the corners of what was put in; each result grows or falls with each of them alone, so no value
// between the corners lies outside.

import type { Span } from '../units.ts';
import type { Working, WorkingInput } from '../workings.ts';
import { working } from '../workings.ts';
import type { CrossingOhms } from './ohms.ts';
import { typicalOhms } from './ohms.ts';
import type { Push, PushInput } from './push.ts';
import { pushAt, secondsAbove } from './push.ts';
import type { Certainty, Ranged, Reckoned, SideId } from './range.ts';
import { certaintyOf, endsOf, rangeOf, spanAround, usualOf } from './range.ts';

/** Rails must stand this far above a bipolar stage's before it conducts back, volts; a switching stage does at once. Source: from-memory. */
export const BIPOLAR_BACK_DROP: Span = { from: 3, to: 5 };
/** Capacitor of a stage's d.c. link, farads, where nobody knows better. Source: from-memory. */
export const LINK_FARADS = 2.2e-3;
export type StageKind = 'switching' | 'bipolar';

/** One side of the gap. Currents in amperes >= 0. */
export interface CrossingSide {
  readonly role?: 'command-station' | 'booster';
  /** Volts that its stage holds on the rails; 0 for one without power; undefined where nobody has measured or set them. */
  readonly volts: Ranged | undefined;
  /** What its district draws. */
  readonly load: number;
  /** What the stage needs for itself. */
  readonly ownUse: number;
  /** Most that its stage can put on the track, > 0. */
  readonly limit: number;
  /** Capacitor of its link, farads; `LINK_FARADS` where left out. */
  readonly linkFarads?: Ranged;
  /** True where its supply takes current back. */
  readonly sinks?: boolean;
  /** How its output is built; `switching` where left out. */
  readonly stageKind?: StageKind;
  /** Drop of a diode-type block detector in its feed at the gap, volts; none where left out. */
  readonly detectorVolts?: Ranged;
  /** Whether the output can be set, or follows the supply; not known where left out. */
  readonly output?: 'settable' | 'follows';
  /** Whether its label permits the other side's supply or volts; not known where left out. */
  readonly mayStandHigher?: boolean;
  /** Overvoltage guard of stage or supply, volts; the 22 V stop line where left out. */
  readonly guardVolts?: number;
}

/** A side whose volts are known. */
export type KnownSide = CrossingSide & { readonly volts: Ranged };

/** What one side pushes into the other. */
export interface CrossingPush {
  /** The higher side. */
  readonly from: SideId;
  /** Volts at the gap, this side less the other, detectors counted. Its lower end may be below 0. */
  readonly step: Reckoned;
  readonly pulse: Reckoned;
  /** At most this much charge, coulombs, goes into the other link. */
  readonly charge: Reckoned;
  /** How fast the other link is lifted, seconds. */
  readonly timeConstant: Reckoned;
  readonly takeOver: Reckoned;
  /** Volts of the other stage's link, and how far it is lifted. */
  readonly link: Reckoned;
  readonly lift: Reckoned;
  /** What the higher stage then carries, and its limit. */
  readonly carries: Reckoned;
  readonly limit: number;
  /** Whether the other supply still gives something: then nothing is lifted. */
  readonly lowerGives: Certainty;
  /** Whether current runs back through the other stage. */
  readonly conductsBack: Certainty;
  /** Whether the crossing takes the higher stage over its limit for good, and at worst for how long, seconds (Infinity: for good). */
  readonly trips: Certainty;
  readonly secondsOverLimit: number;
  /** Whether the other stage, left with both districts, then trips too. */
  readonly cascade: Certainty;
}

/** Near less far side at the gap, volts. Detectors count: the rails stand lower by what they take. */
export function stepBetween(near: KnownSide, far: KnownSide): Span {
  const [a, b] = [rangeOf(near.volts), rangeOf(far.volts)];
  const [da, db] = [rangeOf(near.detectorVolts ?? 0), rangeOf(far.detectorVolts ?? 0)];
  return { from: a.from - da.to - (b.to - db.from), to: a.to - da.from - (b.from - db.to) };
}

interface Corner {
  readonly input: PushInput;
  readonly result: Push;
  /** Drop of the lower side's detector, by which its link stands above its rails, volts. */
  readonly lowDrop: number;
}

/** What the higher side pushes into the lower one. `from` names the higher side. */
export function pushFrom(from: SideId, higher: KnownSide, lower: KnownSide, ohms: number | CrossingOhms): CrossingPush {
  const corners = cornersOf(higher, lower, ohms);
  const usual = usualCorner(higher, lower, ohms);
  const row = (
    formula: string,
    unit: Working['unit'],
    value: (one: Corner) => number,
    named: readonly InputName[],
    sources: readonly string[] = ['own-derivation'],
  ): Reckoned => {
    const worst = corners.reduce((a, b) => (value(b) > value(a) ? b : a));
    const { inputs, ...rest } = working(formula, value(worst), unit, [], sources);
    return {
      span: spanAround(corners.map(value)),
      typical: value(usual),
      working: { ...rest, inputs: [...inputs, ...named.map((name) => INPUTS[name](worst, higher))] },
    };
  };
  const over = corners.map(({ result }) => overLimit(higher, result.takeOver));
  const cascades = over.map((trips) => trips && higher.load + lower.load > lower.limit + 1e-9);
  return {
    from,
    step: row('crossing-step', 'V', ({ result }) => result.step, ['higher-volts', 'lower-volts']),
    pulse: row('crossing-pulse', 'A', ({ result }) => result.pulse, ['step', 'ohms', 'back-drop']),
    charge: row('crossing-charge', 'C', ({ result }) => result.charge, ['step', 'link-farads', 'back-drop']),
    timeConstant: row('crossing-time-constant', 's', ({ input }) => input.ohms * input.linkFarads, [
      'ohms',
      'link-farads',
    ]),
    takeOver: row(
      lower.sinks === true ? 'crossing-sinking' : 'crossing-take-over',
      'A',
      ({ result }) => result.takeOver,
      ['step', 'ohms', 'lower-load', 'lower-own-use', 'back-drop'],
      ['own-derivation', 'parallel-sources'],
    ),
    link: row(
      'crossing-link',
      'V',
      ({ result, lowDrop }) => result.link + lowDrop,
      ['higher-volts', 'take-over', 'ohms', 'back-drop', 'lower-volts'],
      ['own-derivation', 'back-fed-supplies'],
    ),
    lift: row('crossing-lift', 'V', ({ result }) => result.lift, ['link', 'lower-volts']),
    carries: row('crossing-carries', 'A', ({ result }) => higher.load + result.takeOver, [
      'higher-load',
      'take-over',
      'limit',
    ]),
    limit: higher.limit,
    lowerGives: certaintyOf(corners.map(({ result }) => result.lowerGives > 1e-9)),
    conductsBack: certaintyOf(corners.map(({ result }) => result.peak > lower.load + 1e-9)),
    trips: certaintyOf(over),
    secondsOverLimit: Math.max(...corners.map(({ result }) => secondsOver(higher, result))),
    cascade: certaintyOf(cascades),
  };
}

// Only what the crossing itself adds counts: a stage that is overloaded without it needs other help.
const overLimit = (higher: KnownSide, takeOver: number): boolean =>
  takeOver > 0 && higher.load <= higher.limit && higher.load + takeOver > higher.limit + 1e-9;

const secondsOver = (higher: KnownSide, result: Push): number =>
  higher.load > higher.limit ? 0 : secondsAbove(result, higher.limit - higher.load + 1e-9);

// Rails of the lower side stand below its stage by its detector; back through it, current loses the same again.
function cornersOf(higher: KnownSide, lower: KnownSide, ohms: number | CrossingOhms): Corner[] {
  return endsOf(higher.volts).flatMap((high) =>
    endsOf(higher.detectorVolts ?? 0).flatMap((highDrop) =>
      endsOf(lower.volts).flatMap((low) =>
        endsOf(lower.detectorVolts ?? 0).flatMap((lowDrop) =>
          endsOf(ohms).flatMap((loop) =>
            endsOf(backDropOf(lower)).flatMap((drop) =>
              endsOf(lower.linkFarads ?? LINK_FARADS).map((farads) =>
                cornerOf(lower, [high - highDrop, low, lowDrop, loop, drop, farads]),
              ),
            ),
          ),
        ),
      ),
    ),
  );
}

const usualCorner = (higher: KnownSide, lower: KnownSide, ohms: number | CrossingOhms): Corner =>
  cornerOf(lower, [
    usualOf(higher.volts) - usualOf(higher.detectorVolts ?? 0),
    usualOf(lower.volts),
    usualOf(lower.detectorVolts ?? 0),
    typicalOhms(ohms),
    usualOf(backDropOf(lower)),
    usualOf(lower.linkFarads ?? LINK_FARADS),
  ]);

type Values = readonly [high: number, low: number, lowDrop: number, ohms: number, backDrop: number, farads: number];

function cornerOf(lower: KnownSide, [high, low, lowDrop, ohms, backDrop, linkFarads]: Values): Corner {
  const input: PushInput = {
    higherVolts: high,
    lowerVolts: low - lowDrop,
    ohms,
    load: lower.load,
    ownUse: lower.ownUse,
    linkFarads,
    backDrop: backDrop + 2 * lowDrop,
    sinks: lower.sinks ?? false,
  };
  return { input, result: pushAt(input), lowDrop };
}

const backDropOf = (side: CrossingSide): Ranged => (side.stageKind === 'bipolar' ? BIPOLAR_BACK_DROP : 0);

const input = (name: string, value: number, unit: WorkingInput['unit']): WorkingInput => ({ name, value, unit });

const INPUTS = {
  'higher-volts': (one: Corner) => input('higher-volts', one.input.higherVolts, 'V'),
  'lower-volts': (one: Corner) => input('lower-volts', one.input.lowerVolts, 'V'),
  step: (one: Corner) => input('step', one.result.step, 'V'),
  ohms: (one: Corner) => input('ohms', one.input.ohms, 'ohm'),
  'link-farads': (one: Corner) => input('link-farads', one.input.linkFarads, 'F'),
  'back-drop': (one: Corner) => input('back-drop', one.input.backDrop ?? 0, 'V'),
  'take-over': (one: Corner) => input('take-over', one.result.takeOver, 'A'),
  link: (one: Corner) => input('link', one.result.link + one.lowDrop, 'V'),
  'lower-load': (one: Corner) => input('lower-load', one.input.load, 'A'),
  'lower-own-use': (one: Corner) => input('lower-own-use', one.input.ownUse, 'A'),
  'higher-load': (_: Corner, higher: CrossingSide) => input('higher-load', higher.load, 'A'),
  limit: (_: Corner, higher: CrossingSide) => input('limit', higher.limit, 'A'),
} as const;
type InputName = keyof typeof INPUTS;
