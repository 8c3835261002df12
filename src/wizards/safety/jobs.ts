// Jobs with a page of their own, which the steps of many fixes send to.

export const JOBS = [
  'prove-the-gap',
  'gap-both-rails',
  'lay-a-feeder',
  'connect-a-booster',
  'divide-the-track',
  'exchange-a-supply',
  'measure-the-amperes',
  'load-test-and-coin',
  'on-again-after-heat',
] as const;
