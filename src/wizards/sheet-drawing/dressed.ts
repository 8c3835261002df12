// What a drawing shows of a division: which district each section belongs to, and what is at each joint.
import type { Joint, Sheet } from '../sheet/index.ts';

/** What has to be known of a sheet. */
export type Divided = Pick<Sheet, 'sections' | 'joints' | 'stages'>;

/** Which sections belong together, and to which stage. */
export type Districts = NonNullable<Sheet['districts']>;

/**
 * What is at a joint. `gap`: both rails are cut. `to-cut`: both have to be. `one-cut`: one rail only. `not-known`: nobody has looked.
 * `never`: no gap is possible. `joined`: rails run through, and a gap could be made.
 */
export type JointState = 'joined' | 'never' | 'gap' | 'to-cut' | 'one-cut' | 'not-known';

export interface DressedJoint extends Pick<Joint, 'id' | 'from' | 'to'> {
  readonly state: JointState;
  /** The two districts that meet here, by their places. */
  readonly between?: readonly [number, number];
}

export interface DressedDistrict {
  readonly letter: string;
  readonly stage: string;
  readonly sections: readonly string[];
  /** Sections of it that surely have feeders of its stage. */
  readonly fed: readonly string[];
}

export interface Dressed {
  readonly districts: readonly DressedDistrict[];
  /** The place of its district, by section. A section that is in none is not in it. */
  readonly districtOf: ReadonlyMap<string, number>;
  readonly joints: ReadonlyMap<string, DressedJoint>;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** The letter by which a district is called, by its place among the districts. */
export const districtLetter = (place: number): string => LETTERS.charAt(place % LETTERS.length);

export function dress(sheet: Divided, districts: Districts): Dressed {
  const districtOf = new Map(districts.flatMap(({ sections }, place) => sections.map((id) => [id, place] as const)));
  return {
    districts: districts.map(({ stage, sections }, place) => {
      const feeds = new Set(sheet.stages.find(({ id }) => id === stage)?.feeds ?? []);
      const fed = sections.filter((id) => feeds.has(id));
      return { letter: districtLetter(place), stage, sections, fed };
    }),
    districtOf,
    joints: new Map(
      sheet.joints.map((joint) => {
        const [one, other] = [districtOf.get(joint.from), districtOf.get(joint.to)];
        const between = one === undefined || other === undefined || one === other ? undefined : ([one, other] as const);
        const { id, from, to } = joint;
        return [id, { id, from, to, state: stateOf(joint, between !== undefined), ...(between && { between }) }];
      }),
    ),
  };
}

function stateOf({ gap, cut }: Joint, boundary: boolean): JointState {
  if (cut === 'both') return 'gap';
  if (boundary || gap === 'required') return 'to-cut';
  if (cut === 'one') return 'one-cut';
  if (cut === 'unknown') return 'not-known';
  return gap === 'impossible' ? 'never' : 'joined';
}
