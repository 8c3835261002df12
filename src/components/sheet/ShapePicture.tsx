// The track of a sheet in a few strokes, as big as its place: what one chooses a shape by.
import type { Sheet } from '../../wizards/sheet/index.ts';

/** Units of the drawing for a column and a row, round the edge, and of a loop. */
const COLUMN = 20;
const ROW = 18;
const EDGE = 12;
const LOOP = 11;

export function ShapePicture({ sheet }: { readonly sheet: Sheet }) {
  const places = new Map(
    sheet.sections.flatMap(({ id, at }) =>
      at === undefined ? [] : [[id, { x: at.column * COLUMN, y: at.row * ROW }] as const],
    ),
  );
  const width = Math.max(...[...places.values()].map(({ x }) => x)) + 2 * EDGE;
  const height = Math.max(...[...places.values()].map(({ y }) => y)) + 2 * EDGE;
  return (
    <svg class="shape-picture" viewBox={`${-EDGE} ${-EDGE} ${width} ${height}`} aria-hidden="true">
      <path
        d={sheet.joints
          .map(({ from, to }) => {
            const [a, b] = [places.get(from), places.get(to)];
            return a === undefined || b === undefined ? '' : `M${a.x} ${a.y}L${b.x} ${b.y}`;
          })
          .join('')}
      />
      {sheet.sections.map(({ id, tags = [] }) => {
        const place = places.get(id);
        if (place === undefined) return null;
        if (tags.includes('reversing')) return <circle key={id} cx={place.x} cy={place.y} r={LOOP} />;
        const isStation = tags.includes('station');
        return isStation && <path key={id} class="platform" d={`M${place.x - LOOP} ${place.y}h${2 * LOOP}`} />;
      })}
    </svg>
  );
}
