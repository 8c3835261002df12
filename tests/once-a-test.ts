import { beforeEach } from 'vitest';

/**
 * Worked out once in each test that asks for it. What is worked out as a file is read belongs to no test: a change of the code that makes it
 * would be noticed by none (decision 031).
 */
export function onceATest<Made>(make: () => Made): () => Made {
  let made: { readonly value: Made } | undefined;
  beforeEach(() => {
    made = undefined;
  });
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
