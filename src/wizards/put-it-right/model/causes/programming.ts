// The programming track reads nothing, or programming reaches locomotives it was not meant for.
import { QUIET } from '../families.ts';
import type { CauseRow } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const PROGRAMMING = [
  // The programming track reads nothing and nothing is broken: dirty wheels, sound or stored energy, too little current for the answer, or the
  // locomotive is not alone on it.
  {
    id: 'cannot-be-read',
    fixClass: 'cannot-be-read',
    minutes: 10,
    shows: {
      ...QUIET,
      trouble: { 'cannot-be-read': always },
      when: { 'while-programming': always, always: sometimes, 'now-and-then': rarely },
      where: { spot: usually, everywhere: usually },
      vehicles: { 'one-only': usually, 'one-kind': usually, 'every-one': sometimes },
      since: { vehicle: usually, 'vehicle-opened': usually, nothing: usually, 'supply-or-unit': rarely, time: rarely },
      contact: { good: usually, dirty: usually },
      'one-loco': { 'like-the-others': usually, 'runs-badly': rarely },
      'vehicle-in-hand': { nothing: usually, wipers: usually },
      programming: { 'cannot-read': always },
      // That piece is clean, and nothing else stands on it.
      'programming-piece': { 'no-help': usually, reads: usually },
      'written-anew': { 'no-help': usually, 'not-taken': sometimes, cured: rarely },
    },
  },

  // Nothing comes to the programming track: a wire, plug, switch or joint on the way from the output is open, or it hangs on another output.
  {
    id: 'programming-not-fed',
    fixClass: 'programming-not-fed',
    minutes: 15,
    shows: {
      ...QUIET,
      trouble: { 'cannot-be-read': always },
      when: { 'while-programming': always, always: usually, 'now-and-then': rarely },
      where: { spot: usually, everywhere: usually },
      vehicles: { 'every-one': always, 'one-only': rarely },
      since: { 'track-or-wires': usually, nothing: usually, 'supply-or-unit': sometimes, 'new-place': sometimes },
      'one-loco': { 'like-the-others': always },
      programming: { 'cannot-read': always },
      'programming-piece': { reads: always },
      // It takes nothing either.
      'written-anew': { 'no-help': usually, 'not-taken': always },
    },
  },

  // Programming goes out to the whole layout, since it is set to the main track or the output feeds it: all that stand there take it.
  {
    id: 'read-on-main',
    fixClass: 'programs-others',
    minutes: 10,
    shows: {
      ...QUIET,
      trouble: { 'stops-lit': usually, 'runs-by-itself': sometimes, jerks: sometimes, 'cannot-be-read': usually },
      when: { 'while-programming': usually, always: sometimes, 'now-and-then': sometimes },
      where: { everywhere: always },
      vehicles: { 'every-one': usually, 'one-only': sometimes, many: sometimes },
      since: { setting: usually, 'supply-or-unit': rarely, nothing: sometimes },
      'unit-shows': { ready: usually, stopped: sometimes },
      commands: { arrive: usually, 'one-deaf': sometimes },
      settings: { 'programs-main': always },
      'one-loco': { 'another-number': usually, 'like-the-others': usually, deaf: sometimes },
      'decoder-settings': { 'other-number': usually, right: sometimes, 'direct-allowed': rarely },
      programming: { 'others-take-it': always, 'cannot-read': rarely },
      'written-anew': { cured: usually, 'no-help': sometimes },
    },
  },
] as const satisfies readonly CauseRow[];
