// The ways to choose from, and what the one that is shown asks of each stage.
import { useEffect, useState } from 'preact/hooks';
import { advisedOf, bestOf, isGappedAnyway, type Way } from '../../wizards/division/index.ts';
import { districtLetter } from '../../wizards/sheet-drawing/index.ts';
import { jointNamed, stageSaid } from '../diagram/index.ts';
import { joined, type Say } from '../words/index.ts';
import type { DivisionProps } from './given.ts';

interface WaysProps extends Omit<DivisionProps, 'onTake'> {
  readonly ways: readonly Way[];
  /** The division that the sheet held already, and the one with the fewest districts. */
  readonly own: Way | undefined;
  readonly fewest: Way | undefined;
  readonly onTake: (way: Way, name: string) => void;
}

/** The look of a tag for what a district has. */
const TAGS = { ample: 'enough', enough: 'enough', tight: 'tight', short: 'short', unknown: 'tight' } as const;

export function Ways({ ways, own, fewest, onTake, onShow, sheet, say, numbers, language, nameOf }: WaysProps) {
  const advised = advisedOf(ways);
  const best = bestOf(ways);
  const all = [...ways];
  if (own !== undefined && !has(all, own)) all.unshift(own);
  if (fewest !== undefined && !has(all, fewest)) all.push(fewest);
  // What somebody has chosen stays chosen, unless it cannot be built any more; what is advised stands beside it.
  const kept = own?.forbidden.length === 0 ? own : undefined;
  const chosen = all.findIndex((way) => (kept === undefined ? way === best : isSame(way, kept)));
  const [at, setAt] = useState(Math.max(0, chosen));
  const shown = all[at];
  useEffect(() => {
    onShow(shown?.districts);
    return () => onShow(undefined);
  }, [shown]);
  if (shown === undefined) return null;
  const { districts } = sheet;
  const isTaken = (way: Way): boolean => districts !== undefined && isSame(way, { districts });
  const nameFor = (way: Way): string => {
    if (way === own) return say(isTaken(own) ? 'division-own' : 'division-before');
    if (way === fewest) return say('division-fewest-way', { districts: way.districts.length });
    return say('division-way', { n: ways.indexOf(way) + 1 });
  };
  const named = (ids: readonly string[]): string =>
    joined(
      ids.map((id) => jointNamed(id, { sheet, say, nameOf })),
      language,
    );
  const there = shown.gaps.filter((id) => !shown.toCut.includes(id));
  return (
    <>
      {own !== undefined && own.forbidden.length > 0 && (
        <p class="warning">{say('division-own-forbidden', { gaps: named(own.forbidden) })}</p>
      )}
      <fieldset class="division-ways">
        <legend>{say('division-choose')}</legend>
        {all.map((way, i) => (
          <label key={i}>
            <input type="radio" name="division-way" checked={i === at} onChange={() => setAt(i)} />
            <span>
              <b>{nameFor(way)}</b>
              {way !== own && isTaken(way) && <strong>{say('division-here')}</strong>}
              {adviceOn(way, advised, say).map((line) => (
                <strong key={line}>{line}</strong>
              ))}
              <span>{waySaid(way, say, numbers.share.bind(numbers))}</span>
              <small>{proofSaid(way, say)}</small>
            </span>
          </label>
        ))}
      </fieldset>
      <table class="division-asked">
        <caption>{say('division-table')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('division-district')}</th>
            <th scope="col">{say('division-share')}</th>
            <th scope="col">{say('division-draws')}</th>
            <th scope="col">{say('division-verdict')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.asked.map(({ stage, share, often, usable, verdict }, i) => (
            <tr key={stage}>
              <th scope="row">
                {districtLetter(i)} <small>{stageSaid(stage, sheet, say)}</small>
              </th>
              <td data-label={say('division-share')}>{numbers.share(share)}</td>
              <td data-label={say('division-draws')}>
                {say(verdict === 'unknown' ? 'division-of-unread' : 'division-of', {
                  often: numbers.amps(often),
                  usable: numbers.amps(usable, 'at-most'),
                })}
              </td>
              <td data-label={say('division-verdict')}>
                <span class={`tag ${TAGS[verdict]}`}>{say(`division-verdict-${verdict}`)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {shown.asked.some(({ verdict }) => verdict === 'unknown') && <p class="small">{say('division-unread')}</p>}
      {shown.gaps.length === 0 && <p>{say(isGappedAnyway(sheet) ? 'division-no-gaps-between' : 'division-no-gaps')}</p>}
      {shown.toCut.length > 0 && <p>{say('division-gaps', { gaps: named(shown.toCut) })}</p>}
      {there.length > 0 && <p>{say('division-there', { gaps: named(there) })}</p>}
      <p class="acts">
        {isTaken(shown) ? (
          <b>{say('division-is-taken')}</b>
        ) : (
          <button class="button" type="button" onClick={() => onTake(shown, nameFor(shown))}>
            {say('division-take')}
          </button>
        )}
      </p>
    </>
  );
}

/** The same sections with the same stages. */
const isSame = (one: Pick<Way, 'districts'>, other: Pick<Way, 'districts'>): boolean => written(one) === written(other);
const has = (ways: readonly Way[], one: Way): boolean => ways.some((way) => isSame(way, one));
const written = ({ districts }: Pick<Way, 'districts'>): string =>
  JSON.stringify(districts.map(({ stage, sections }) => [stage, sections.toSorted()]).toSorted());

/** What speaks for the way that is advised, and against one that spares gaps. */
function adviceOn(way: Way, advised: Way | undefined, say: Say): string[] {
  if (advised === undefined) return [];
  if (way === advised) return [say('division-advised')];
  return way.evenness !== 'good' && way.gaps.length < advised.gaps.length && way.districts.length > 1
    ? [say('division-fewer-gaps')]
    : [];
}

function waySaid({ gaps, toCut, anyway, asked, evenness }: Way, say: Say, share: (value: number) => string): string {
  if (asked.length < 2) return say('division-way-one');
  return say(anyway.length > 0 ? 'division-way-says-of' : 'division-way-says', {
    gaps: gaps.length,
    all: gaps.length + anyway.length,
    cut: toCut.length,
    shares: asked.map((one) => share(one.share)).join(' : '),
    fits: asked.map((one) => share(one.fits)).join(' : '),
    even: say(`division-${evenness}`),
  });
}

function proofSaid({ proof }: Way, say: Say): string {
  if (proof === undefined) return say('division-proof-own');
  return say(`division-proof-${proof.kind}`);
}
