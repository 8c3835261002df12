// How the shapes and the demonstrations are written down: stretches of track in metres of H0, and what joins them.
import type { Scale } from '../../engine/index.ts';
import type { Joint, Section, SectionTag, Sheet } from './sheet.ts';

/** How much longer or shorter than in H0 the same layout is. Source: common-practice. */
const TO_SCALE: Readonly<Record<Scale, number>> = {
  z: 87 / 220,
  n: 87 / 160,
  tt: 87 / 120,
  h0: 1,
  '0': 87 / 45,
  '1': 87 / 32,
};
/** Where trains stop or stand, consumers are met about twice as often as on a metre of plain line. Source: from-memory. */
const STANDING_WEIGHT = 2;
const WHERE_TRAINS_STAND: readonly SectionTag[] = ['station', 'stop', 'hidden', 'yard'];

/** A stretch of track: metres in H0, its place in the drawing, and what it is. */
export interface Stretch {
  readonly id: string;
  readonly metres: number;
  readonly column: number;
  readonly row: number;
  readonly tags: readonly SectionTag[];
  readonly fixedAmps?: number;
}

export const stretch = (
  id: string,
  metres: number,
  column: number,
  row: number,
  ...tags: readonly SectionTag[]
): Stretch => ({ id, metres, column, row, tags });

/** What joins two stretches, and how awkward a gap is there. */
export interface Meeting {
  readonly from: string;
  readonly to: string;
  readonly awkward: 0 | 1 | 2 | 3;
  readonly gap: Joint['gap'];
}

/** A gap is possible here: 0 on plain straight track that one reaches, 3 in a tunnel or on a sharp curve. */
export const meet = (from: string, to: string, awkward: Meeting['awkward'] = 0): Meeting => ({
  from,
  to,
  awkward,
  gap: 'possible',
});

/** No gap is possible: two turnouts with no rail between them. */
export const grown = (from: string, to: string): Meeting => ({ from, to, awkward: 3, gap: 'impossible' });

/** A gap must be here: the end of a reversing section. */
export const parted = (from: string, to: string): Meeting => ({ from, to, awkward: 0, gap: 'required' });

/** Numbers are written as somebody with a tape measure would. */
const rounded = (value: number): number => Number(value.toPrecision(2));

function sectionOf({ id, metres, column, row, tags, fixedAmps }: Stretch, scale: Scale): Section {
  const stands = tags.some((tag) => WHERE_TRAINS_STAND.includes(tag));
  return {
    id,
    metres: rounded(metres * TO_SCALE[scale]),
    traffic: rounded(metres * (stands ? STANDING_WEIGHT : 1)),
    ...(tags.length === 0 ? {} : { tags: [...tags] }),
    ...(fixedAmps === undefined ? {} : { fixedAmps }),
    at: { column, row },
  };
}

/** Two stretches may meet twice, as at a loop. */
function jointsOf(meetings: readonly Meeting[]): Joint[] {
  const met = new Map<string, number>();
  return meetings.map(({ from, to, awkward, gap }) => {
    const id = `${from}-to-${to}`;
    const times = (met.get(id) ?? 0) + 1;
    met.set(id, times);
    return { id: times === 1 ? id : `${id}-${times}`, from, to, gap, cut: 'none', awkward };
  });
}

/** The track of a sheet. */
export const laidOut = (
  scale: Scale,
  stretches: readonly Stretch[],
  meetings: readonly Meeting[],
): Pick<Sheet, 'scale' | 'sections' | 'joints'> => ({
  scale,
  sections: stretches.map((one) => sectionOf(one, scale)),
  joints: jointsOf(meetings),
});
