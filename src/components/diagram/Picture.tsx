// A division as one picture: track by its districts, new gaps by their numbers. Nothing in it can be chosen.
import { useMemo } from 'preact/hooks';
import type { Sheet } from '../../wizards/sheet/index.ts';
import { type Districts, dress, layOut, type NameOf } from '../../wizards/sheet-drawing/index.ts';
import type { Say } from '../words/index.ts';
import { DistrictTag } from './DistrictTag.tsx';
import { StateKey, TagKeys } from './Key.tsx';
import { lookOf } from './look.ts';
import { scrolled } from './Stages.tsx';
import type { Shown } from './shown.ts';
import { Feed, JointMark, Lines, Name, Tag, UNREAD } from './Track.tsx';

/** From here on names would be too small to read where all of it is in sight, pixels. Source: own-choice. */
const LARGE = 900;

/** As wide as its place on a phone, pixels, and letters there. Source: own-choice (no text of a figure below 12 px). */
const PHONE = { width: 320, letters: 12 } as const;
/** Letters of districts and gaps in the drawing itself, pixels. */
const LETTERS = 14;
/** A wider one would have its letters on each other there: it is drawn half as large, and moved about. Source: own-choice. */
const MOST_ON_PHONE = 1250;

interface PictureProps {
  readonly sheet: Sheet;
  readonly districts: Districts;
  /** Joints to cut, in the order in which they are numbered elsewhere. */
  readonly gaps: readonly string[];
  /** Who feeds each district, in their order. */
  readonly units: readonly string[];
  readonly nameOf: NameOf;
  readonly say: Say;
}

export function Picture({ sheet, districts, gaps, units, nameOf, say }: PictureProps) {
  const laid = useMemo(() => layOut(sheet, nameOf), [sheet]);
  const dressed = useMemo(() => dress(sheet, districts), [sheet, districts]);
  const names = new Map(sheet.sections.map((one) => [one.id, nameOf(one)]));
  const others = new Map([...dressed.joints].filter(([id]) => !gaps.includes(id)));
  const fits = laid.width <= MOST_ON_PHONE;
  const classes = ['diagram picture', ...(laid.width > LARGE ? ['large'] : []), ...(fits ? ['fits'] : [])];
  const larger = (fits ? laid.width / PHONE.width : 2) * (PHONE.letters / LETTERS);
  return (
    <figure class={classes.join(' ')}>
      <div class="diagram-view" {...scrolled(say('diagram-view'))}>
        <svg
          viewBox={`0 0 ${laid.width} ${laid.height}`}
          style={{ '--width': `${laid.width}px`, '--larger': larger }}
          role="img"
          aria-label={say('diagram-divided')}
        >
          <Lines laid={laid} dressed={dressed} />
          {laid.sections.map((section) => (
            <Section key={section.id} section={section} sheet={sheet} dressed={dressed} />
          ))}
          {laid.joints.map(({ id, at: { x, y }, turned }) => (
            <g key={id} class="joint" transform={`translate(${x} ${y})`}>
              {gaps.includes(id) ? (
                <Numbered number={gaps.indexOf(id) + 1} />
              ) : (
                <JointMark state={others.get(id)?.state ?? 'joined'} turned={turned} />
              )}
            </g>
          ))}
          <g class="names" {...UNREAD}>
            {laid.sections.map((section) => (
              <g key={section.id}>
                <Letter section={section} dressed={dressed} />
                <Name section={section} names={names} />
              </g>
            ))}
          </g>
        </svg>
      </div>
      <ul class="diagram-key">
        {dressed.districts.map(({ letter }, place) => (
          <li key={letter}>
            <DistrictTag place={place}>
              {say('diagram-unit', { district: letter, unit: units[place] ?? '' })}
            </DistrictTag>
          </li>
        ))}
        <li>
          <svg width="32" height="32" viewBox="-16 -16 32 32" aria-hidden="true">
            <Numbered number={1} />
          </svg>
          {say('diagram-key-numbered')}
        </li>
        {/* A gap that is there in any case, as at the end of a loop, is no place to divide. */}
        {[...others.values()].some(({ state }) => state === 'to-cut') && (
          <StateKey state="to-cut">{say('diagram-key-anyway')}</StateKey>
        )}
        <TagKeys sheet={sheet} say={say} />
      </ul>
    </figure>
  );
}

interface SectionProps extends Pick<Shown, 'sheet' | 'dressed'> {
  readonly section: Shown['laid']['sections'][number];
}

/** What a section is, where it is fed, and the plate of its letter, each by itself: on a phone they are drawn larger. */
function Section({ section: { id, left, right, y }, sheet, dressed }: SectionProps) {
  const place = dressed.districtOf.get(id);
  const tags = sheet.sections.find((one) => one.id === id)?.tags ?? [];
  return (
    <>
      {tags.map((tag) => (
        <Tag key={tag} tag={tag} left={left} right={right} y={y} />
      ))}
      {place !== undefined && dressed.districts[place]?.fed.includes(id) && <Feed x={left + 14} y={y} />}
      {place !== undefined && (
        <rect class={`plate ${lookOf(place)}`} x={(left + right) / 2 - 10} y={y - 10} width="20" height="20" rx="4" />
      )}
    </>
  );
}

function Letter({ section: { id, left, right, y }, dressed }: Omit<SectionProps, 'sheet'>) {
  const letter = dressed.districts[dressed.districtOf.get(id) ?? -1]?.letter;
  if (letter === undefined) return null;
  return (
    <text class="letter" x={(left + right) / 2} y={y + 5}>
      {letter}
    </text>
  );
}

const Numbered = ({ number }: { readonly number: number }) => (
  <g class="numbered">
    <circle class="ring" r="13" />
    <text class="letter" y="5">
      {number}
    </text>
  </g>
);
