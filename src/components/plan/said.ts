// The plan in sentences: for the page, for paper, and for the tables that are saved.
import type { Span } from '../../engine/index.ts';
import { STRIPPED, toThousandths } from '../../engine/index.ts';
import type {
  Beyond,
  Part,
  Plan,
  PlanGap,
  PlanStep,
  Reading,
  TestRow,
  TrackProblem,
  Unread,
  Where,
} from '../../wizards/plan/index.ts';
import { beyondOf, sidesOf } from '../../wizards/plan/index.ts';
import { pairSaid } from '../diagram/index.ts';
import type { StepWords } from '../words/index.ts';
import { joined, listed } from '../words/index.ts';
import { expectedAs, isByLamp, isOverBridge } from './expected-as.ts';
import type { PartProps } from './props.ts';

type Told = Omit<PartProps, 'plan' | 'cautions'>;

export const gapSaid = ({ number, joint }: PlanGap, sheet: Plan['sheet'], { say, names }: Told): string =>
  say('plan-gap', { n: number, pair: pairSaid(joint, { sheet, say, nameOf: names.section }) });

/** What becomes of the programming track. */
export function programmingSaid({ sheet }: Plan, { say, names, language }: Told): string {
  const sections = sheet.sections
    .filter(({ tags }) => tags?.includes('programming'))
    .map(({ id }) => names.section(id));
  return sections.length === 0
    ? say('plan-no-programming')
    : say('plan-programming', { sections: listed(sections, language) });
}

export function gapWhy({ why, parts, districts: [near = '', far = ''] }: PlanGap, { say }: Told): string {
  if (why !== 'district') return say(`plan-gap-${why}`);
  if (parts !== undefined) return say('plan-gap-parts', { one: parts[0], other: parts[1] });
  const [one = '', other = ''] = [near, far].toSorted();
  return near === far ? say('plan-gap-inside', { near }) : say('plan-gap-district', { near: one, far: other });
}

export function gapWork({ why, railsToCut, joint: { cut } }: PlanGap, { say }: Told): string {
  if (why === 'turntable') return say('plan-gap-cut-bridge');
  return cut === 'unknown' ? say('plan-gap-cut-unknown') : say(`plan-gap-cut-${railsToCut}`);
}

export const unreadSaid = ({ of, id, parts }: Unread, { say, names, language }: Told): string =>
  say('plan-unread', {
    name: of === 'stage' ? names.stage(id) : names.supply(id),
    parts: listed(
      parts.map((part) => say(`plan-unread-${part}`)),
      language,
    ),
  });

export function problemSaid(problem: TrackProblem, { say, names, language }: Told): string {
  const sections = (ids: readonly string[]): string => listed(ids.map(names.section), language);
  switch (problem.kind) {
    case 'no-sections':
    case 'no-stages':
      return say(`plan-stop-${problem.kind}`);
    case 'too-many-districts':
      return say('plan-stop-too-many-districts', { most: problem.most });
    case 'stage-twice':
    case 'stage-missing':
      return say(`plan-stop-${problem.kind}`, { district: problem.district, stage: names.stage(problem.stage) });
    case 'not-divided':
    case 'unused':
      return say(problem.kind === 'unused' ? 'plan-unused' : 'plan-stop-not-divided', {
        units: joined(problem.stages.map(names.stage), language),
      });
    case 'left-out':
    case 'in-two':
    case 'not-there':
      return say(`plan-stop-${problem.kind}`, { sections: sections(problem.sections) });
    case 'in-pieces':
      return say('plan-in-pieces', { district: problem.district, sections: sections(problem.sections) });
    case 'cannot-gap': {
      const [from, to] = problem.sections;
      return say('plan-stop-cannot-gap', {
        from: names.section(from),
        to: names.section(to),
        why: say(`plan-stop-why-${problem.why}`),
      });
    }
  }
}

/** What stands on a supply, as one reads it. */
export function supplySaid(id: string, { sheet }: Plan, { say, numbers, names }: Told): string {
  const { kind, volts, amps } = sheet.supplies.find((one) => one.id === id) ?? {};
  if (kind === undefined || volts === undefined || amps === undefined) return names.supply(id);
  return say('plan-supply-label', {
    name: names.supply(id),
    volts: numbers.volts(volts),
    kind: say(`plan-${kind}`),
    amps: numbers.amps(amps),
  });
}

/** What helps, in one sentence with its figures. */
export function remedySaid(plan: Plan, told: Told): string {
  const { judged, but } = plan;
  if (judged.remedy !== 'nothing' || but === undefined) return adviceSaid(plan, told);
  const perhaps = judged.units.filter(({ trip }) => trip.kind === 'perhaps');
  const units = perhaps.map(({ stage }) => told.names.stage(stage.id));
  return told.say(`plan-but-${but}`, { units: joined(units, told.language) });
}

function adviceSaid({ judged: { remedy, advice, findings, units }, sheet }: Plan, told: Told): string {
  const { say, numbers, language } = told;
  const letter = (at: number): string => units[at]?.district ?? '';
  switch (advice?.kind) {
    case remedy: {
      if (advice.kind === 'share-out') {
        const shares = advice.ofTen.map((ofTen, at) => `${letter(at)} ${numbers.share(ofTen / 10)}`);
        return say('plan-remedy-share-out', { shares: listed(shares, language) });
      }
      if (advice.kind === 'larger-supply')
        return say('plan-remedy-larger-supply', {
          district: letter(advice.district),
          amps: numbers.amps(advice.amps, 'at-least'),
        });
      if (advice.kind === 'divide') return say('plan-remedy-divide', { district: letter(advice.district) });
      if (advice.kind === 'another') return say('plan-remedy-another', { n: advice.districts });
      if (advice.kind === 'fewer-moving')
        return advice.moving === undefined
          ? say('plan-remedy-fewer-moving-none')
          : say('plan-remedy-fewer-moving', { n: advice.moving });
      return say(`plan-remedy-${remedy}`);
    }
    default:
      return say(`plan-remedy-${remedy}`, {
        units: sheet.districts?.length ?? Math.max(1, findings.length),
        supplies: sheet.supplies.length,
      });
  }
}

/** Volts on the rails of a unit with nothing on them. */
export function railsSaid({ from, to }: Span, { say, numbers }: Told): string {
  const [low, high] = [numbers.volts(from), numbers.volts(to)];
  return say(low === high ? 'plan-rails-one' : 'plan-rails', { from: low, to: high });
}

/** A step as fixes have them, with the dangers of what the hand does in it. */
export function stepSaid(step: PlanStep, plan: Plan, told: Told): StepWords {
  const { say, home, pages, dangers } = told;
  const more = moreOf(step, plan, told).join(' ');
  return {
    do: say(`plan-step-${step.id}`),
    cautions: dangers[step.id] ?? [],
    ...(more === '' ? {} : { more }),
    ...(step.job === undefined ? {} : { job: { title: pages[step.job] ?? '', href: `${home}fixes/${step.job}/` } }),
  };
}

/** Breakers for which the sheet has no gap. */
export function unplacedLines({ subDistricts }: Plan, { say }: Told): string[] {
  return subDistricts
    .filter(({ unplaced }) => unplaced > 0)
    .map(({ district, unplaced: n }) => say('plan-more-unplaced', { district, n }));
}

type MoreOf = (plan: Plan, told: Told) => readonly string[];

/** What a step says of this layout. */
const MORE: Partial<Readonly<Record<PlanStep['id'], MoreOf>>> = {
  'list-paths': ({ track: { gaps } }, { say }) => [say('plan-more-paths', { n: gaps.length })],
  'cut-gaps': ({ track: { gaps } }, { say, language }) => {
    const toCut = gaps.filter(({ railsToCut, why }) => railsToCut > 0 && why !== 'programming');
    const list = joined(
      toCut.map(({ number }) => String(number)),
      language,
    );
    return [say('plan-more-gaps', { n: toCut.length, list })];
  },
  'program-apart': ({ sheet }, told) =>
    inList(
      sheet.sections.filter(({ tags }) => tags?.includes('programming')).map(({ id }) => told.names.section(id)),
      told,
    ),
  'twist-bus': ({ wires }, told) => [
    ...inList(
      wires.filter(({ long }) => long).map(({ district }) => told.say('plan-where-district', { district })),
      told,
    ),
    told.say('plan-more-filter'),
  ],
  'feed-gaps': ({ wires }, told) => [
    ...(wires.some(({ devices }) => devices.length > 0) ? [told.say('plan-more-feed-turning')] : []),
    stripSaid(told),
  ],
  breakers: unplacedLines,
  'accessory-bus': (_, { say }) => [say('plan-more-accessory')],
  'reversing-device': ({ sheet }, { say, names, language }) => [
    say('plan-more-loop', {
      list: listed(
        sheet.sections.filter(({ tags }) => tags?.includes('reversing')).map(({ id }) => names.section(id)),
        language,
      ),
    }),
  ],
  'common-wire': ({ sheet, track }, told) =>
    (['joined', 'isolated', undefined] as const).flatMap((common) => {
      const used = track.districts.map(({ stage }) => stage.id);
      const stages = sheet.stages.filter((stage) => stage.common === common && used.includes(stage.id));
      if (stages.length === 0) return [];
      const list = joined(
        stages.map(({ id }) => told.names.stage(id)),
        told.language,
      );
      return [told.say(`plan-more-common-${common ?? 'unknown'}`, { list })];
    }),
  'earth-pins': ({ sheet }, { say, names, language }) =>
    ([true, undefined] as const).flatMap((earthed) => {
      const supplies = sheet.supplies.filter((one) => one.earthed === earthed).map(({ id }) => names.supply(id));
      const list = joined(supplies, language);
      if (supplies.length === 0) return [];
      return [earthed === true ? say('plan-more-earthed', { list }) : say('plan-more-earth-unknown', { list })];
    }),
  'prove-dead': ({ track: { gaps } }, { say, language }) => {
    const at = (beyond: Beyond): readonly PlanGap[] => gaps.filter((gap) => beyondOf(gap) === beyond);
    const unfed = (['breaker', 'loop', 'bridge', 'programming'] as const).filter((beyond) => at(beyond).length > 0);
    const inside = at('inside').map(({ number }) => say('plan-gap-numbered', { n: number }));
    return [
      ...unfed.map((beyond) => say(`plan-more-dead-${beyond}`)),
      ...(inside.length === 0 ? [] : [say('plan-more-dead-inside', { list: joined(inside, language) })]),
    ];
  },
  'prove-loops': ({ sheet: { sections } }, told) => {
    const turning = (tag: 'reversing' | 'turntable'): string[] =>
      sections.filter(({ tags }) => tags?.includes(tag)).map(({ id }) => told.names.section(id));
    const bridges = turning('turntable');
    return [
      ...inList([...turning('reversing'), ...bridges], told),
      ...(bridges.length > 0 ? [told.say('plan-more-turned-half')] : []),
    ];
  },
  'main-switch': (_, { say }) => [say('plan-more-electrician')],
  'prove-volts': ({ tests }, { say, numbers }) =>
    tests
      .flatMap(({ readings }) => readings.filter(({ what }) => what === 'step'))
      .slice(0, 1)
      .map(({ to }) => say('plan-more-step', { volts: numbers.volts(to) })),
};

/** The part of the plan that says the rest, with its figures. */
const SEE: Partial<Readonly<Record<PlanStep['id'], 'gaps' | 'power' | 'wires'>>> = {
  'list-paths': 'gaps',
  'cut-gaps': 'gaps',
  'lay-bus': 'wires',
  'feed-gaps': 'wires',
  breakers: 'power',
  'fit-fuses': 'power',
  'place-supplies': 'power',
  'set-units': 'power',
};
export const partOfStep = (id: PlanStep['id'], { unread }: Pick<Plan, 'unread'>) =>
  id === 'read-labels' && unread.length > 0 ? 'verdict' : SEE[id];

const moreOf = (step: PlanStep, plan: Plan, told: Told): readonly string[] => MORE[step.id]?.(plan, told) ?? [];

const inList = (things: readonly string[], { say }: Told): string[] =>
  things.length === 0 ? [] : [say('plan-more-list', { list: things.join('; ') })];

const stripSaid = ({ say, numbers }: Told): string =>
  say('plan-strip', { clamp: numbers.thin(STRIPPED.clamp), rail: numbers.thin(STRIPPED.rail) });

export function wireLines(plan: Plan, told: Told): string[] {
  const { wires } = plan;
  const n = wires.reduce((sum, { newFeeders }) => sum + newFeeders, 0);
  return [
    ...wires.flatMap((one) => [wireLine(one, told), ...deviceLines(one, told)]),
    ...(wires.length > 1 ? [told.say('plan-wire-sum', { n })] : []),
    ...busLine(plan, told),
  ];
}

function wireLine(wire: Plan['wires'][number], { say, numbers, language }: Told): string {
  const { district, bus, reach, feeders, newFeeders: n, feeder, apart, assumed, long, railsFirst, volts } = wire;
  if (railsFirst) return say('plan-wire-rails-first', { district, volts: numbers.volts(volts) });
  if (bus === undefined) return say('plan-wire-none', { district });
  const there = feeders - n;
  const every = numbers.metres(apart ?? 0, 'at-most');
  const olds = n === 0 ? 'plan-wire-pairs-none' : 'plan-wire-pairs-there';
  const news = n === 0 ? 'plan-wire-pairs-no-bus' : 'plan-wire-pairs-new';
  const row = say('plan-wire-row', {
    district,
    size: numbers.wire(bus.area, 'at-least'),
    reach: numbers.metres(reach),
    feeder: numbers.wire(feeder.area, 'at-least'),
    pairs: say(there === 0 ? news : olds, { n, there, apart: every }),
  });
  const notes = [
    ...(there > 0 || n === 0 || apart === undefined ? [] : [say('plan-wire-apart', { apart: every })]),
    ...(long ? [say('plan-wire-long')] : []),
    ...(assumed ? [say('plan-wire-assumed')] : []),
  ];
  return [row, ...(notes.length === 0 ? [] : [`(${listed(notes, language)})`])].join(' ');
}

/** What hangs on reversing devices, and not on the bus. */
const deviceLines = ({ district, devices }: Plan['wires'][number], { say, names, language }: Told): string[] =>
  devices.map(({ kind, sections, feeders, newFeeders: n }) => {
    const at = {
      district,
      sections: joined(
        sections.map(({ id }) => names.section(id)),
        language,
      ),
    };
    if (kind === 'bridge') return say('plan-wire-bridge', at);
    const there = feeders - n;
    return say(there === 0 ? 'plan-wire-device' : 'plan-wire-device-there', { ...at, n, there });
  });

/** What of the bus that lies there is used again, and what is missing. */
function busLine({ busReuse, wires }: Plan, { say, numbers, language }: Told): string[] {
  if (busReuse === undefined) return [];
  const { area, wanted, there, missing } = busReuse;
  const letters = wires.filter(({ asItIs }) => asItIs).map(({ district }) => district);
  const figures = {
    ...{ list: joined(letters, language), n: letters.length },
    ...{ wanted: numbers.metres(wanted), size: numbers.wire(area, 'at-least') },
  };
  if (there === undefined) return [say('plan-bus-untold', figures)];
  const all = { ...figures, there: numbers.metres(there), missing: numbers.metres(missing) };
  return [say(missing > 0 ? 'plan-bus-missing' : 'plan-bus-enough', all)];
}

/** Where there are breakers, district by district; where there are none, what one there may trip at. */
export function breakerLines({ sheet, subDistricts }: Plan, told: Told): string[] {
  const { say, numbers, language } = told;
  const without = subDistricts.filter(({ breakers }) => breakers === 0);
  const known = without.flatMap(({ district, tripAtMost }) =>
    tripAtMost === undefined ? [] : [say('plan-one-short-at', { district, amps: numbers.amps(tripAtMost, 'at-most') })],
  );
  return [
    ...subDistricts
      .filter(({ breakers }) => breakers > 0)
      .flatMap((one) => [breakerSaid(one, told), ...choiceSaid(one, sheet, told), ...unplacedSaid(one, told)]),
    ...(known.length === 0
      ? []
      : [
          say('plan-one-short-none', {
            districts: joined(
              without.map(({ district }) => district),
              language,
            ),
            list: known.join('; '),
          }),
        ]),
    ...without
      .filter(({ tripAtMost }) => tripAtMost === undefined)
      .map(({ district }) => say('plan-one-short-unread', { district })),
  ];
}

type SubDistricts = Plan['subDistricts'][number];

function breakerSaid(
  { district, tripAtMost, seconds, parts }: SubDistricts,
  { say, numbers, names, language }: Told,
): string {
  if (tripAtMost === undefined) return say('plan-one-short-unread', { district });
  const row = say('plan-one-short-row', {
    district,
    amps: numbers.amps(tripAtMost, 'at-most'),
    from: numbers.plain(toThousandths(seconds.from), 0),
    to: numbers.plain(toThousandths(seconds.to), 0),
  });
  if (parts.length === 0) return row;
  const list = parts.map(({ letter, sections }) =>
    say('plan-one-short-part', {
      part: letter,
      sections: joined(
        sections.map(({ id }) => names.section(id)),
        language,
      ),
    }),
  );
  return say('plan-one-short-parts', { row, parts: list.join('; ') });
}

/** Where the sheet does not say what each breaker feeds. */
function choiceSaid(
  { district, breakers: n, couldCut, couldCutFewer }: SubDistricts,
  sheet: Plan['sheet'],
  told: Told,
): string[] {
  const { say, names, language } = told;
  if (couldCut === undefined) return [];
  if (couldCut.length === 0) return [say('plan-one-short-cannot', { district, n })];
  const listOf = (joints: NonNullable<SubDistricts['couldCut']>): string =>
    joined(
      joints.map((joint) => pairSaid(joint, { sheet, say, nameOf: names.section })),
      language,
    );
  const fewer = couldCutFewer === undefined ? [] : [say('plan-one-short-fewer', { joints: listOf(couldCutFewer) })];
  const even = say('plan-one-short-choose', { district, n, joints: listOf(couldCut) });
  return [[even, ...fewer, say('plan-one-short-alone')].join(' ')];
}

/** With gaps for some of them; where there is none at all, the choice says so. */
const unplacedSaid = ({ district, unplaced: n, parts }: SubDistricts, { say }: Told): string[] =>
  n > 0 && parts.length > 0 ? [say('plan-one-short-unplaced', { district, n })] : [];

export function whereSaid(where: Where, { say, names, plan: { track } }: Told & Pick<PartProps, 'plan'>): string {
  switch (where.kind) {
    case 'gap': {
      const gap = gapNumbered(where.gap, track);
      if (gap === undefined) return say('plan-gap-numbered', { n: where.gap });
      const { old, beyond, new: far } = sidesSaid(gap, track);
      const isNamed = beyond === 'unit' || beyond === 'breaker';
      return say(isNamed ? 'plan-where-gap' : `plan-where-gap-${beyond}`, { n: where.gap, old, new: far });
    }
    case 'district':
      return say('plan-where-district', { district: where.district });
    case 'section':
      return names.section(where.section);
    case 'all':
      return say('plan-where-all');
  }
}

/** The letters of both sides of a gap, and what lies beyond it. */
function sidesSaid(gap: PlanGap, track: Plan['track']) {
  const sides = sidesOf(gap, track);
  const [near = '', far = ''] = gap.parts ?? gap.districts;
  return { beyond: beyondOf(gap), old: sides?.old.letter ?? near, new: sides?.new.letter ?? far };
}

/** What a row is called: over a bridge a locomotive goes otherwise than through a loop, and a lamp is no jumper. */
export const testSaid = ({ kind, turning }: Pick<TestRow, 'kind' | 'turning'>, say: Told['say']): string =>
  say(
    `plan-test-${isOverBridge({ kind, turning }) || isByLamp({ kind, turning }) ? expectedAs(kind, turning, false) : kind}`,
  );

function readingsSaid(row: TestRow, { say, numbers, plan: { track } }: Told & Pick<PartProps, 'plan'>): string[] {
  const gap = row.where.kind === 'gap' ? gapNumbered(row.where.gap, track) : undefined;
  const sides = gap === undefined ? undefined : sidesOf(gap, track);
  const written = (unit: Reading['unit'], value: number): string => {
    if (unit === 'share') return numbers.share(value);
    return unit === 'V' ? numbers.volts(value) : numbers.amps(value);
  };
  const said = (what: string, { unit, from, to }: Reading): string =>
    say(`plan-reading-${what}`, {
      from: written(unit, from),
      to: written(unit, to),
      old: sides?.old.letter ?? '',
      new: sides?.new.letter ?? '',
    });
  const [one, other, ...others] = row.readings;
  const isAlike = one?.what === 'rails' && other !== undefined && said('both-rails', one) === said('both-rails', other);
  return isAlike
    ? [said('both-rails', one), ...others.map((reading) => said(reading.what, reading))]
    : row.readings.map((reading) => said(reading.what, reading));
}

const gapNumbered = (number: number, { gaps }: Plan['track']): PlanGap | undefined =>
  gaps.find((gap) => gap.number === number);

interface TestGroup {
  readonly kind: TestRow['kind'];
  readonly what: string;
  readonly expected: string;
  readonly places: readonly { readonly id: string; readonly where: string }[];
}

/** Tests of one kind stand together: what is to be seen once, and where; figures stand at the place where they differ from place to place. */
export function testGroups({ tests }: Plan, told: PartProps): TestGroup[] {
  const groups = new Map<string, TestRow[]>();
  for (const row of tests) {
    const key = expectedAs(row.kind, row.turning, row.breaker);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups].flatMap(([key, rows]): TestGroup[] => {
    const [first] = rows;
    if (first === undefined) return [];
    const figures = rows.map((row) => listed(readingsSaid(row, told), told.language));
    const [one = ''] = figures;
    const isOne = figures.every((figure) => figure === one);
    const expected = told.say(`plan-expect-${key}`);
    return [
      {
        kind: first.kind,
        what: testSaid(first, told.say),
        expected: isOne && one !== '' ? listed([expected, one], told.language) : expected,
        places: rows.map((row, at) => {
          const where = whereSaid(row.where, told);
          const figure = figures[at] ?? '';
          return { id: row.id, where: isOne ? where : told.say('plan-where-figures', { where, figures: figure }) };
        }),
      },
    ];
  });
}

/** What is to be seen, with this layout’s figures. */
export function expectedSaid(row: TestRow, told: Told & Pick<PartProps, 'plan'>): string {
  const { kind, turning, breaker } = row;
  return listed(
    [told.say(`plan-expect-${expectedAs(kind, turning, breaker)}`), ...readingsSaid(row, told)],
    told.language,
  );
}

export function partSize(
  { id, area, amps, volts, leastVolts, ohms, watts, current, plug }: Part,
  { say, numbers }: Told,
): string {
  const kind = current === undefined ? '' : say(`plan-${current}`);
  const poles = plug === undefined ? say('plan-plug-none') : say(`plan-plug-${plug}`);
  const [amperes, rail] = [numbers.amps(amps ?? 0), numbers.volts(volts ?? 0)];
  switch (id) {
    case 'unit':
    case 'booster':
      return leastVolts === undefined
        ? say('plan-size-input', { amps: amperes, volts: rail, kind, plug: poles })
        : say('plan-size-input-from', {
            amps: amperes,
            least: numbers.volts(leastVolts),
            volts: rail,
            kind,
            plug: poles,
          });
    case 'supply':
      return say('plan-size-supply', { amps: amperes, volts: rail, kind, plug: poles });
    case 'reverser':
      return amps === undefined ? '' : say('plan-size-breaker', { amps: numbers.amps(amps, 'at-most') });
    case 'breaker':
    case 'breaker-unplaced':
      return say('plan-size-breaker', { amps: numbers.amps(amps ?? 0, 'at-most') });
    case 'test-lamp':
      return say('plan-size-lamp');
    case 'test-resistor':
      return say('plan-size-resistor', { ohms: numbers.ohms(ohms ?? 0), watts: numbers.watts(watts ?? 0) });
    case 'fuse':
      return say('plan-size-amps', { amps: numbers.ampsExactly(amps ?? 0) });
    default:
      return area === undefined ? '' : numbers.wire(area, 'at-least');
  }
}

export const partCount = ({ count, measure }: Part, { say, numbers }: Told): string =>
  measure === 'pieces'
    ? numbers.plain(count, 0)
    : say('plan-metres-of-pair', { metres: numbers.metres(count, 'at-least') });

/** Both tables with their heads, as they are saved. */
export function partsTable(plan: Plan, told: Told): string[][] {
  const { say } = told;
  return [
    [say('plan-part-kind'), say('plan-part-size'), say('plan-part-count'), say('plan-part-for')],
    ...plan.parts.map((part) => [
      say(`plan-get-${part.id}`),
      partSize(part, told),
      partCount(part, told),
      part.of === undefined ? '' : say('plan-where-district', { district: part.of }),
    ]),
  ];
}

export function testTable(plan: Plan, given: Told): string[][] {
  const told = { ...given, plan };
  const { say } = told;
  return [
    [
      ...[say('plan-test-what'), say('plan-test-where'), say('plan-test-expected')],
      ...[say('plan-test-yours'), say('plan-test-unless')],
    ],
    ...plan.tests.map((row) => [
      testSaid(row, say),
      whereSaid(row.where, told),
      expectedSaid(row, told),
      '',
      say(`plan-unless-${row.kind}`),
    ]),
  ];
}
