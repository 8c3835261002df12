// Where a layout is divided: connected districts that their stages bear, with the fewest and least awkward gaps.
export { divisionChoiceInParts, fewestDistrictsInParts } from './choices.ts';
export { divide } from './divide.ts';
export type { Dividing, Division, DivisionProblem, Hindrance, Proof } from './problem.ts';
