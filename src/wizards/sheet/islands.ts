// Stretches of track that no joint joins to each other.
import type { Sheet } from './sheet.ts';

/** Each stretch that hangs together, by its sections in the order of the sheet; the largest first. One where the whole layout does. */
export function islandsIn({ sections, joints }: Pick<Sheet, 'sections' | 'joints'>): readonly (readonly string[])[] {
  const groups = joints.reduce<readonly (readonly string[])[]>(
    (apart, { from, to }) => {
      const [one, other] = [from, to].map((end) => apart.find((group) => group.includes(end)));
      if (one === undefined || other === undefined || one === other) return apart;
      return [...apart.filter((group) => group !== one && group !== other), [...one, ...other]];
    },
    sections.map(({ id }) => [id]),
  );
  const inOrder = groups.map((group) => sections.map(({ id }) => id).filter((id) => group.includes(id)));
  return inOrder.toSorted((one, other) => other.length - one.length);
}
