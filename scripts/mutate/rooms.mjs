// The rooms whose numbers people act on, and the tests that have to notice when something in them is changed.

const TESTS = 'tests/';

/** @param {readonly string[]} tests folders or files below tests */
const room = (...tests) => tests.map((test) => TESTS + (test.endsWith('.ts') ? test : `${test}/**/*.test.ts`));

/** Files of tests that take seconds, where others of their room take less. */
export const SLOW = [
  'engine/diagnosis/step.test.ts',
  'engine/districts/any-layout.test.ts',
  'engine/power/own-districts.test.ts',
  'engine/power/remedies.test.ts',
  'engine/power/supplies.test.ts',
  'engine/sign-belief.test.ts',
  'reference/diagnosis.test.ts',
  'reference/districts-brute-force.test.ts',
  'reference/joint-law.test.ts',
  'reference/sureness.test.ts',
  'wizards/plan.test.ts',
  'wizards/results.test.ts',
  'wizards/situations-club.test.ts',
  'wizards/situations-which-supply.test.ts',
];

export const ROOMS = {
  'engine/circuit': room('engine/circuit', 'reference/network.test.ts'),
  'engine/crossing': room('engine/crossing', 'reference/crossing.test.ts', 'wizards/situations-which-supply.test.ts'),
  'engine/diagnosis': room('engine/diagnosis', 'engine/sign-belief.test.ts', 'reference/diagnosis.test.ts'),
  'engine/districts': room(
    'engine/districts',
    'reference/districts.test.ts',
    'reference/districts-brute-force.test.ts',
  ),
  'engine/power': room(
    'engine/power',
    'reference/common-practice.test.ts',
    'reference/demand.test.ts',
    'reference/joint-law.test.ts',
    'reference/sureness.test.ts',
    'reference/worked-examples.test.ts',
    'reference/standards.test.ts',
  ),
  'engine/wiring': room(
    'engine/wiring',
    'reference/network.test.ts',
    'reference/short-circuit.test.ts',
    'reference/wire.test.ts',
    'reference/worked-examples.test.ts',
  ),
  'wizards/enough-current': room(
    'wizards/reckoned.test.ts',
    'wizards/situations-enough-current.test.ts',
    'wizards/situations-club.test.ts',
    'wizards/results.test.ts',
    'wizards/surer.test.ts',
    'wizards/graph.test.ts',
  ),
  'wizards/wire-it': room(
    'wizards/situations-wire-it.test.ts',
    'wizards/wire-it.test.ts',
    'wizards/graph.test.ts',
    'wizards/results.test.ts',
  ),
  'wizards/which-supply-where': room(
    'wizards/situations-which-supply.test.ts',
    'wizards/graph.test.ts',
    'wizards/results.test.ts',
  ),
  'wizards/share-out': room('wizards/situations-share-out.test.ts', 'wizards/graph.test.ts', 'wizards/results.test.ts'),
  'wizards/plan': room(
    'wizards/plan-track.test.ts',
    'wizards/plan.test.ts',
    'wizards/plan-csv.test.ts',
    'wizards/first-power-up.test.ts',
    'content/plan.test.ts',
  ),
  'wizards/safety': room(
    'wizards/check-safety.test.ts',
    'wizards/forbidden-acts.test.ts',
    'wizards/graph.test.ts',
    'content/acts.test.ts',
  ),
};
