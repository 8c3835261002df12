// Places in the middle of forty walks, each reached by other answers: accessible on a phone and on a desk, by day and by night, with the page
// enlarged four times and with letters twice as large.
import { expect, test } from 'vitest';
import { NOTHING_TOLD, parseWalk, replayWalk, walkAddress } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS, dangerOfAnswer } from '../../src/wizards/put-it-right/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';
import { seeded } from '../seeded.ts';
import { open } from './browser.ts';
import { nothingIsWarm } from './danger.ts';
import { accessibilityFaults, enlarge, overflow } from './measure.ts';
import { someOf } from './some.ts';

const SITTING = { 'danger-now': 'none' };
const OPTIONS = new Map(SIGN_MODEL.checks.map(({ id, options }) => [id, options]));

/** A link into a walk after up to `most` answers, drawn by `random`; it ends where a repair is proposed or nothing is left to ask. */
function linkInto(complaint: (typeof COMPLAINT_IDS)[number], most: number, random: () => number) {
  let told = { ...NOTHING_TOLD, seen: {}, toldFirst: true, tools: ['multimeter' as const, 'wire' as const] };
  let walk = replayWalk(complaint, { ...told, seen: SITTING }, SITTING);
  for (let answered = 0; answered < most && walk.check !== undefined; answered += 1) {
    const options = OPTIONS.get(walk.check) ?? [];
    const drawn = options[Math.floor(random() * options.length)] ?? 'cannot';
    // A danger travels in the link, and stands there before anything is asked.
    const option = dangerOfAnswer(walk.check, drawn) === undefined ? drawn : 'cannot';
    told = { ...told, seen: { ...told.seen, [walk.check]: option } };
    walk = replayWalk(complaint, { ...told, seen: { ...SITTING, ...told.seen } }, SITTING);
  }
  const search = walkAddress(told);
  expect(parseWalk(search).leftOut).toEqual([]);
  return { path: `en/put-it-right/${complaint}/${search}`, state: walk.state };
}

const random = seeded(20_261_126);
const STATES = Array.from({ length: 40 }, (_, index) => {
  const complaint = COMPLAINT_IDS[index % COMPLAINT_IDS.length] ?? 'none-of-these';
  return { index, ...linkInto(complaint, 1 + (index % 7), random) };
});

test('they are of several kinds', () => {
  const kinds = new Set(STATES.map(({ state }) => state));
  expect([...kinds]).toEqual(expect.arrayContaining(['asking', 'proposing']));
  expect(new Set(STATES.map(({ path }) => path)).size).toBe(40);
});

test.concurrent.each(someOf(STATES, 3))('$index: $state', async ({ index, path }) => {
  const [phone, dark] = [index % 2 === 0, index % 4 >= 2];
  const { page, problems, close } = await open(path, phone ? { width: 360, dark } : { width: 1280, dark });
  await nothingIsWarm(page);
  expect(await accessibilityFaults(page), path).toEqual([]);
  expect(await overflow(page), path).toEqual([]);
  // A desk of 1280 px enlarged four times is 320 px wide.
  await page.setViewportSize({ width: 320, height: 640 });
  expect(await overflow(page), path).toEqual([]);
  await page.setViewportSize({ width: 360, height: 740 });
  await enlarge(page);
  expect(await overflow(page), path).toEqual([]);
  expect(await problems()).toEqual([]);
  await close();
});
