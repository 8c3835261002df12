// "Take into my layout sheet": what was told here goes into the sheet last opened. What does so comes when it is pressed.
import { useState } from 'preact/hooks';
import type { takenInto } from '../../wizards/share-out/index.ts';
import { Missing, useLoaded } from '../shared/index.ts';
import type { Say } from '../words/index.ts';

export interface TakeInProps {
  readonly say: Say;
  /** Where the pages of this language begin. */
  readonly home: string;
  /** What lays the answers into a sheet, where they tell of its track. */
  readonly into?: typeof takenInto | undefined;
}

const loadTaken = () => import('./Taken.tsx');

export function TakeIn({ say, home, into }: TakeInProps) {
  const [wanted, setWanted] = useState(false);
  const taken = useLoaded(wanted ? loadTaken : undefined);
  if (taken.value !== undefined) return <taken.value.Taken say={say} home={home} into={into} />;
  return (
    <>
      <button type="button" onClick={() => setWanted(true)}>
        {say('take-in')}
      </button>
      {taken.failed && <Missing say={say} again={taken.again} />}
    </>
  );
}
