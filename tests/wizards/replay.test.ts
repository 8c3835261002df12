import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { enoughCurrent } from '../../src/wizards/enough-current/flow.ts';
import { toAddress } from '../../src/wizards/planning/answers.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { answersTo, isWorkedOut, replay, surerIn, trainsIn, without } from '../../src/wizards/planning/replay.ts';
import { answers as anyAnswers, fullAnswers } from './arbitrary.ts';
import { read, told, WIZARDS } from './told.ts';

describe.each(WIZARDS)('the wizard $name', ({ machine, questions }) => {
  test('begins with its first question', () => {
    expect(replay(machine, {})).toMatchObject({ question: questions[0], trail: [], problems: [] });
  });

  test('any address brings back the very same state', () => {
    fc.assert(
      fc.property(anyAnswers, (given) => {
        const first = replay(machine, given);
        const again = replay(machine, read(toAddress(given)).answers);
        expect(again.snapshot.value).toEqual(first.snapshot.value);
        expect(again.used).toEqual(first.used);
        expect(again.question?.id).toBe(first.question?.id);
        expect(again.trail).toEqual(first.trail);
        expect(again.problems).toEqual(first.problems);
      }),
    );
  });

  test('the address of the answers on the way alone brings back the same state', () => {
    fc.assert(
      fc.property(anyAnswers, (given) => {
        const first = replay(machine, given);
        // Beyond the quick answer what cannot be is left out, and the quick answer stands.
        if (first.problems.length > 0 && surerIn(machine).some((id) => id === first.question?.id)) return;
        const again = replay(machine, read(toAddress(first.used)).answers);
        expect(again.snapshot.value).toEqual(first.snapshot.value);
        expect(again.used).toEqual(first.used);
      }),
    );
  });

  test('asks only its own questions, each at most once, in their order', () => {
    fc.assert(
      fc.property(fullAnswers, (given) => {
        const ids = replay(machine, given).trail.map(({ id }) => id);
        expect(ids).toEqual(questions.map(({ id }) => id).filter((id) => ids.includes(id)));
      }),
    );
  });

  test('with every field answered it stands at an outcome, or at numbers that do not go together', () => {
    fc.assert(
      fc.property(fullAnswers, (given) => {
        const { snapshot, question, problems } = replay(machine, given);
        expect(snapshot.status === 'done' || isWorkedOut(String(snapshot.value))).toBe(question === undefined);
        if (question !== undefined) expect(problems.length).toBeGreaterThan(0);
      }),
    );
  });

  test('taking back an answer asks that question again and keeps what was before', () => {
    fc.assert(
      fc.property(fullAnswers, fc.nat(), (given, at) => {
        const { trail, problems } = replay(machine, given);
        const question = trail[at % Math.max(1, trail.length)];
        if (question === undefined) return;
        // What does not go together beyond the quick answer is asked first.
        if (surerIn(machine).some((id) => id === question.id) && problems.length > 0) return;
        if (surerIn(machine).some((id) => id === question.id)) {
          expect(replay(machine, given, question.id).question?.id).toBe(question.id);
          return;
        }
        const back = replay(machine, without(given, question));
        expect(back.question?.id).toBe(question.id);
        expect(back.trail).toEqual(trail.slice(0, trail.indexOf(question)));
      }),
    );
  });

  test('everything unknown leads to an outcome without a single problem', () => {
    const unknown = Object.fromEntries(questions.flatMap(({ fields }) => fields.map(({ id }) => [id, 'unknown'])));
    const { snapshot, problems } = replay(machine, told(unknown));
    expect(problems).toEqual([]);
    expect(isWorkedOut(String(snapshot.value))).toBe(true);
  });
});

describe('a question with a part unanswered', () => {
  test('is still open', () => {
    expect(answersTo(QUESTIONS.coaches, told({ coaches: '4' }))).toBeUndefined();
    expect(answersTo(QUESTIONS.fleet, told({ modern: '4' }))).toBeUndefined();
  });
  test('is answered when that part is not asked', () => {
    expect(answersTo(QUESTIONS.coaches, told({ coaches: '0' }))).toEqual(told({ coaches: '0' }));
  });
});

describe('numbers that do not go together', () => {
  const machine = enoughCurrent;
  const before = { system: 'two-rail', aim: 'enough', scale: 'h0', draw: 'count' };
  const LABELS = Object.fromEntries(
    [...QUESTIONS['supply-label'].fields, ...QUESTIONS['unit-label'].fields].map(({ id }) => [id, 'unknown']),
  );

  test('more with sound than there are locomotives: that is asked again, and told how many there are', () => {
    const quick = { modern: '2', older: '1', moving: '1', ...LABELS };
    const { question, problems } = replay(machine, told({ ...before, ...quick, sound: '4', stored: '0' }));
    expect(question?.id).toBe('sound');
    expect(problems).toEqual([{ field: 'sound', because: 'more-than-trains', given: '4', least: 0, most: 3 }]);
  });

  test('more moving than there are, counted or measured', () => {
    const counted = { ...before, modern: '2', older: '1', sound: '0', stored: '0', moving: '4', evening: '2' };
    expect(replay(machine, told(counted))).toMatchObject({
      question: { id: 'moving' },
      problems: [{ field: 'moving', most: 3 }],
    });
    const measured = {
      ...before,
      draw: 'measured',
      trains: '2',
      running: '0.3 A',
      standing: '0.1 A',
      moving: '3',
      evening: '2',
      coaches: '0',
      accessories: '0',
      'own-use': 'bare',
    };
    expect(replay(machine, told(measured))).toMatchObject({
      question: { id: 'moving' },
      problems: [{ field: 'moving', most: 2 }],
    });
  });

  test('trains of the way not taken do not count', () => {
    const both = {
      ...before,
      modern: '2',
      older: '0',
      sound: '0',
      stored: '0',
      trains: '9',
      moving: '3',
      evening: '2',
    };
    expect(replay(machine, told(both))).toMatchObject({ question: { id: 'moving' }, problems: [{ most: 2 }] });
  });

  test('as many as there are go together', () => {
    const all = { ...before, modern: '2', older: '1', sound: '3', stored: '3', moving: '3', evening: '2' };
    expect(replay(machine, told(all)).question?.id).toBe('supply-label');
  });
});

describe('without locomotives', () => {
  test('nobody is asked how many move', () => {
    const machine = enoughCurrent;
    const none = {
      system: 'two-rail',
      aim: 'enough',
      scale: 'n',
      draw: 'count',
      modern: '0',
      older: '0',
      sound: '0',
      stored: '0',
    };
    expect(replay(machine, told(none)).question?.id).toBe('supply-label');
  });
  test('they are counted as none', () => {
    expect(trainsIn(told({ modern: '0', older: '0' }))).toBe(0);
    expect(trainsIn(told({ modern: 'unknown', older: '2' }))).toBe(5);
    expect(trainsIn({})).toBe(0);
  });
});
