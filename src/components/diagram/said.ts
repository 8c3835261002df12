// What a section, a joint and a stage are called aloud.
import type { Sheet } from '../../wizards/sheet/index.ts';
import type { Dressed, JointState } from '../../wizards/sheet-drawing/index.ts';
import type { Say } from '../words/index.ts';
import { pairSaid } from './pair.ts';

interface Speaking {
  readonly dressed: Dressed;
  readonly names: ReadonlyMap<string, string>;
  readonly sheet: Sheet;
  readonly say: Say;
}

/** A section by its name, with its district. */
export function sectionSaid(id: string, { dressed, names, say }: Speaking): string {
  const name = names.get(id) ?? id;
  const district = dressed.districts[dressed.districtOf.get(id) ?? -1];
  return district === undefined
    ? say('diagram-section', { name })
    : say('diagram-section-in', { name, district: district.letter });
}

const STATES = {
  joined: 'diagram-joint-joined',
  never: 'diagram-joint-never',
  gap: 'diagram-joint-gap',
  'to-cut': 'diagram-joint-to-cut',
  'one-cut': 'diagram-joint-one-cut',
  'not-known': 'diagram-joint-not-known',
} as const satisfies Readonly<Record<JointState, string>>;

/** A joint by what it joins, with what is there. */
export function jointSaid(id: string, { dressed, names, sheet, say }: Speaking): string {
  const joint = dressed.joints.get(id);
  if (joint === undefined) return id;
  return say('diagram-joint', {
    pair: pairSaid(joint, { sheet, say, nameOf: (section) => names.get(section) ?? section }),
    state: say(STATES[joint.state]),
  });
}

/** A stage by its name, else by what it is and the how manieth of its kind. */
export function stageSaid(id: string, { stages }: Pick<Sheet, 'stages'>, say: Say): string {
  const stage = stages.find((one) => one.id === id);
  if (stage === undefined) return id;
  if (stage.name !== undefined && stage.name !== '') return stage.name;
  const alike = stages.filter(({ kind }) => kind === stage.kind);
  const n = alike.indexOf(stage) + 1;
  return alike.length === 1 ? say(`diagram-stage-${stage.kind}`) : say(`diagram-stage-${stage.kind}-n`, { n });
}
