// Which way round the rails meet at the gap, and what flows there while a vehicle joins the two parts.
import { AT_THE_GAP, SHORT_FOR_A_MOMENT } from '../families.ts';
import type { CauseRow } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const POLARITY = [
  // The two track wires of one part are swapped: its rails are the other way round.
  {
    id: 'feed-reversed',
    fixClass: 'reversed',
    minutes: 15,
    needs: { parts: ['several'], rails: ['two'] },
    shows: {
      ...AT_THE_GAP,
      trouble: SHORT_FOR_A_MOMENT,
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: rarely },
      sides: { reversed: always },
      swap: { cured: always, 'no-change': rarely },
      sparks: { 'at-the-gap': usually, none: sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
