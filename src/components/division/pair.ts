// What a joint is called: its two sections, and which of their joints where they meet at both ends.
import type { DivisionProps } from './given.ts';

export function pairSaid(id: string, { sheet, say, nameOf }: Pick<DivisionProps, 'sheet' | 'say' | 'nameOf'>): string {
  const joint = sheet.joints.find((one) => one.id === id);
  if (joint === undefined) return id;
  const { from, to } = joint;
  const pair = say('diagram-pair', { from: nameOf(from), to: nameOf(to) });
  const alike = sheet.joints.filter(
    (one) => (one.from === from && one.to === to) || (one.from === to && one.to === from),
  );
  if (alike.length < 2) return pair;
  const n = alike.indexOf(joint) + 1;
  return say('division-end', { joint: pair, end: n > 2 ? say('division-end-more', { n }) : say(`division-end-${n}`) });
}
