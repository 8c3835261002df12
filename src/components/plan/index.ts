// What this room lets out.
export { expectedAs, isByLamp, isOverBridge } from './expected-as.ts';
export { default } from './Plan.tsx';
export { planFor } from './plan-for.ts';
export { type Names, namesIn } from './props.ts';
