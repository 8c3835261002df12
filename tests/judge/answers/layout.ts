// What the layout is, whatever its trouble.
import { isBlink } from '../complaints.ts';
import type { Answered } from './shared.ts';
import { hasBridge } from './shared.ts';

/** Two parts with two rails, without accessories, live frogs or a computer: what the table has not is answered so only where it is a fact of every table. */
export const LAYOUT_ANSWERS = {
  'how-many-parts': () => 'several',
  'how-it-protects': ({ layout }) => {
    if (isBlink(layout)) return 'blinks';
    return layout.stages[1].comesBack === 'latched' ? 'latches' : 'tries-again';
  },
  'what-is-between': ({ layout }) =>
    layout.partReverser.kind === 'automatic' || (layout.hasLoop && layout.loopReverser.kind === 'automatic')
      ? 'reverser'
      : 'nothing',
  'detectors-there': ({ layout }) => (layout.diodeDetector || hasBridge(layout, 'detector') ? 'some' : 'none'),
  'common-wire': ({ layout }) => (layout.common === 'floating' ? 'floating' : 'joined'),
  'how-many-rails': () => 'two',
  'what-trains': ({ layout }) => {
    if (layout.consumers.some(({ kind }) => kind === 'coaches')) return 'filament-lamps';
    const isHungryAtStart = layout.consumers.some(({ inrush, standing }) => inrush > 3 * standing);
    return layout.usual === 'stored' || isHungryAtStart ? 'sound-or-stored' : 'plain';
  },
  'live-frogs': ({ layout }) => (hasBridge(layout, 'live-frog', 'frog-wire') ? 'live' : 'insulated'),
} as const satisfies Answered;
