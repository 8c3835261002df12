import { describe, expect, test } from 'vitest';
import type { Joint } from '../../../src/wizards/sheet/index.ts';
import { districtLetter, dress } from '../../../src/wizards/sheet-drawing/index.ts';
import { joined, OVAL } from './tracks.ts';

const STAGES = [
  { id: 'station', kind: 'station' as const, feeds: ['front', 'back'] },
  { id: 'booster', kind: 'booster' as const },
];
const HALVES = [
  { stage: 'station', sections: ['front', 'left-curve'] },
  { stage: 'booster', sections: ['back', 'right-curve'] },
];
const stateWith = (more: Partial<Joint>, districts = HALVES) =>
  dress({ ...OVAL, joints: [joined('front', 'right-curve', more)], stages: STAGES }, districts).joints.get(
    'front-right-curve',
  )?.state;

describe('a division in the drawing', () => {
  test('districts are called by letters in their order, the first one A', () => {
    const { districts, districtOf } = dress({ ...OVAL, stages: STAGES }, HALVES);
    expect(districts.map(({ letter, stage }) => `${letter} ${stage}`)).toEqual(['A station', 'B booster']);
    expect(districtOf.get('back')).toBe(1);
    expect(districtLetter(11)).toBe('L');
  });

  test('a feeder is shown where its stage has one in its own district', () => {
    const { districts } = dress({ ...OVAL, stages: STAGES }, HALVES);
    expect(districts.map(({ fed }) => fed)).toEqual([['front'], []]);
  });

  test('where two districts meet both rails have to be cut, one cut rail is not enough', () => {
    expect(stateWith({ cut: 'none' })).toBe('to-cut');
    expect(stateWith({ cut: 'one' })).toBe('to-cut');
    expect(stateWith({ cut: 'unknown' })).toBe('to-cut');
    expect(stateWith({ cut: 'both' })).toBe('gap');
  });

  test('inside a district a joint is what the sheet says', () => {
    const whole = [{ stage: 'station', sections: OVAL.sections.map(({ id }) => id) }];
    expect(stateWith({ cut: 'none' }, whole)).toBe('joined');
    expect(stateWith({ cut: 'one' }, whole)).toBe('one-cut');
    expect(stateWith({ cut: 'unknown' }, whole)).toBe('not-known');
    expect(stateWith({ cut: 'both' }, whole)).toBe('gap');
    expect(stateWith({ gap: 'impossible' }, whole)).toBe('never');
    expect(stateWith({ gap: 'required' }, whole)).toBe('to-cut');
  });

  test('the two districts that meet at a joint are named; beside track that is in none, nothing has to be cut', () => {
    const { joints } = dress({ ...OVAL, stages: STAGES }, HALVES);
    expect([...joints.values()].filter(({ between }) => between !== undefined)).toHaveLength(2);
    expect(stateWith({}, HALVES.slice(0, 1))).toBe('joined');
  });
});
