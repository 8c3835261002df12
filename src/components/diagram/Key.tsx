// What the signs of the drawing mean: those that stand in it.
import type { SectionTag, Sheet } from '../../wizards/sheet/index.ts';
import type { Dressed, JointState } from '../../wizards/sheet-drawing/index.ts';
import type { Say } from '../words/index.ts';
import { Feed, JointMark, Tag } from './Track.tsx';

const STATES: readonly JointState[] = ['gap', 'to-cut', 'one-cut', 'not-known', 'never', 'joined'];
const TAGS: readonly SectionTag[] = ['station', 'stop', 'hidden', 'turntable', 'reversing', 'lift-out', 'programming'];

interface KeyProps {
  readonly dressed: Dressed;
  readonly sheet: Sheet;
  readonly say: Say;
}

export function Key({ dressed, sheet, say }: KeyProps) {
  const seen = new Set([...dressed.joints.values()].map(({ state }) => state));
  return (
    <ul class="diagram-key">
      {STATES.filter((state) => seen.has(state)).map((state) => (
        <StateKey key={state} state={state}>
          {say(`diagram-key-${state}`)}
        </StateKey>
      ))}
      <TagKeys sheet={sheet} say={say} />
      {dressed.districts.some(({ fed }) => fed.length > 0) && (
        <li>
          <svg width="40" height="40" viewBox="-20 -16 40 40" aria-hidden="true">
            <line class="track" x1="-20" x2="20" />
            <Feed x={0} y={0} />
          </svg>
          {say('diagram-key-feed')}
        </li>
      )}
    </ul>
  );
}

interface StateKeyProps {
  readonly state: JointState;
  readonly children: string;
}

export const StateKey = ({ state, children }: StateKeyProps) => (
  <li>
    <svg width="40" height="32" viewBox="-20 -16 40 32" aria-hidden="true">
      <line class="track" x1="-20" x2="20" />
      <g class="joint">
        <JointMark state={state} turned={0} />
      </g>
    </svg>
    {children}
  </li>
);

export const TagKeys = ({ sheet, say }: Pick<KeyProps, 'sheet' | 'say'>) => (
  <>
    {TAGS.filter((tag) => sheet.sections.some(({ tags }) => tags?.includes(tag))).map((tag) => (
      <li key={tag}>
        <svg width="66" height="36" viewBox="-33 -18 66 36" aria-hidden="true">
          <line class="track" x1="-32" x2="32" />
          <Tag tag={tag} left={-32} right={32} y={0} />
        </svg>
        {say(`diagram-key-${tag}`)}
      </li>
    ))}
  </>
);
