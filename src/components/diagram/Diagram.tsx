// A layout in the manner of a signal-box diagram: sections, joints and gaps, districts by colour, pattern and letter, stages with their supplies;
// the same in words below. What depends on the track alone is laid out once, and every division is shown at once.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Sheet } from '../../wizards/sheet/index.ts';
import { type Districts, dress, layOut, layOutInParts, type NameOf } from '../../wizards/sheet-drawing/index.ts';
import { always, inTurns } from '../shared/index.ts';
import { Cuts } from './Cuts.tsx';
import { InWords } from './InWords.tsx';
import { Key } from './Key.tsx';
import { Stages, scrolled } from './Stages.tsx';
import type { Ahead, DiagramProps, Shown } from './shown.ts';
import { fitsBelowLead, goesOnAt, type Strips, shareOfPaper, stripsOf, withMargins } from './strips.ts';
import { Track } from './Track.tsx';

const NO_DISTRICTS: Districts = [];
const ownName: NameOf = ({ id, name }) => name ?? id;

type Tracked = Pick<Sheet, 'sections' | 'joints'>;

/** Lays a layout out while the browser has its turns. */
export async function layAhead({ sections, joints }: Tracked, nameOf = ownName): Promise<Ahead | undefined> {
  const laid = await inTurns(layOutInParts({ sections, joints }, nameOf), always);
  return laid === undefined ? undefined : { of: trackAs({ sections, joints }, nameOf), laid };
}

/** All that laying out depends on, as a text. */
const trackAs = ({ sections, joints }: Tracked, nameOf: NameOf): string =>
  JSON.stringify([
    sections.map((one) => [one.id, one.at, nameOf(one)]),
    joints.map(({ id, from, to }) => [id, from, to]),
  ]);

export function Diagram(props: DiagramProps) {
  const { sheet, say, nameOf = ownName, ahead } = props;
  const districts = props.districts ?? sheet.districts ?? NO_DISTRICTS;
  const { sections, joints } = sheet;
  const laid = useMemo(
    () => (ahead?.of === trackAs(sheet, nameOf) ? ahead.laid : layOut(sheet, nameOf)),
    [sections, joints, nameOf],
  );
  const dressed = useMemo(() => dress(sheet, districts), [sheet, districts]);
  const names = useMemo(() => new Map(sections.map((one) => [one.id, nameOf(one)])), [sections, nameOf]);
  const [whole, setWhole] = useState(false);
  const printing = usePrinting();
  if (sections.length === 0) return <p>{say('diagram-empty')}</p>;
  const shown = { laid, dressed, names, sheet };
  const strips = printing ? stripsOf(laid) : undefined;
  const onPaper = strips !== undefined && <OnPaper {...props} {...shown} strips={strips} />;
  const early = strips !== undefined && fitsBelowLead(strips);
  return (
    <figure class={whole ? 'diagram whole' : 'diagram'}>
      <div class="diagram-view" {...scrolled(say('diagram-view'))}>
        <Track {...props} {...shown} />
      </div>
      {early && onPaper}
      {props.children}
      <p class="acts">
        <button class="button quiet" type="button" aria-pressed={whole} onClick={() => setWhole(!whole)}>
          {say('diagram-whole')}
        </button>
      </p>
      <Key dressed={dressed} sheet={sheet} say={say} />
      <Stages
        sheet={sheet}
        dressed={dressed}
        names={names}
        say={say}
        numbers={props.numbers}
        language={props.language}
      />
      {!early && onPaper}
      <InWords {...shown} say={say} language={props.language} />
    </figure>
  );
}

/** Whether the page is being printed just now. */
function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    const begin = (): void => setPrinting(true);
    const end = (): void => setPrinting(false);
    addEventListener('beforeprint', begin);
    addEventListener('afterprint', end);
    return () => {
      removeEventListener('beforeprint', begin);
      removeEventListener('afterprint', end);
    };
  }, []);
  return printing;
}

/** On paper a wide drawing stands in strips below each other, so that its letters keep their size. */
function OnPaper(props: DiagramProps & Shown & { readonly strips: Strips }) {
  const { laid, strips } = props;
  const marks = goesOnAt(laid, strips);
  return (
    <div class="diagram-paper" aria-hidden="true">
      {marks.size > 0 && <p class="small">{props.say('diagram-strips')}</p>}
      {strips.strips.map((strip) => {
        const part = withMargins(strip, laid.width);
        return (
          <div key={part.x} style={{ inlineSize: `${100 * shareOfPaper(part, strips)}%` }}>
            <Track {...props} onSelect={undefined} selected={undefined} part={part}>
              <Cuts strip={strip} marks={marks} />
            </Track>
          </div>
        );
      })}
    </div>
  );
}
