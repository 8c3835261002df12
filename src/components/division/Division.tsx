// Where to divide: the work and its progress, the ways to choose from with what each asks of every stage, or why there is none.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { apartIn, missingIn, type SheetDivided, type Way } from '../../wizards/division/index.ts';
import type { Sheet } from '../../wizards/sheet/index.ts';
import { joined, type Say } from '../words/index.ts';
import { Because } from './Because.tsx';
import type { DivisionProps } from './given.ts';
import { Ways } from './Ways.tsx';
import { divideAway } from './work.ts';

type Work =
  | { readonly at: 'rest' }
  | { readonly at: 'work'; readonly tries: number }
  | { readonly at: 'failed' }
  | { readonly at: 'done'; readonly divided: SheetDivided };

const AT_REST: Work = { at: 'rest' };

/** What a division depends on: not what is already chosen, nor names, nor wires. */
function askedOf({ districts: _, name: __, wiring: ___, ...sheet }: Sheet): string {
  return JSON.stringify({ ...sheet, sections: sheet.sections.map(({ at: ____, name: _____, ...section }) => section) });
}

interface Props extends DivisionProps {
  /** Begins without being asked again. */
  readonly atOnce: boolean;
}

export function Division({ atOnce, ...props }: Props) {
  const { sheet, say, language, nameOf, onShow } = props;
  const [work, setWork] = useState<Work>(AT_REST);
  const [told, setTold] = useState('');
  const stop = useRef<(() => void) | undefined>(undefined);
  const asked = useMemo(() => askedOf(sheet), [sheet]);
  const wanted = useRef(false);

  const begin = (): void => {
    stop.current?.();
    wanted.current = true;
    onShow(undefined);
    setTold('');
    setWork({ at: 'work', tries: 0 });
    stop.current = divideAway(sheet, {
      onTries: (tries) => setWork({ at: 'work', tries }),
      onDone: (divided) => setWork({ at: 'done', divided }),
      onFailed: () => setWork({ at: 'failed' }),
    });
  };
  const cancel = (): void => {
    stop.current?.();
    wanted.current = false;
    setWork(AT_REST);
  };
  // What was found holds for the sheet as it was: another one is divided anew.
  useEffect(() => {
    if (wanted.current) begin();
  }, [asked]);
  useEffect(() => {
    if (atOnce && missingIn(sheet) === undefined) begin();
    return () => stop.current?.();
  }, []);

  const missing = missingIn(sheet);
  if (missing !== undefined) return <p>{say(`division-missing-${missing}`)}</p>;
  return (
    <div class="division">
      {apartIn(sheet).map((sections) => (
        <p key={sections[0]}>{say('division-apart', { sections: joined(sections.map(nameOf), language) })}</p>
      ))}
      {work.at === 'rest' && <p>{say('division-lead', { units: sheet.stages.length })}</p>}
      <p class="acts">
        {work.at === 'work' ? (
          <button class="button quiet" type="button" onClick={cancel}>
            {say('division-cancel')}
          </button>
        ) : (
          <button class="button" type="button" onClick={begin}>
            {say(work.at === 'done' ? 'division-again' : 'division-begin')}
          </button>
        )}
      </p>
      <p role="status">{statusOf(work, say, told)}</p>
      {work.at === 'done' && (
        <Found
          {...props}
          divided={work.divided}
          onTake={(way, name) => {
            props.onTake(way.districts);
            setTold(say('division-taken', { way: name }));
          }}
        />
      )}
    </div>
  );
}

function statusOf(work: Work, say: Say, told: string): string {
  if (work.at === 'work') return say('division-working', { tries: work.tries });
  if (work.at === 'failed') return say('division-failed');
  if (work.at === 'rest') return '';
  if (told !== '') return told;
  const { division } = work.divided;
  return division.kind === 'choice' ? say('division-found', { ways: division.ways.length }) : say('division-none');
}

interface FoundProps extends Omit<DivisionProps, 'onTake'> {
  readonly divided: SheetDivided;
  readonly onTake: (way: Way, name: string) => void;
}

function Found(props: FoundProps) {
  const { divided, sheet, say } = props;
  const { division, fewest, own } = divided;
  const needs = fewest === undefined ? undefined : fewestSaid(fewest, sheet.stages.length, say);
  return (
    <>
      {division.kind === 'choice' && <Ways {...props} ways={division.ways} own={own} fewest={fewest?.way} />}
      {division.kind === 'not-found' && <p>{say('division-not-found')}</p>}
      {division.kind === 'impossible' && (
        <>
          <Because {...props} because={division.because} />
          {division.nearest !== undefined && (
            <>
              <p>{say('division-nearest')}</p>
              <Ways {...props} ways={[division.nearest]} own={own} fewest={undefined} />
            </>
          )}
        </>
      )}
      {needs !== undefined && <p>{needs}</p>}
    </>
  );
}

/** Of labels that are unread nothing is called enough. */
export function fewestSaid(
  { districts, more, way }: NonNullable<SheetDivided['fewest']>,
  stages: number,
  say: Say,
): string | undefined {
  const unread = way?.asked.some(({ verdict }) => verdict === 'unknown') === true;
  if (districts === 1) return say(unread ? 'division-fewest-one-unread' : 'division-fewest-one');
  if (more > 0) return say('division-fewest-more', { districts, more });
  return districts < stages
    ? say(unread ? 'division-fewest-less-unread' : 'division-fewest-less', { districts })
    : undefined;
}
