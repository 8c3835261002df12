/** Outcomes of every planning wizard: layouts that it says nothing about. */
export const OUT_OF_SCOPE = ['out-of-scope-three-rail', 'out-of-scope-battery', 'out-of-scope-analogue'] as const;
