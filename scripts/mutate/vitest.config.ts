import { defineConfig } from 'vitest/config';

/** The tests that judge one room (`rooms.mjs`), as `npm run mutate` names them. */
export default defineConfig({
  test: {
    environment: 'node',
    include: (process.env.MUTATE_TESTS ?? '').split(','),
    testTimeout: 30_000,
  },
});
