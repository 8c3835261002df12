// The outcome of a set of answers, the way a page finds it: out of the state the machine ends in.

import { enoughCurrent } from '../../src/wizards/enough-current/flow.ts';
import { reckon } from '../../src/wizards/enough-current/reckoning.ts';
import { conclude } from '../../src/wizards/enough-current/result.ts';
import type { Answers } from '../../src/wizards/planning/answers.ts';
import { isWorkedOut, replay } from '../../src/wizards/planning/replay.ts';
import { shareOut } from '../../src/wizards/share-out/flow.ts';
import { shareOutFor } from '../../src/wizards/share-out/result.ts';
import { whichSupplyWhere } from '../../src/wizards/which-supply-where/flow.ts';
import { placeSupplies } from '../../src/wizards/which-supply-where/result.ts';
import { wireIt } from '../../src/wizards/wire-it/flow.ts';
import { wire } from '../../src/wizards/wire-it/result.ts';

function endOf(machine: Parameters<typeof replay>[0], answers: Answers, workOut: (used: Answers) => string): string {
  const { snapshot, used, question } = replay(machine, answers);
  if (question !== undefined) throw new Error(`not at an end, but at ${question.id}`);
  return isWorkedOut(String(snapshot.value)) ? workOut(used) : String(snapshot.value);
}

export const enoughCurrentEnd = (answers: Answers): string =>
  endOf(enoughCurrent, answers, (used) => conclude(used, reckon(used)).outcome);

export const whichSupplyEnd = (answers: Answers): string =>
  endOf(whichSupplyWhere, answers, (used) => placeSupplies(used).outcome);

export const shareOutEnd = (answers: Answers): string => endOf(shareOut, answers, (used) => shareOutFor(used).outcome);

export const wireItEnd = (answers: Answers): string => endOf(wireIt, answers, (used) => wire(used).outcome);
