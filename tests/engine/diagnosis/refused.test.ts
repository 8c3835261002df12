// A model that is written wrongly is refused, with the row named and what is wrong in it: whoever adds a cause or a check sees it at once.
import { describe, expect, test } from 'vitest';
import type { SignCause, SignCheck, SignModel } from '../../../src/engine/diagnosis/sign-model.ts';
import { walkModel } from '../../../src/engine/diagnosis/sign-walk.ts';
import { PLAIN } from '../../reference/numbered.ts';

const EVEN = { full: 'sometimes', none: 'sometimes' } as const;
const CIRCUMSTANCES = ['loop', 'club', 'outdoors', 'old'].map((id) => ({ id, values: { yes: 1, no: 2 } }));
const CAUSE: SignCause = { id: 'wire', fixClass: 'solder', minutes: 5, shows: { volts: { none: 'always' } } };
const CHECK: SignCheck = {
  ...{ id: 'meter', minutes: 1, tool: 'multimeter', risk: 0, needs: [], source: 'instrument', reads: 'volts' },
  ...{ options: ['full', 'none'], reading: { full: 'full', none: 'none' } },
};
const MODEL: SignModel = {
  signs: [
    { id: 'volts', values: ['full', 'none'], sound: 'full', unaffected: EVEN },
    { id: 'lamp', values: ['lit', 'dark'], sound: 'lit', unaffected: { lit: 'always' }, group: 'seen' },
    { id: 'smell', values: ['none', 'burnt'], sound: 'none', unaffected: { none: 'always' }, group: 'seen' },
  ],
  circumstances: CIRCUMSTANCES,
  causes: [CAUSE],
  checks: [CHECK],
  openings: [{ id: 'dead', often: 1, says: { volts: ['none'] }, shares: { wire: 1 } }],
  core: [],
};
const made = (more: Partial<SignModel>) => () => walkModel({ ...MODEL, ...more }, PLAIN);
const [TITLE] = MODEL.openings;
const titled = (more: object): Partial<SignModel> => ({
  openings: MODEL.openings.map((one) => ({ ...one, ...more })),
});
const caused = (more: Partial<SignCause>): Partial<SignModel> => ({ causes: [{ ...CAUSE, ...more }] });
const checked = (more: Partial<SignCheck>): Partial<SignModel> => ({ checks: [{ ...CHECK, ...more }] });
/** By so many circumstances, one within the other. */
const by = (count: number) =>
  CIRCUMSTANCES.slice(0, count).reduce<SignCause['shows'][string]>(
    (inner, { id }) => ({ by: id, is: { yes: inner, no: inner } }),
    EVEN,
  );
const readBy = (count: number) =>
  CIRCUMSTANCES.slice(0, count).reduce<SignCheck['reading']>(
    (inner, { id }) => ({ by: id, is: { yes: inner, no: inner } }),
    CHECK.reading,
  );

test('What is written rightly is taken', () => {
  expect(TITLE?.id).toBe('dead');
  expect(made({})).not.toThrow();
});

describe('A title is refused', () => {
  test.each<[string, object, RegExp]>([
    ['with a share of a cause that there is not', { shares: { wire: 1, gremlin: 1 } }, /"dead".*"gremlin"/],
    ['with no share at all', { shares: {} }, /"dead"/],
    ['with shares that come to nothing', { shares: { wire: 0 } }, /"dead"/],
    ['that says a sign that there is not', { says: { noise: ['loud'] } }, /"dead".*"noise"/],
    ['that says a value which its sign does not have', { says: { volts: ['none', 'half'] } }, /"dead".*"half"/],
    ['that withholds a check that there is not', { withheld: ['meter', 'sniff'] }, /"dead".*"sniff"/],
    ['that needs something for such a one', { needs: { sniff: [] } }, /"dead".*"sniff"/],
    ['that begins with such a one', { lead: 'sniff' }, /"dead".*"sniff"/],
  ])('%s', (_, more, named) => {
    expect(made(titled(more))).toThrow(RangeError);
    expect(made(titled(more))).toThrow(named);
  });

  test('but not for a check that there is', () => {
    expect(made(titled({ withheld: ['meter'], needs: { meter: ['power-off'] }, lead: 'meter' }))).not.toThrow();
  });
});

describe('A cause is refused', () => {
  test.each<[string, Partial<SignModel>, RegExp]>([
    [
      'that stands behind no title',
      { causes: [CAUSE, { ...CAUSE, id: 'plug', fixClass: 'plug' }] },
      /"plug".*no opening/,
    ],
    ['that shows a sign that there is not', caused({ shows: { noise: EVEN } }), /"wire".*"noise"/],
    ['that needs a circumstance that there is not', caused({ needs: { moon: ['full'] } }), /"wire".*"moon"/],
    [
      'that needs a value which its circumstance does not have',
      caused({ needs: { loop: ['yes', 'two'] } }),
      /"wire".*"two"/,
    ],
    [
      'that shows something by what is neither sign nor circumstance',
      caused({ shows: { volts: { by: 'moon', is: { full: EVEN } } } }),
      /"wire".*"moon"/,
    ],
    [
      'that says nothing for a value of its circumstance',
      caused({ shows: { volts: { by: 'loop', is: { yes: EVEN } } } }),
      /"wire".*"volts".*"loop" no/,
    ],
    [
      'that shows something by a sign of another group',
      caused({ shows: { volts: { by: 'lamp', is: { lit: EVEN, dark: EVEN } } } }),
      /"wire".*"volts".*"lamp"/,
    ],
    [
      'that shows something by a sign that comes after it',
      caused({ shows: { lamp: { by: 'smell', is: { none: 'unaffected', burnt: 'unaffected' } } } }),
      /"wire".*"lamp".*"smell"/,
    ],
    ['that hangs on four circumstances', caused({ shows: { volts: by(4) } }), /"wire".*4 circumstances, at most 3/],
  ])('%s', (_, more, named) => {
    expect(made(more)).toThrow(RangeError);
    expect(made(more)).toThrow(named);
  });

  test('but not for three circumstances, nor for a sign by the one before it', () => {
    expect(made(caused({ shows: { volts: by(3) } }))).not.toThrow();
    expect(
      made(caused({ shows: { smell: { by: 'lamp', is: { lit: 'unaffected', dark: { burnt: 'always' } } } } })),
    ).not.toThrow();
  });
});

describe('A check is refused', () => {
  test.each<[string, Partial<SignCheck>, RegExp]>([
    ['that reads a sign that there is not', { reads: 'noise' }, /"meter".*"noise"/],
    ['that reads nothing', { reads: [] }, /"meter"/],
    ['that says what it has no option for', { reading: { full: 'full', none: 'zero' } }, /"meter".*"zero"/],
    ['that says nothing, in no words', { reading: { full: 'full', none: {} } }, /"meter".*no value has a word/],
    [
      'that is read by what is neither sign nor circumstance',
      { reading: { by: 'moon', is: { full: CHECK.reading } } },
      /"meter".*"moon"/,
    ],
    ['that is silent on a circumstance', { reading: { by: 'loop', is: { yes: CHECK.reading } } }, /"meter"/],
    ['that hangs on four circumstances', { reading: readBy(4) }, /"meter".*4 circumstances, at most 3/],
  ])('%s', (_, more, named) => {
    expect(made(checked(more))).toThrow(RangeError);
    expect(made(checked(more))).toThrow(named);
  });

  test('but not for three circumstances', () => {
    expect(made(checked({ reading: readBy(3) }))).not.toThrow();
  });
});
