import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

/** The folders of tests, in the order of the rooms; `site` needs a built site and a browser. */
const folders = ['engine', 'wizards', 'judge', 'content', 'reference'];
/** A browser on a busy machine is late at times: its test is run once more, and the table names those that needed it. */
const browser = { retry: 1 };
/** By itself the runner leaves one processor free: on two that is one. */
const workers = { maxWorkers: availableParallelism() };

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'rooms', environment: 'node', include: ['tests/*.test.ts'], testTimeout: 30_000, ...workers } },
      ...folders.map((name) => ({
        test: { name, environment: 'node', include: [`tests/${name}/**/*.test.ts`], testTimeout: 30_000, ...workers },
      })),
      {
        test: {
          name: 'sub-path',
          environment: 'node',
          include: ['tests/site/sub-path.test.ts'],
          testTimeout: 60_000,
          ...browser,
        },
      },
      {
        test: {
          name: 'engines',
          environment: 'node',
          ...browser,
          include: ['tests/engines/**/*.test.ts'],
          testTimeout: 90_000,
          hookTimeout: 90_000,
        },
      },
      {
        test: {
          name: 'made-up',
          environment: 'node',
          ...browser,
          include: ['tests/made-up/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'site',
          environment: 'node',
          ...browser,
          include: ['tests/site/**/*.test.ts'],
          exclude: ['tests/site/sub-path.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          maxWorkers: 3,
          maxConcurrency: 2,
        },
      },
    ],
  },
});
