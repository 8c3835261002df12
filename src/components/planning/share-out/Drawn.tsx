// The picture of the answer to "Where do I divide the layout?". What draws it comes once it is wanted.

import { useCallback } from 'preact/hooks';
import type { ShareFound } from '../../../wizards/share-out/index.ts';
import { fetchStyles, useLoaded } from '../../shared/index.ts';
import type { Say } from '../../words/index.ts';
import { unitName } from './sharing-texts.ts';

interface DrawnProps {
  readonly found: ShareFound;
  /** The address of the styles of the diagram. */
  readonly styles: string;
  readonly say: Say;
}

export function Drawn({ found, styles, say }: DrawnProps) {
  const { sheet, ways } = found;
  const load = useCallback(async () => {
    const [{ Picture }] = await Promise.all([import('./picture.ts'), fetchStyles(styles)]);
    return { Picture };
  }, [styles]);
  const { value } = useLoaded(load);
  const [way] = ways;
  if (sheet === undefined || way === undefined) return null;
  return (
    // What stands below does not move when it comes.
    <div class="share-picture" style={{ minBlockSize: '14rem' }}>
      {value !== undefined && (
        <value.Picture
          sheet={sheet}
          districts={way.districts}
          gaps={way.gaps.map(({ joint }) => joint)}
          units={way.districts.map((_, at) => unitName(at, found, say))}
          nameOf={({ id }) => say(`part-${id}`)}
          say={say}
        />
      )}
    </div>
  );
}
