// Where one begins: a shape of which only the trains are counted, an example, a sheet of this device, or a file.
import { useState } from 'preact/hooks';
import { DEMO_CLUB, DEMO_OVAL, SHAPE_IDS, SHAPES, type Sheet } from '../../wizards/sheet/index.ts';
import type { KeptSheet } from '../kept-sheets/index.ts';
import { FileButton } from '../shared/index.ts';
import type { Say } from '../words/index.ts';
import { ShapePicture } from './ShapePicture.tsx';

interface StartProps {
  readonly say: Say;
  readonly language: string;
  readonly kept: readonly KeptSheet[];
  /** Gives a sheet whose sections have no names yet. */
  readonly onStart: (sheet: Sheet) => void;
  readonly onOpen: (kept: KeptSheet) => void;
  readonly onDelete: (kept: KeptSheet) => void;
  readonly onFile: (file: File) => Promise<void>;
}

const SCALES = ['z', 'n', 'tt', 'h0', '0', '1'] as const;
const isScale = (text: string): text is Sheet['scale'] => SCALES.some((scale) => scale === text);
/** Most trains that a shape is begun with; more are counted in the sheet. Source: own-choice. */
const MOST_TRAINS = 60;
const DEMOS = { club: DEMO_CLUB, oval: DEMO_OVAL } as const;

export function Start({ say, language, kept, onStart, onOpen, onDelete, onFile }: StartProps) {
  const [typed, setTyped] = useState('4');
  const [scale, setScale] = useState<Sheet['scale']>('h0');
  const trains = Number(typed);
  const counts = /^\d+$/.test(typed.trim()) && trains <= MOST_TRAINS;
  return (
    <>
      {kept.length > 0 && <Kept say={say} language={language} kept={kept} onOpen={onOpen} onDelete={onDelete} />}
      <section class="part">
        <h2>{say('sheet-start')}</h2>
        <div class="sheet-facts">
          <label class="field">
            {say('sheet-trains-count')}
            <input
              inputMode="numeric"
              value={typed}
              aria-invalid={!counts}
              aria-describedby={counts ? undefined : 'trains-problem'}
              onInput={({ currentTarget }) => setTyped(currentTarget.value)}
            />
            {!counts && (
              <span class="error" id="trains-problem">
                {say('sheet-trains-problem', { most: MOST_TRAINS })}
              </span>
            )}
          </label>
          <ScaleField say={say} scale={scale} onScale={setScale} />
        </div>
        <ul class="shapes">
          {SHAPE_IDS.map((id) => (
            <li key={id}>
              <button
                type="button"
                disabled={!counts}
                onClick={() => onStart({ ...SHAPES[id](trains, scale), name: say(`shape-${id}`) })}
              >
                <ShapePicture sheet={SHAPES[id](1)} />
                <b>{say(`shape-${id}`)}</b>
              </button>
            </li>
          ))}
        </ul>
      </section>
      <section class="part">
        <h2>{say('sheet-examples')}</h2>
        <p>{say('sheet-examples-lead')}</p>
        <p class="acts">
          {(['club', 'oval'] as const).map((id) => (
            <button
              key={id}
              class="button quiet"
              type="button"
              onClick={() => onStart({ ...DEMOS[id], name: say(`demo-${id}`) })}
            >
              {say(`demo-${id}`)}
            </button>
          ))}
        </p>
      </section>
      <section class="part">
        <h2>{say('sheet-file')}</h2>
        <p class="acts">
          <FileButton label={say('sheet-open-file')} onFile={onFile} />
        </p>
      </section>
    </>
  );
}

interface ScaleFieldProps {
  readonly say: Say;
  readonly scale: Sheet['scale'];
  readonly onScale: (scale: Sheet['scale']) => void;
}

export function ScaleField({ say, scale, onScale }: ScaleFieldProps) {
  return (
    <label class="field">
      {say('sheet-field-scale')}
      <select
        value={scale}
        onChange={({ currentTarget: { value } }) => {
          if (isScale(value)) onScale(value);
        }}
      >
        {SCALES.map((one) => (
          <option key={one} value={one}>
            {say(`scale-${one}`)}
          </option>
        ))}
      </select>
    </label>
  );
}

type KeptProps = Pick<StartProps, 'say' | 'language' | 'kept' | 'onOpen' | 'onDelete'>;

function Kept({ say, language, kept, onOpen, onDelete }: KeptProps) {
  const format = new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' });
  const newest = kept.toSorted((one, other) => (one.on < other.on ? 1 : -1));
  return (
    <section class="part">
      <h2>{say('sheet-yours')}</h2>
      <ul class="list sheets">
        {newest.map((one) => {
          const name = one.sheet.name.trim() === '' ? say('sheet-no-name') : one.sheet.name;
          return (
            <li key={one.id}>
              <b>{name}</b>
              <p class="small">
                {say('sheet-kept-on', { n: one.sheet.sections.length, date: format.format(new Date(one.on)) })}
              </p>
              <p class="acts">
                <button
                  class="button"
                  type="button"
                  aria-label={`${say('sheet-open')}: ${name}`}
                  onClick={() => onOpen(one)}
                >
                  {say('sheet-open')}
                </button>
                <button
                  class="button quiet"
                  type="button"
                  aria-label={`${say('sheet-delete')}: ${name}`}
                  onClick={() => onDelete(one)}
                >
                  {say('sheet-delete')}
                </button>
              </p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
