// Where a layout is divided: connected districts that their stages bear, with the fewest and least awkward gaps.
/** @keptFor I the choice of divisions on the page of the layout sheet */
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
