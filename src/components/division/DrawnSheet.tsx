// The sheet as a diagram, with what can be done to what is selected in it, and below it where to divide. A way that is looked at is shown at once.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Joint, Sheet } from '../../wizards/sheet/index.ts';
import type { Districts } from '../../wizards/sheet-drawing/index.ts';
import { type Ahead, Diagram, jointNamed, type Selected } from '../diagram/index.ts';
import { Numbers, type Say } from '../words/index.ts';
import { Division } from './Division.tsx';

interface DrawnSheetProps {
  readonly sheet: Sheet;
  /** Laid out while the page was still loading. */
  readonly ahead?: Ahead | undefined;
  readonly say: Say;
  readonly language: string;
  /** Those of the room of units are in them. */
  readonly words: Readonly<Record<string, string>>;
  /** The mark of the section or joint that is selected. */
  readonly selected: string | undefined;
  readonly onSelect: (mark: string | undefined) => void;
  /** Takes a changed sheet. */
  readonly onChange: (sheet: Sheet) => void;
}

/** Whether somebody came here to have it divided, as a plan sends them. */
const isAsked = (): boolean => typeof location === 'object' && new URLSearchParams(location.search).has('divide');

export default function DrawnSheet({
  sheet,
  say,
  language,
  words,
  selected,
  onSelect,
  onChange,
  ...props
}: DrawnSheetProps) {
  const [shown, setShown] = useState<Districts | undefined>(undefined);
  const [asked] = useState(isAsked);
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!asked) return;
    // Loaded anew, the page begins where it always does.
    history.replaceState(history.state, '', location.pathname + location.hash);
    place.current?.scrollIntoView();
    place.current?.focus({ preventScroll: true });
  }, [asked]);
  const numbers = useMemo(() => new Numbers(language, 'metric', words), [language, words]);
  const one = selectedIn(sheet, selected);
  const joint = one?.kind === 'joint' ? sheet.joints.find(({ id }) => id === one.id) : undefined;
  const nameOf = (id: string): string => sheet.sections.find((section) => section.id === id)?.name ?? id;
  return (
    <>
      <section class="part">
        <h2>{say('division-drawing')}</h2>
        <Diagram
          sheet={sheet}
          ahead={props.ahead}
          {...(shown === undefined ? {} : { districts: shown })}
          say={say}
          numbers={numbers}
          language={language}
          selected={one}
          onSelect={(chosen) => onSelect(chosen?.id)}
        >
          {joint === undefined ? (
            sheet.joints.length > 0 && <p class="small">{say('division-select')}</p>
          ) : (
            <GapChoice
              joint={joint}
              name={jointNamed(joint.id, { sheet, say, nameOf })}
              say={say}
              onGap={(gap) => onChange(withGap(sheet, joint.id, gap))}
            />
          )}
        </Diagram>
      </section>
      <section ref={place} class="part" tabIndex={-1}>
        <h2>{say('division-title')}</h2>
        <Division
          atOnce={asked}
          sheet={sheet}
          say={say}
          numbers={numbers}
          language={language}
          nameOf={nameOf}
          onShow={setShown}
          onTake={(districts) => onChange({ ...sheet, districts: districts.map(copied) })}
        />
      </section>
    </>
  );
}

const copied = ({ stage, sections }: Districts[number]): Districts[number] => ({ stage, sections: [...sections] });

/** A mark may be that of a section or of a joint. */
function selectedIn({ sections, joints }: Sheet, mark: string | undefined): Selected | undefined {
  if (mark === undefined) return undefined;
  if (joints.some(({ id }) => id === mark)) return { kind: 'joint', id: mark };
  return sections.some(({ id }) => id === mark) ? { kind: 'section', id: mark } : undefined;
}

const withGap = (sheet: Sheet, id: string, gap: Joint['gap']): Sheet => ({
  ...sheet,
  joints: sheet.joints.map((joint) => (joint.id === id ? { ...joint, gap } : joint)),
});

const GAPS = ['possible', 'impossible', 'required'] as const satisfies readonly Joint['gap'][];

interface GapChoiceProps {
  readonly joint: Joint;
  readonly name: string;
  readonly say: Say;
  readonly onGap: (gap: Joint['gap']) => void;
}

/** Whether a gap may be, must be or cannot be at the joint that is selected. */
function GapChoice({ joint, name, say, onGap }: GapChoiceProps) {
  return (
    <fieldset class="division-gap">
      <legend>{say('division-gap', { joint: name })}</legend>
      {GAPS.map((gap) => (
        <label key={gap}>
          <input type="radio" name="division-gap" checked={joint.gap === gap} onChange={() => onGap(gap)} />
          {say(`division-gap-${gap}`)}
        </label>
      ))}
    </fieldset>
  );
}
