// Whoever can check hardly anything is not asked on and on.
import { expect, test } from 'vitest';
import { CANNOT, NOTHING_TOLD, replayWalk } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS, SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';

const MOST = 10;
const FIRST = new Set(SIGN_MODEL.checks.filter(({ first }) => first === true).map(({ id }) => id));

/** The checks that are asked of somebody who can check none of them, after what was told. */
function askedOf(complaint: (typeof COMPLAINT_IDS)[number], told: Readonly<Record<string, string>>) {
  let seen: Readonly<Record<string, string>> = { 'danger-now': 'none', ...told };
  const asked: string[] = [];
  for (;;) {
    const walk = replayWalk(complaint, { ...NOTHING_TOLD, toldFirst: true, tools: [], seen }, seen);
    if (walk.check === undefined || asked.length > MOST + 5) return { asked, walk };
    asked.push(walk.check);
    seen = { ...seen, [walk.check]: CANNOT };
  }
}

test.each(COMPLAINT_IDS)('%s: after ten questions without an answer what is left is set side by side', (complaint) => {
  const { asked, walk } = askedOf(complaint, {});
  expect(asked.filter((id) => !FIRST.has(id)).length).toBeLessThanOrEqual(MOST);
  expect(walk.state).not.toBe('asking');
});

test('what is set side by side then is not called everything that was tried', () => {
  const { walk } = askedOf('accessories-misbehave', {});
  expect([walk.state, walk.context.next]).toEqual(['handed-on', { kind: 'hand-on', because: 'questions-used-up' }]);
});

test('answers in between cost none of the ten', () => {
  const told = { 'when-it-happens': 'with-traffic', 'which-vehicles': 'one-vehicle', 'last-change': 'nothing' };
  const { asked } = askedOf('trips-with-traffic', told);
  expect(asked.length).toBeGreaterThan(MOST - 3);
});
