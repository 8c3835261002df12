// The mains: unplug, leave unplugged, a licensed electrician. No check goes further than that.
import { QUIET } from '../families.ts';
import type { CauseRow } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const HOUSE = [
  // The fuse or the residual-current switch of the house goes when something of the railway is plugged in or switched on.
  {
    id: 'house-protection',
    fixClass: 'house-protection',
    minutes: 1,
    shows: {
      trouble: { 'house-fuse': always },
      when: { 'at-switching-on': usually, 'now-and-then': sometimes, 'after-minutes': rarely },
      where: { everywhere: usually, 'off-track': usually },
      vehicles: { 'none-needed': always },
      since: {
        supply: sometimes,
        'supply-or-unit': usually,
        nothing: usually,
        time: sometimes,
        'new-place': sometimes,
      },
      'goes-off': { 'all-at-once': always },
      'comes-back': {
        by: 'goes-off',
        is: {
          nothing: { 'never-off': always },
          'that-part': { stays: usually, button: usually },
          'all-at-once': { stays: usually, button: usually },
          'one-after-the-other': { stays: usually, button: usually },
        },
      },
      'unit-shows': { dark: always },
      volts: { none: always },
      commands: { none: always },
      short: 'unaffected',
      hot: { nothing: usually, supply: sometimes },
      draw: 'unaffected',
      before: { snaps: always },
      'supply-lamp': { dark: always },
      mains: { off: always },
      'supply-volts': { none: always },
      'goes-with-supply': { 'goes-along': usually, stays: usually },
    },
  },

  // A tingle or a shock from rails, cases or other metal parts.
  {
    id: 'tingle',
    fixClass: 'tingle',
    minutes: 1,
    shows: {
      ...QUIET,
      trouble: { tingle: always },
      when: { always: usually, 'now-and-then': sometimes },
      where: { everywhere: usually, part: sometimes, 'off-track': sometimes },
      vehicles: { 'none-needed': usually, 'every-one': usually },
      since: {
        supply: sometimes,
        'supply-or-unit': usually,
        nothing: usually,
        time: sometimes,
        'track-or-wires': sometimes,
      },
      hot: { nothing: always, supply: rarely },
      'goes-with-supply': { 'goes-along': usually, stays: usually },
    },
  },
] as const satisfies readonly CauseRow[];
