// What the page needs once somebody is there to look at a plan.
export { layAhead } from '../diagram/index.ts';
export { openSheet } from '../kept-sheets/index.ts';
export { planFor } from './plan-for.ts';
export { namesIn } from './props.ts';
export { WholePlan } from './WholePlan.tsx';
