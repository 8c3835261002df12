// Layout sheets that several tests speak of: an oval with two supplies, and a club with a loop, a hidden yard and unlike supplies.
import type { Joint, Section, Sheet, SheetStage, SheetSupply } from '../../src/wizards/sheet/index.ts';

export const section = (id: string, metres: number, traffic: number, more: Partial<Section> = {}): Section => ({
  id,
  name: id,
  metres,
  traffic,
  ...more,
});

export const joint = (from: string, to: string, more: Partial<Joint> = {}): Joint => ({
  id: `${from}-${to}`,
  from,
  to,
  gap: 'possible',
  cut: 'none',
  awkward: 0,
  ...more,
});

export const stage = (id: string, limitAmps: number, more: Partial<SheetStage> = {}): SheetStage => ({
  id,
  kind: id === 'station' ? 'station' : 'booster',
  limitAmps,
  rails: 'set',
  railVolts: 15,
  inputKind: 'dc',
  inputVolts: 19,
  plug: 'centre-plus',
  ...more,
});

export const supply = (id: string, amps: number, more: Partial<SheetSupply> = {}): SheetSupply => ({
  id,
  kind: 'dc',
  volts: 18,
  amps,
  plug: 'centre-plus',
  ...more,
});

/** Six modern trains on an oval, a 3 A supply and a 2 A supply, both units set alike; four stretches, the division chosen. */
export const OVAL: Sheet = {
  form: 'both-rails-layout-sheet',
  version: 1,
  name: 'Oval',
  scale: 'h0',
  trains: [{ kind: 'modern', count: 6 }],
  moving: 3,
  coaches: 0,
  accessories: 0,
  sections: [
    section('station-track', 2, 1, { tags: ['station', 'stop'] }),
    section('east-curve', 1.5, 1),
    section('far-side', 2, 1),
    section('west-curve', 1.5, 1),
  ],
  joints: [
    joint('station-track', 'east-curve'),
    joint('east-curve', 'far-side'),
    joint('far-side', 'west-curve'),
    joint('west-curve', 'station-track'),
  ],
  stages: [
    stage('station', 2.5, { supply: 'large', tripAmps: 2.5 }),
    stage('booster', 1.8, { supply: 'small', tripAmps: 1.8 }),
  ],
  supplies: [supply('large', 3, { earthed: false }), supply('small', 2, { earthed: false })],
  districts: [
    { stage: 'station', sections: ['station-track', 'east-curve'] },
    { stage: 'booster', sections: ['far-side', 'west-curve'] },
  ],
};

/** A main line in two districts, a yard in a third, a reversing loop behind the second, a programming track, breakers, points on a bus. */
export const CLUB: Sheet = {
  ...OVAL,
  name: 'Club',
  trains: [
    { kind: 'modern', count: 10, sound: true },
    { kind: 'older', count: 2 },
  ],
  moving: 5,
  accessories: 14,
  accessoryBus: 'own',
  sections: [
    section('main-1', 12, 4),
    section('main-2', 14, 4),
    section('throat', 2, 1, { tags: ['turnout'] }),
    section('yard-1', 3, 1, { tags: ['hidden', 'yard', 'stop'], fixedAmps: 0.2 }),
    section('yard-2', 3, 1, { tags: ['hidden', 'yard', 'stop'] }),
    section('loop', 4, 1, { tags: ['reversing'] }),
    section('bench', 0.6, 0, { tags: ['programming'] }),
  ],
  joints: [
    joint('main-1', 'main-2'),
    joint('main-2', 'main-1', { id: 'other-way', cut: 'one' }),
    joint('main-1', 'throat', { cut: 'unknown' }),
    joint('throat', 'yard-1', { gap: 'impossible' }),
    joint('throat', 'yard-2'),
    joint('main-2', 'loop', { gap: 'required' }),
    joint('loop', 'main-2', { id: 'loop-end', cut: 'both', gap: 'required' }),
    joint('yard-2', 'bench'),
  ],
  stages: [
    stage('station', 4, { supply: 'one', tripAmps: 4, breakers: 2, tripSeconds: 0.2 }),
    stage('north', 4, { supply: 'two', tripAmps: 4, common: 'joined' }),
    stage('yard', 3, { supply: 'three', tripAmps: 3 }),
  ],
  supplies: [supply('one', 5, { earthed: true }), supply('two', 5, { earthed: true }), supply('three', 4)],
  districts: [
    { stage: 'station', sections: ['main-1'] },
    { stage: 'north', sections: ['main-2', 'loop'] },
    { stage: 'yard', sections: ['throat', 'yard-1', 'yard-2', 'bench'] },
  ],
};
