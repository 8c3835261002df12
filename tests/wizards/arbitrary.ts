// Any answers that a person could give, for properties.
import fc from 'fast-check';
import { TOOLS } from '../../src/engine/index.ts';
import type { Answers } from '../../src/wizards/planning/answers.ts';
import type { Answer, Field } from '../../src/wizards/planning/field.ts';
import { UNKNOWN } from '../../src/wizards/planning/field.ts';
import type { Told } from '../../src/wizards/put-it-right/address.ts';
import { CANNOT } from '../../src/wizards/put-it-right/address.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { ISOLATION, PHASE } from '../../src/wizards/put-it-right/states.ts';
import { ALL_FIELDS } from './told.ts';

/** An answer to a field: an option, a number or a range in range, or not knowing. Numbers as people type them, four digits at most. */
export function answerTo(field: Field): fc.Arbitrary<Answer> {
  return fc.oneof({ weight: 1, arbitrary: fc.constant(UNKNOWN) }, { weight: 6, arbitrary: known(field) });
}

function known(field: Field): fc.Arbitrary<Answer> {
  if (field.kind === 'choice')
    return fc.constantFrom(...field.options).map((option): Answer => ({ kind: 'choice', option }));
  const { least, most } = field;
  const number =
    field.quantity === 'count'
      ? fc.oneof(fc.integer({ min: least, max: Math.min(most, 8) }), fc.integer({ min: least, max: most }))
      : fc
          .double({ min: least, max: most, noNaN: true })
          .map((value) => Math.min(most, Math.max(least, Number(value.toPrecision(4)))));
  const positive = number.map((value) => value + 0);
  if (field.range !== true)
    return positive.map((value): Answer => ({ kind: 'number', span: { from: value, to: value } }));
  return fc
    .tuple(positive, positive)
    .map(([a, b]): Answer => ({ kind: 'number', span: { from: Math.min(a, b), to: Math.max(a, b) } }));
}

/** Some or all fields answered. */
export const answers: fc.Arbitrary<Answers> = fc
  .tuple(
    ...ALL_FIELDS.map((field) =>
      fc.option(
        answerTo(field).map((answer) => [field.id, answer] as const),
        { freq: 12 },
      ),
    ),
  )
  .map((entries) => Object.fromEntries(entries.filter((entry) => entry !== null)));

/** Every field answered. */
export const fullAnswers: fc.Arbitrary<Answers> = fc
  .tuple(...ALL_FIELDS.map((field) => answerTo(field).map((answer) => [field.id, answer] as const)))
  .map((entries) => Object.fromEntries(entries));

/** Whatever somebody can have seen and done in a walk. */
export const anyTold: fc.Arbitrary<Told> = fc.record({
  seen: fc
    .array(fc.constantFrom(...SIGN_MODEL.checks), { maxLength: 9 })
    .chain((checks) =>
      fc
        .tuple(...checks.map(({ id, options }) => fc.constantFrom(...options, CANNOT).map((one) => [id, one] as const)))
        .map((pairs): Readonly<Record<string, string>> => Object.fromEntries(pairs)),
    ),
  toldFirst: fc.boolean(),
  tools: fc.option(fc.subarray([...TOOLS]), { nil: undefined }),
  tried: fc.subarray(['reversed', 'no-feed', 'switch-off-now', 'dirty'], { maxLength: 3 }),
  left: fc.constant([]),
  undoing: fc.option(fc.constantFrom('voltage-step', 'no-signal'), { nil: undefined }),
  stayedAway: fc.boolean(),
  doing: fc.option(fc.constantFrom('reversed', 'no-signal', 'one-rail'), { nil: undefined }),
  fixed: fc.subarray(['voltage-step', 'second-path', 'reversed'], { maxLength: 2 }),
  isolation: fc.option(fc.constantFrom(...ISOLATION), { nil: undefined }),
  phase: fc.option(fc.constantFrom(...PHASE), { nil: undefined }),
});
