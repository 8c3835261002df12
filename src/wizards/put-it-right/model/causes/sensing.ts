// Modules that watch the current of a stretch to report a train.
import { QUIET } from '../families.ts';
import type { CauseRow } from '../rows.ts';
import { always, rarely, sometimes, usually } from '../words.ts';

export const SENSING = [
  // A detector reports or feeds what is not there: a leak, a lamp behind it, wires that belong to another part, a threshold set too low.
  {
    id: 'detector-false',
    fixClass: 'detector-false',
    minutes: 30,
    needs: { sensing: ['some'] },
    shows: {
      ...QUIET,
      trouble: { 'shown-occupied': always, 'accessories-wrong': rarely },
      when: { always: usually, 'now-and-then': sometimes },
      where: { part: usually, spot: usually },
      vehicles: { 'none-needed': always },
      since: { 'track-or-wires': usually, nothing: usually, time: sometimes, 'supply-or-unit': sometimes },
      short: { none: usually, weak: sometimes },
      ohms: { open: usually, some: usually },
      cut: { 'both-cut': usually, 'one-joined': sometimes, 'faintly-joined': sometimes },
      reports: { 'one-occupied': always, wild: sometimes },
      unplugging: { detector: usually, 'lamp-or-decoder': sometimes, 'no-change': sometimes },
      'unfed-test': { stops: usually, 'lit-beyond': sometimes },
      // Where damp brings it, the damp itself is the fault.
      weather: { 'no-matter': usually, damp: rarely },
      'along-the-track': { nothing: always, wet: sometimes },
    },
  },

  // The two long wires of a feeder lie side by side: a little of the fast signal passes from one to the other, and the detector takes it for a
  // train.
  {
    id: 'detector-crosstalk',
    fixClass: 'detector-crosstalk',
    minutes: 20,
    needs: { sensing: ['some'] },
    shows: {
      ...QUIET,
      trouble: { 'shown-occupied': always },
      when: { always: usually, 'now-and-then': sometimes },
      where: { far: usually, part: usually },
      vehicles: { 'none-needed': always, 'every-one': rarely },
      since: { 'supply-or-unit': usually, 'track-or-wires': usually, nothing: rarely },
      reports: { 'long-wires': usually, 'one-occupied': sometimes },
      unplugging: { detector: usually, 'no-change': sometimes },
    },
  },

  // A detector of the diode kind takes a volt from its stretch: slower or dimmer there, a small step at its ends.
  {
    id: 'detector-drop',
    fixClass: 'detector-drop',
    minutes: 30,
    needs: { sensing: ['some'] },
    shows: {
      ...QUIET,
      trouble: { 'slow-or-dim': usually, jerks: usually, 'shown-occupied': rarely, 'accessories-wrong': rarely },
      when: { 'at-the-gap': usually, 'at-one-place': usually, always: sometimes },
      where: { part: usually, spot: usually, gaps: usually },
      vehicles: { 'every-one': always, 'lit-or-long': sometimes },
      since: { 'track-or-wires': usually, 'supply-or-unit': sometimes, nothing: sometimes },
      volts: { low: usually, full: usually },
      step: { idle: usually, none: sometimes },
      loss: { bus: usually, none: sometimes },
      unplugging: { detector: always },
      reports: { fine: always, wild: rarely },
    },
  },
] as const satisfies readonly CauseRow[];
