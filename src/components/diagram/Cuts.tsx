// At the cut ends of a strip on paper: what lies beyond is hidden, and each track that goes on has a letter, the same in both strips.
import type { Box } from '../../wizards/sheet-drawing/index.ts';
import { type GoesOn, MARGIN } from './strips.ts';

interface CutsProps {
  readonly strip: Box;
  readonly marks: ReadonlyMap<number, readonly GoesOn[]>;
}

export const Cuts = ({ strip: { x, y, width, height }, marks }: CutsProps) => (
  <>
    {[
      { cut: x, beyond: -MARGIN },
      { cut: x + width, beyond: 0 },
    ].map(({ cut, beyond }) => {
      const here = marks.get(cut);
      if (here === undefined) return null;
      return (
        <g key={cut} class="cut-end">
          <rect class="clear" x={cut + beyond - (beyond < 0 ? 2 : 0)} y={y} width={MARGIN + 2} height={height} />
          {here.map((mark) => (
            <g key={mark.letter} transform={`translate(${cut + beyond + MARGIN / 2} ${mark.y})`}>
              <circle r="8.5" />
              <text y="4">{mark.letter}</text>
            </g>
          ))}
        </g>
      );
    })}
  </>
);
