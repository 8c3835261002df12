// What is at hand: asked once, so that nothing else is ever asked for.
import { useState } from 'preact/hooks';
import type { Tool } from '../../engine/index.ts';
import { TOOLS } from '../../engine/index.ts';
import type { Say } from '../words/index.ts';

const ASKED: readonly Tool[] = TOOLS.filter((tool) => tool !== 'eyes');

export function Equipping({ say, onTools }: { readonly say: Say; readonly onTools: (tools: readonly Tool[]) => void }) {
  const [chosen, setChosen] = useState<readonly Tool[]>([]);
  return (
    <form
      class="part asked"
      onSubmit={(event) => {
        event.preventDefault();
        onTools(chosen);
      }}
    >
      <h1 tabIndex={-1} id="at-hand">
        {say('walk-tools-title')}
      </h1>
      <fieldset class="choice" aria-labelledby="at-hand">
        {ASKED.map((tool) => (
          <label key={tool}>
            <input
              type="checkbox"
              checked={chosen.includes(tool)}
              onChange={(event) =>
                setChosen(event.currentTarget.checked ? [...chosen, tool] : chosen.filter((one) => one !== tool))
              }
            />
            <span>{say(`tool-${tool}`)}</span>
          </label>
        ))}
      </fieldset>
      <p class="why">
        <b>{say('why-we-ask')}</b> {say('walk-tools-why')}
      </p>
      <div class="acts">
        <button class="button" type="submit">
          {say(chosen.length === 0 ? 'walk-tools-none' : 'continue')}
        </button>
      </div>
    </form>
  );
}
