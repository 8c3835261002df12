// The controlling side: handhelds, radio, the control bus, a computer.
import { check } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const CONTROL_CHECKS = [
  // What do handhelds, radio or the computer do when it happens?
  // fine: they work as always · all-dead: no handheld works · one-dead: one handheld, the others work · restarts: they start anew at that moment ·
  // weak-bus: those far out are dim, slow or fall off the bus · late-or-lost: now and then a press is late or lost · acts-by-itself: something is driven,
  // stopped or switched on that nobody told · computer-silent: only the computer has no connection · only-by-computer: only what the computer
  // orders goes wrong.
  check({
    id: 'what-the-handhelds-do',
    minutes: 1,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'memory',
    options: [
      'fine',
      'all-dead',
      'one-dead',
      'restarts',
      'weak-bus',
      'late-or-lost',
      'acts-by-itself',
      'computer-silent',
      'only-by-computer',
    ],
    reads: 'control',
    reading: {
      fine: { fine: always, 'late-or-lost': rarely },
      'all-dead': { 'all-dead': always, restarts: rarely },
      'one-dead': { 'one-dead': always, 'all-dead': sometimes },
      restarts: { restarts: usually, 'all-dead': sometimes, fine: rarely },
      'weak-bus': { 'weak-bus': usually, 'one-dead': sometimes, 'late-or-lost': sometimes },
      'acts-by-itself': { 'acts-by-itself': always, fine: rarely },
      'comes-and-goes': { 'late-or-lost': always, fine: rarely },
      'computer-silent': { 'computer-silent': always, 'all-dead': rarely },
      'only-by-computer': { 'only-by-computer': usually, 'acts-by-itself': sometimes, fine: sometimes },
    },
  }),

  // A handheld at another socket, and another handheld at this socket; then what else hangs on the bus unplugged, one after the other. With what does
  // the trouble go?
  check({
    id: 'exchange-handhelds',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: [],
    source: 'eye',
    options: ['all-alike', 'with-the-handheld', 'with-the-socket', 'with-a-device'],
    reads: 'handheld-exchanged',
    reading: {
      'all-alike': 'all-alike',
      'with-the-handheld': { 'with-the-handheld': always, 'all-alike': rarely },
      'with-the-socket': { 'with-the-socket': always, 'all-alike': rarely },
      'with-a-device': { 'with-a-device': always, 'all-alike': rarely },
    },
  }),

  // Take the computer out: unplug it from the layout, everything off, and drive without it. Is it well?
  // cured · no-change: just the same, or there is no computer.
  check({
    id: 'without-the-computer',
    minutes: 3,
    tool: 'eyes',
    risk: 0,
    needs: ['power-off'],
    source: 'eye',
    options: ['cured', 'no-change'],
    reads: 'control',
    reading: {
      fine: 'no-change',
      'all-dead': { 'no-change': always, cured: rarely },
      'one-dead': 'no-change',
      restarts: { 'no-change': always, cured: rarely },
      'weak-bus': { 'no-change': always, cured: rarely },
      'acts-by-itself': { cured: always, 'no-change': sometimes },
      'comes-and-goes': { 'no-change': always, cured: rarely },
      'computer-silent': { cured: usually, 'no-change': sometimes },
      'only-by-computer': { cured: always, 'no-change': rarely },
    },
  }),

  // Volts d.c. on the control bus, where its instructions say: beside the command station, then at the far end, handhelds plugged in.
  // full: as in the instructions, at both · low: low at both · low-far: full beside it, low far out · none.
  check({
    id: 'meter-control-bus',
    minutes: 6,
    tool: 'multimeter',
    risk: 1,
    needs: [],
    source: 'instrument',
    unsure: 0.3,
    options: ['full', 'low', 'low-far', 'none'],
    reads: 'bus-volts',
    reading: {
      full: 'full',
      low: { low: always, 'low-far': rarely },
      'low-far': { 'low-far': always, low: rarely },
      none: 'none',
    },
  }),
] as const;
