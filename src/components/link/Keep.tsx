// "Keep this": puts what stands on a page into the case notebook. What asks for its name comes when it is pressed.
import { useState } from 'preact/hooks';
import { Missing, useLoaded } from '../shared/index.ts';
import type { Say } from '../words/index.ts';

const loadForm = () => import('./KeepForm.tsx');

export function Keep({ say }: { readonly say: Say }) {
  const [wanted, setWanted] = useState(false);
  const form = useLoaded(wanted ? loadForm : undefined);
  if (form.value !== undefined) return <form.value.KeepForm say={say} />;
  return (
    <>
      <button type="button" onClick={() => setWanted(true)}>
        {say('keep-this')}
      </button>
      {form.failed && <Missing say={say} again={form.again} />}
    </>
  );
}
