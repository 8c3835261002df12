// The whole model of what can be wrong: signs, circumstances, causes, checks that read signs, and what people come with.
import type { SignModel } from '../../../engine/index.ts';
import { ACTS_OF, FORBIDDEN_AFTER } from './acts.ts';
import { CAUSES } from './causes/index.ts';
import { CHECKS } from './checks/index.ts';
import { CIRCUMSTANCES } from './circumstances.ts';
import { OPENINGS } from './openings.ts';
import { CORE_SIGNS, SIGNS } from './signs.ts';

export const SIGN_MODEL: SignModel = {
  signs: SIGNS,
  circumstances: CIRCUMSTANCES,
  causes: CAUSES,
  // Every check with what it makes people do, and with what an answer forbids from then on.
  checks: CHECKS.map((row) => ({ ...row, acts: ACTS_OF[row.id], forbids: FORBIDDEN_AFTER[row.id] ?? {} })),
  openings: OPENINGS,
  core: CORE_SIGNS.map(({ id }) => id),
};
