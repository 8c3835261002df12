// "Take into my layout sheet": what was told here goes into the sheet last opened. What does so comes when it is pressed.
import { useState } from 'preact/hooks';
import { Missing, useLoaded } from '../shared/index.ts';
import type { TakeInProps } from './given.ts';

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
