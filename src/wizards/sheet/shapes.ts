// What a beginner starts from: six shapes of layouts that are often built. Lengths are believable, not anybody's; every one may be changed.
// Sections have no names here: the page gives them the words of its language.
import type { Scale } from '../../engine/index.ts';
import { grown, laidOut, type Meeting, meet, parted, type Stretch, stretch } from './laid.ts';
import { SHEET_FORM, type Sheet } from './sheet.ts';

interface Track {
  readonly stretches: readonly Stretch[];
  readonly meetings: readonly Meeting[];
}

const OVAL: Track = {
  stretches: [
    stretch('left-back', 0.7, 0, 0),
    stretch('back-left', 0.9, 1, 0),
    stretch('back-right', 0.9, 2, 0),
    stretch('right-back', 0.7, 3, 0),
    stretch('right-front', 0.7, 3, 1),
    stretch('front-right', 0.9, 2, 1, 'station'),
    stretch('front-left', 0.9, 1, 1),
    stretch('left-front', 0.7, 0, 1),
  ],
  meetings: [
    meet('left-back', 'back-left', 1),
    meet('back-left', 'back-right'),
    meet('back-right', 'right-back', 1),
    meet('right-back', 'right-front', 2),
    meet('right-front', 'front-right', 1),
    meet('front-right', 'front-left'),
    meet('front-left', 'left-front', 1),
    meet('left-front', 'left-back', 2),
  ],
};

const PASSING: Track = {
  stretches: [
    stretch('left-back', 0.7, 0, 0),
    stretch('back-left', 1.1, 1, 0),
    stretch('back-right', 1.1, 3, 0),
    stretch('right-back', 0.7, 4, 0),
    stretch('right-front', 0.7, 4, 1),
    stretch('right-turnout', 0.25, 3, 1, 'turnout'),
    stretch('main-track', 1.4, 2, 1, 'station'),
    stretch('passing-track', 1.4, 2, 2, 'station'),
    stretch('left-turnout', 0.25, 1, 1, 'turnout'),
    stretch('left-front', 0.7, 0, 1),
  ],
  meetings: [
    meet('left-back', 'back-left', 1),
    meet('back-left', 'back-right'),
    meet('back-right', 'right-back', 1),
    meet('right-back', 'right-front', 2),
    meet('right-front', 'right-turnout', 1),
    meet('right-turnout', 'main-track'),
    meet('right-turnout', 'passing-track', 1),
    meet('main-track', 'left-turnout'),
    meet('passing-track', 'left-turnout', 1),
    meet('left-turnout', 'left-front', 1),
    meet('left-front', 'left-back', 2),
  ],
};

const DOUBLE: Track = {
  stretches: [
    stretch('outer-left-back', 1, 0, 0),
    stretch('outer-back-left', 1.5, 2, 0),
    stretch('outer-back-right', 1.5, 5, 0),
    stretch('outer-right-back', 1, 7, 0),
    stretch('outer-right-front', 1, 7, 3),
    stretch('outer-platform', 1.8, 3, 3, 'station'),
    stretch('outer-left-front', 1, 0, 3),
    stretch('inner-left-back', 0.8, 1, 1),
    stretch('inner-back-left', 1.5, 2, 1),
    stretch('inner-back-right', 1.5, 5, 1),
    stretch('inner-right-back', 0.8, 6, 1),
    stretch('inner-right-front', 0.8, 6, 2),
    stretch('inner-platform', 1.8, 3, 2, 'station'),
    stretch('inner-left-front', 0.8, 1, 2),
    stretch('left-crossover', 0.5, 2, 2.5, 'turnout'),
    stretch('right-crossover', 0.5, 5, 2.5, 'turnout'),
    stretch('goods-turnout', 0.25, 4, 3, 'turnout'),
    stretch('goods-track', 1.2, 5, 4, 'yard'),
  ],
  meetings: [
    meet('outer-left-front', 'outer-left-back', 2),
    meet('outer-left-back', 'outer-back-left', 1),
    meet('outer-back-left', 'outer-back-right'),
    meet('outer-back-right', 'outer-right-back', 1),
    meet('outer-right-back', 'outer-right-front', 2),
    meet('outer-right-front', 'right-crossover', 1),
    grown('right-crossover', 'goods-turnout'),
    meet('goods-turnout', 'outer-platform', 1),
    meet('goods-turnout', 'goods-track'),
    meet('outer-platform', 'left-crossover', 1),
    meet('left-crossover', 'outer-left-front', 1),
    meet('inner-left-front', 'inner-left-back', 2),
    meet('inner-left-back', 'inner-back-left', 1),
    meet('inner-back-left', 'inner-back-right'),
    meet('inner-back-right', 'inner-right-back', 1),
    meet('inner-right-back', 'inner-right-front', 2),
    meet('inner-right-front', 'right-crossover', 1),
    meet('right-crossover', 'inner-platform', 1),
    meet('inner-platform', 'left-crossover', 1),
    meet('left-crossover', 'inner-left-front', 1),
  ],
};

const OUT_AND_BACK: Track = {
  stretches: [
    stretch('platform-1', 1.5, 0, 0, 'station'),
    stretch('platform-2', 1.5, 0, 1, 'station'),
    stretch('siding', 1, 0, 2, 'yard'),
    stretch('platform-turnout', 0.25, 1, 0, 'turnout'),
    stretch('siding-turnout', 0.25, 2, 1, 'turnout'),
    stretch('line-near', 2, 3, 1),
    stretch('line-middle', 2, 4, 1),
    stretch('line-far', 1.5, 5, 1, 'hidden'),
    stretch('loop-turnout', 0.25, 6, 1, 'turnout'),
    stretch('loop', 3.5, 7, 1, 'reversing'),
  ],
  meetings: [
    meet('platform-1', 'platform-turnout', 1),
    meet('platform-2', 'platform-turnout', 1),
    grown('platform-turnout', 'siding-turnout'),
    meet('siding', 'siding-turnout', 1),
    meet('siding-turnout', 'line-near'),
    meet('line-near', 'line-middle'),
    meet('line-middle', 'line-far', 3),
    meet('line-far', 'loop-turnout', 2),
    parted('loop-turnout', 'loop'),
    parted('loop-turnout', 'loop'),
  ],
};

const POINT_TO_POINT: Track = {
  stretches: [
    stretch('left-platform-1', 1.2, 0, 0, 'station'),
    stretch('left-platform-2', 1.2, 0, 1, 'station'),
    stretch('left-station-turnout', 0.25, 1, 0, 'turnout'),
    stretch('line-left', 2, 2, 0),
    stretch('halt-left-turnout', 0.25, 3, 0, 'turnout'),
    stretch('halt-main', 1.2, 4, 0, 'stop'),
    stretch('halt-loop', 1.2, 4, 1, 'stop'),
    stretch('halt-right-turnout', 0.25, 5, 0, 'turnout'),
    stretch('line-right', 2, 6, 0),
    stretch('yard-lead', 0.25, 7, 0, 'turnout'),
    stretch('right-platform', 1.4, 9, 0, 'station'),
    stretch('yard-turnout-1', 0.25, 8, 1, 'turnout'),
    stretch('yard-turnout-2', 0.25, 9, 2, 'turnout'),
    stretch('yard-track-1', 1.2, 10, 1, 'yard'),
    stretch('yard-track-2', 1, 11, 2, 'yard'),
    stretch('yard-track-3', 0.8, 11, 3, 'yard'),
  ],
  meetings: [
    meet('left-platform-1', 'left-station-turnout', 1),
    meet('left-platform-2', 'left-station-turnout', 1),
    meet('left-station-turnout', 'line-left'),
    meet('line-left', 'halt-left-turnout'),
    meet('halt-left-turnout', 'halt-main', 1),
    meet('halt-left-turnout', 'halt-loop', 1),
    meet('halt-main', 'halt-right-turnout', 1),
    meet('halt-loop', 'halt-right-turnout', 1),
    meet('halt-right-turnout', 'line-right'),
    meet('line-right', 'yard-lead'),
    meet('yard-lead', 'right-platform', 1),
    meet('yard-lead', 'yard-turnout-1', 2),
    meet('yard-turnout-1', 'yard-track-1', 1),
    grown('yard-turnout-1', 'yard-turnout-2'),
    meet('yard-turnout-2', 'yard-track-2', 1),
    meet('yard-turnout-2', 'yard-track-3', 1),
  ],
};

const MODULES: Track = {
  stretches: [
    stretch('left-loop', 4, 0, 0, 'reversing'),
    stretch('left-loop-turnout', 0.3, 1, 0, 'turnout'),
    stretch('left-module', 2.4, 2, 0),
    stretch('village-left-turnout', 0.3, 3, 0, 'turnout'),
    stretch('village-main', 2, 4, 0, 'station'),
    stretch('village-loop', 2, 4, 1, 'station'),
    stretch('village-right-turnout', 0.3, 5, 0, 'turnout'),
    stretch('bridge-module', 1.2, 6, 0, 'lift-out'),
    stretch('junction-turnout', 0.3, 7, 0, 'turnout'),
    stretch('middle-module', 2.4, 8, 0),
    stretch('town-left-turnout', 0.3, 9, 0, 'turnout'),
    stretch('town-platform-1', 2.5, 10, 0, 'station'),
    stretch('town-platform-2', 2.5, 10, 1, 'station'),
    stretch('town-right-turnout', 0.3, 11, 0, 'turnout'),
    stretch('right-module', 2.4, 12, 0),
    stretch('right-loop-turnout', 0.3, 13, 0, 'turnout'),
    stretch('right-loop', 4, 14, 0, 'reversing'),
    stretch('branch-curve', 1.2, 8, 2),
    stretch('branch-module', 2.4, 9, 2),
    stretch('branch-end', 1.2, 10, 2, 'stop'),
  ],
  meetings: [
    parted('left-loop', 'left-loop-turnout'),
    parted('left-loop', 'left-loop-turnout'),
    meet('left-loop-turnout', 'left-module'),
    meet('left-module', 'village-left-turnout'),
    meet('village-left-turnout', 'village-main', 1),
    meet('village-left-turnout', 'village-loop', 1),
    meet('village-main', 'village-right-turnout', 1),
    meet('village-loop', 'village-right-turnout', 1),
    meet('village-right-turnout', 'bridge-module'),
    meet('bridge-module', 'junction-turnout'),
    meet('junction-turnout', 'middle-module'),
    meet('junction-turnout', 'branch-curve', 1),
    meet('branch-curve', 'branch-module'),
    meet('branch-module', 'branch-end'),
    meet('middle-module', 'town-left-turnout'),
    meet('town-left-turnout', 'town-platform-1', 1),
    meet('town-left-turnout', 'town-platform-2', 1),
    meet('town-platform-1', 'town-right-turnout', 1),
    meet('town-platform-2', 'town-right-turnout', 1),
    meet('town-right-turnout', 'right-module'),
    meet('right-module', 'right-loop-turnout'),
    parted('right-loop-turnout', 'right-loop'),
    parted('right-loop-turnout', 'right-loop'),
  ],
};

const TRACKS = {
  oval: OVAL,
  'oval-passing': PASSING,
  'double-oval': DOUBLE,
  'out-and-back': OUT_AND_BACK,
  'point-to-point': POINT_TO_POINT,
  modules: MODULES,
} as const satisfies Readonly<Record<string, Track>>;

export type ShapeId = keyof typeof TRACKS;
const isShape = (id: string): id is ShapeId => Object.hasOwn(TRACKS, id);
export const SHAPE_IDS: readonly ShapeId[] = Object.keys(TRACKS).filter(isShape);

/** A layout of a shape with so many modern trains, one unit and one supply, whose labels nobody has read. */
export function shaped(shape: ShapeId, trains: number, scale: Scale = 'h0'): Sheet {
  const { stretches, meetings } = TRACKS[shape];
  return {
    form: 'both-rails-layout-sheet',
    version: SHEET_FORM,
    name: '',
    ...laidOut(scale, stretches, meetings),
    trains: [{ kind: 'modern', count: trains }],
    stages: [{ id: 'station', kind: 'station', supply: 'supply-1' }],
    supplies: [{ id: 'supply-1' }],
  };
}

type Shape = (trains: number, scale?: Scale) => Sheet;
const shape =
  (id: ShapeId): Shape =>
  (trains, scale) =>
    shaped(id, trains, scale);

/** Each shape as a sheet for a count of trains. */
export const SHAPES: Readonly<Record<ShapeId, Shape>> = {
  oval: shape('oval'),
  'oval-passing': shape('oval-passing'),
  'double-oval': shape('double-oval'),
  'out-and-back': shape('out-and-back'),
  'point-to-point': shape('point-to-point'),
  modules: shape('modules'),
};
