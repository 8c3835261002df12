// The model of a walk is made ready in parts, so that a tap meanwhile is answered at once.
import { expect, test } from 'vitest';
import { signStep, TOOLS, walkModel } from '../../src/engine/index.ts';
import { COMPLAINT_IDS, readyInParts, SIGN_MODEL, walkModelNow } from '../../src/wizards/put-it-right/index.ts';

test('others have their turn many times, and the walk asks what it asks of a model made at once', () => {
  const turns = [...readyInParts()].length;
  expect(turns).toBeGreaterThan(SIGN_MODEL.causes.length + SIGN_MODEL.checks.length);
  const atOnce = walkModel(SIGN_MODEL, walkModelNow().settings);
  for (const opening of COMPLAINT_IDS) {
    const state = { opening, answers: [], skipped: [], tools: TOOLS, setAside: [] };
    expect(signStep(walkModelNow(), state)).toEqual(signStep(atOnce, state));
  }
});
