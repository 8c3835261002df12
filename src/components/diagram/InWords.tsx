// The drawing in words: each district with its sections, then what is between them; for whoever cannot see it, and to read out beside it.
import { useState } from 'preact/hooks';
import type { DressedJoint } from '../../wizards/sheet-drawing/index.ts';
import { joined, type Say } from '../words/index.ts';
import { pairSaid } from './pair.ts';
import { stageSaid } from './said.ts';
import type { Shown } from './shown.ts';

interface InWordsProps extends Shown {
  readonly say: Say;
  readonly language: string;
}

/** Joints that are worth a line of their own inside a district. */
const TOLD = ['gap', 'one-cut', 'not-known', 'to-cut', 'never'] as const;

/** The list is made once somebody opens it. */
export function InWords(props: InWordsProps) {
  const [open, setOpen] = useState(false);
  return (
    <details class="diagram-words" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{props.say('diagram-in-words')}</summary>
      {open && <WordList {...props} />}
    </details>
  );
}

export function WordList({ dressed, names, sheet, say, language }: InWordsProps) {
  const list = (ids: readonly string[]): string =>
    joined(
      ids.map((id) => names.get(id) ?? id),
      language,
    );
  const left = sheet.sections.map(({ id }) => id).filter((id) => !dressed.districtOf.has(id));
  const pair = (joint: DressedJoint): string => pairSaid(joint, { sheet, say, nameOf: (id) => names.get(id) ?? id });
  const pairs = (joints: readonly DressedJoint[]): string => joined(joints.map(pair), language);
  const joints = [...dressed.joints.values()];
  const inside = joints.filter(({ between }) => between === undefined);
  return (
    <ul>
      {dressed.districts.map(({ letter, stage, sections }) => (
        <li key={letter}>
          {say('diagram-words-district', {
            district: letter,
            stage: stageSaid(stage, sheet, say),
            sections: list(sections),
          })}
        </li>
      ))}
      {left.length > 0 && (
        <li>
          {say(dressed.districts.length === 0 ? 'diagram-words-sections' : 'diagram-words-left', {
            sections: list(left),
          })}
        </li>
      )}
      {boundaries(joints).map(([[one, other], gaps]) => (
        <li key={`${one} ${other}`}>
          {say('diagram-words-between', {
            one: dressed.districts[one]?.letter ?? '',
            other: dressed.districts[other]?.letter ?? '',
            gaps: pairs(gaps),
          })}
        </li>
      ))}
      {TOLD.map((state) => ({ state, joints: inside.filter((joint) => joint.state === state) }))
        .filter(({ joints }) => joints.length > 0)
        .map(({ state, joints }) => (
          <li key={state}>{say(`diagram-words-${state}`, { joints: pairs(joints) })}</li>
        ))}
      {inside.some(({ state }) => state === 'joined') && (
        <li>{say('diagram-words-joined', { joints: pairs(inside.filter(({ state }) => state === 'joined')) })}</li>
      )}
    </ul>
  );
}

/** The joints between two districts, by which two. */
function boundaries(
  joints: readonly DressedJoint[],
): readonly (readonly [readonly [number, number], readonly DressedJoint[]])[] {
  const found = new Map<string, readonly [readonly [number, number], DressedJoint[]]>();
  for (const joint of joints) {
    if (joint.between === undefined) continue;
    const [one, other] = joint.between.toSorted((a, b) => a - b);
    if (one === undefined || other === undefined) continue;
    const key = `${one} ${other}`;
    const entry = found.get(key) ?? ([[one, other], []] as const);
    found.set(key, entry);
    entry[1].push(joint);
  }
  return [...found.values()];
}
