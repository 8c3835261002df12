import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { SLOW } from './rooms.mjs';

const isSlow = ({ moduleId }: TestSpecification): boolean => SLOW.some((file) => moduleId.endsWith(file));

/** What takes long is tried last: the first test that notices a change ends its trial. */
class QuickFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return Promise.resolve([...files].sort((a, b) => Number(isSlow(a)) - Number(isSlow(b))));
  }
}

/** The tests that judge one room (`rooms.mjs`), as `npm run mutate` names them. */
export default defineConfig({
  test: {
    environment: 'node',
    include: (process.env.MUTATE_TESTS ?? '').split(','),
    testTimeout: 30_000,
    sequence: { sequencer: QuickFirst },
  },
});
