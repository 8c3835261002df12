// All track of a district as one line: its sections, and the track from their ends to the joints.
import type { Dressed, Laid, LaidJoint } from '../../wizards/sheet-drawing/index.ts';
import { lookOf } from './look.ts';

/** The line of each look, what is in no district first. */
export function linesByDistrict(laid: Laid, dressed: Dressed): readonly (readonly [look: string, d: string])[] {
  const none: string[] = [];
  const lines = new Map<number | undefined, string[]>([[undefined, none]]);
  dressed.districts.forEach((_, place) => {
    lines.set(place, []);
  });
  const add = (section: string | undefined, d: string): void => {
    lines.get(section === undefined ? undefined : dressed.districtOf.get(section))?.push(d);
  };
  for (const { id, left, right, y } of laid.sections) add(id, `M${left} ${y}H${right}`);
  for (const { id, from, to } of laid.joints) {
    const joint = dressed.joints.get(id);
    add(joint?.from, pathOf(from));
    add(joint?.to, pathOf(to));
  }
  return [...lines].filter(([, parts]) => parts.length > 0).map(([place, parts]) => [lookOf(place), parts.join('')]);
}

const pathOf = (points: LaidJoint['from']): string => `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}`;
