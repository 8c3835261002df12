// Where a layout is divided: connected districts that their stages bear, with the fewest and least awkward gaps.
export type { Fewest } from './choices.ts';
export { divisionChoice, divisionChoiceInParts, fewestDistricts, fewestDistrictsInParts } from './choices.ts';
export { divide, divideInParts } from './divide.ts';
export type {
  Divided,
  Dividing,
  Division,
  DivisionChoice,
  DivisionJoint,
  DivisionOptions,
  DivisionProblem,
  DivisionProgress,
  DivisionSection,
  DivisionStage,
  Hindrance,
  Proof,
} from './problem.ts';
export { MOST_DIVIDED } from './whole.ts';
