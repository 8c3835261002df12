// A small fault model of a gap at which trains stop, in the five words, for the tests of the diagnosis.
import type { CheckRow, FaultModel } from '../../../src/engine/diagnosis/model.ts';
import type { WalkState } from '../../../src/engine/diagnosis/standing.ts';

const plain = { risk: 0, needs: [], tool: 'eyes' } as const;

export const CHECKS: readonly CheckRow[] = [
  {
    ...plain,
    id: 'anything-hot',
    minutes: 1,
    options: ['no', 'yes'],
    otherwise: ['always', 'never'],
    when: { 'metal-across': ['usually', 'sometimes'] },
    danger: { yes: 'switch-off' },
    establishes: { no: ['nothing-got-hot'] },
    first: true,
  },
  {
    ...plain,
    id: 'far-part-lit',
    minutes: 2,
    options: ['dark', 'deaf', 'runs'],
    otherwise: ['rarely', 'rarely', 'usually'],
    when: {
      'feed-missing': ['always', 'never', 'never'],
      'stage-off': ['always', 'never', 'never'],
      'link-missing': ['sometimes', 'usually', 'never'],
      'metal-across': ['usually', 'rarely', 'never'],
    },
  },
  {
    ...plain,
    id: 'stage-lamp',
    minutes: 1,
    options: ['off', 'on', 'blinks'],
    otherwise: ['never', 'always', 'rarely'],
    when: { 'stage-off': ['always', 'never', 'never'], 'metal-across': ['sometimes', 'never', 'usually'] },
  },
  {
    ...plain,
    id: 'volts-far',
    minutes: 3,
    tool: 'multimeter',
    options: ['none', 'low', 'full'],
    otherwise: ['rarely', 'rarely', 'usually'],
    when: {
      'feed-missing': ['always', 'never', 'never'],
      'stage-off': ['always', 'never', 'never'],
      'thin-wire': ['never', 'usually', 'sometimes'],
      'metal-across': ['usually', 'sometimes', 'never'],
    },
  },
  {
    ...plain,
    id: 'load-test',
    minutes: 5,
    tool: 'resistor',
    risk: 1,
    needs: ['vehicles-off'],
    options: ['holds', 'sags'],
    otherwise: ['usually', 'sometimes'],
    when: { 'thin-wire': ['rarely', 'always'] },
    establishes: { holds: ['load-test-passed'] },
  },
  {
    ...plain,
    id: 'coin-test',
    minutes: 1,
    tool: 'coin',
    risk: 2,
    needs: ['nothing-got-hot', 'load-test-passed', 'vehicles-off'],
    options: ['trips', 'does-not'],
    otherwise: ['usually', 'rarely'],
    when: { 'thin-wire': ['rarely', 'usually'], 'feed-missing': ['never', 'always'], 'stage-off': ['never', 'always'] },
  },
];

export const MODEL: FaultModel = {
  faults: [
    { id: 'feed-missing', fixClass: 'connect-feed', minutes: 10 },
    { id: 'feed-wire-broken', fixClass: 'connect-feed', minutes: 20 },
    { id: 'stage-off', fixClass: 'switch-on-stage', minutes: 3 },
    { id: 'link-missing', fixClass: 'plug-in-link', minutes: 4 },
    { id: 'metal-across', fixClass: 'clear-the-rails', minutes: 15 },
    { id: 'thin-wire', fixClass: 'thicker-wire', minutes: 90 },
    { id: 'overheated', fixClass: 'switch-off', minutes: 5 },
  ],
  checks: CHECKS,
  complaints: [
    {
      id: 'stops-at-gap',
      priors: {
        'feed-missing': 30,
        'feed-wire-broken': 5,
        'stage-off': 25,
        'link-missing': 25,
        'metal-across': 10,
        'thin-wire': 5,
      },
    },
    { id: 'slow-far-away', priors: { 'thin-wire': 60, 'metal-across': 10, 'something-else': 30 } },
  ],
};

/** Minutes of a call and of a wrong repair that the expectations here are reckoned with; everybody answers right. */
export const COSTS = { callMinutes: 60, wrongFixMinutes: 10, slip: 0 } as const;

export const EVERYTHING = [
  'wire',
  'coin',
  'lamps',
  'second-locomotive',
  'second-supply',
  'resistor',
  'multimeter',
] as const;

export const START: WalkState = { answers: [], setAside: [], skipped: [], tools: EVERYTHING };

/** `check=option check=option` as answers. */
export const answers = (...given: string[]): WalkState['answers'] =>
  given.map((one) => {
    const [check = '', option = ''] = one.split('=');
    return { check, option };
  });
