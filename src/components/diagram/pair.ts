// What a joint is called: its two sections, and which of their joints where they meet at both ends.
import type { Joint, Sheet } from '../../wizards/sheet/index.ts';
import { endOf } from '../../wizards/sheet/index.ts';
import type { Say } from '../words/index.ts';

interface Naming {
  readonly sheet: Pick<Sheet, 'joints'>;
  readonly say: Say;
  /** What a section is called, by its mark. */
  readonly nameOf: (id: string) => string;
}

export function pairSaid(joint: Pick<Joint, 'id' | 'from' | 'to'>, { sheet, say, nameOf }: Naming): string {
  const pair = say('joint-pair', { from: nameOf(joint.from), to: nameOf(joint.to) });
  const end = endOf(joint, sheet);
  if (end === undefined) return pair;
  const { number: n } = end;
  return say('joint-twin', { pair, end: n > 2 ? say('joint-end-more', { n }) : say(`joint-end-${n}`) });
}

/** The same by the mark of a joint. */
export function jointNamed(id: string, naming: Naming): string {
  const joint = naming.sheet.joints.find((one) => one.id === id);
  return joint === undefined ? id : pairSaid(joint, naming);
}
