// The parts of a wiring that are to blame, by their names.
import type { Say } from '../../words/index.ts';

/** `feeder-3` is "feeder 3": an id, and which one of its kind. */
export const partsOf = (parts: readonly string[], say: Say): string =>
  parts
    .map((part) => {
      const [, kind = part, number = ''] = /^(.*)-(\d+)$/.exec(part) ?? [];
      return say(`along-part-${kind}`, { number }).trim();
    })
    .join(say('along-parts-between'));
