// Any layout sheet that somebody may have told, for what must hold of all of them.
import fc from 'fast-check';
import { SECTION_TAGS, type Sheet } from '../../src/wizards/sheet/sheet.ts';

const some = fc.double({ min: 0.5, max: 2.5, noNaN: true });
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
const name = maybe(fc.string({ maxLength: 60 }));

/** Without the fields that nobody told: a text has none of them either. */
function told<Fields extends object>(fields: Fields): { [Key in keyof Fields]: Exclude<Fields[Key], undefined> };
function told(fields: object): object {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

const group = fc
  .record({
    name,
    kind: fc.constantFrom('modern', 'older', 'measured'),
    count: fc.integer({ min: 0, max: 100 }),
    sound: maybe(fc.boolean()),
    runningAmps: maybe(some.map((from) => ({ from, to: from + 0.1 }))),
    standingAmps: maybe(some),
  })
  .map(told);

const plugs = fc.constantFrom('centre-plus', 'centre-minus', 'terminals');

const supply = fc.record({
  name,
  kind: maybe(fc.constantFrom('dc', 'ac')),
  volts: maybe(fc.integer({ min: 3, max: 60 })),
  amps: maybe(some),
  plug: maybe(plugs),
  earthed: maybe(fc.boolean()),
});

const stage = fc.record({
  name,
  limitAmps: maybe(some),
  tripAmps: maybe(some),
  comesBack: maybe(fc.constantFrom('by-itself', 'by-hand')),
  rails: maybe(fc.constantFrom('follows', 'set', 'converter')),
  railVolts: maybe(fc.integer({ min: 5, max: 30 })),
  ownUseAmps: maybe(some),
  inputKind: maybe(fc.constantFrom('dc', 'ac', 'either')),
  inputVolts: maybe(fc.integer({ min: 3, max: 60 })),
  common: maybe(fc.constantFrom('isolated', 'joined')),
  cutout: maybe(fc.boolean()),
  breakers: maybe(fc.integer({ min: 0, max: 12 })),
});

const section = fc.record({
  name,
  metres: some,
  traffic: some,
  fixedAmps: maybe(some),
  tags: maybe(fc.uniqueArray(fc.constantFrom(...SECTION_TAGS), { maxLength: 3 })),
  at: maybe(fc.record({ column: fc.nat(200), row: fc.nat(100) })),
});

const joint = fc.record({
  from: fc.nat(),
  step: fc.nat(),
  gap: fc.constantFrom('possible', 'impossible', 'required'),
  cut: fc.constantFrom('none', 'one', 'both', 'unknown'),
  awkward: fc.nat(3),
});

export const anySheet: fc.Arbitrary<Sheet> = fc
  .record({
    name: fc.string({ maxLength: 60 }),
    scale: fc.constantFrom('z', 'n', 'tt', 'h0', '0', '1'),
    trains: fc.array(group, { maxLength: 6 }),
    moving: maybe(fc.nat(20)),
    eveningHours: maybe(some),
    coaches: maybe(fc.nat(40)),
    lamps: maybe(fc.constantFrom('filament', 'led')),
    accessories: maybe(fc.nat(40)),
    sections: fc.array(section, { maxLength: 12 }),
    joints: fc.array(joint, { maxLength: 14 }),
    stages: fc.array(stage, { maxLength: 4 }),
    supplies: fc.array(supply, { maxLength: 4 }),
    divided: fc.boolean(),
  })
  .map(({ divided, sections: bare, joints, stages: units, supplies: labels, ...rest }): Sheet => {
    const sections = bare.map((one, at) => ({ id: `section-${at}`, ...told(one) }));
    const supplies = labels.map((one, at) => ({ id: `supply-${at}`, ...told(one) }));
    const stages = units.map((one, at) => ({
      id: `stage-${at}`,
      kind: at === 0 ? ('station' as const) : ('booster' as const),
      ...told(one),
      ...(at < supplies.length ? { supply: `supply-${at}` } : {}),
      ...(at < sections.length ? { feeds: [`section-${at}`] } : {}),
    }));
    const met = sections.length < 2 ? [] : joints;
    const whole = stages.length > 0 && sections.length > 0 && divided;
    return {
      form: 'both-rails-layout-sheet',
      version: 1,
      ...told(rest),
      sections,
      joints: met.map(({ from, step, ...one }, at) => {
        const begins = from % sections.length;
        const ends = (begins + 1 + (step % (sections.length - 1))) % sections.length;
        return { id: `joint-${at}`, from: `section-${begins}`, to: `section-${ends}`, ...one };
      }),
      stages,
      supplies,
      ...(whole ? { districts: [{ stage: 'stage-0', sections: sections.map(({ id }) => id) }] } : {}),
    };
  });
