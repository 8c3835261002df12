// What this room lets out.
export { default } from './Plan.tsx';
export { planFor } from './plan-for.ts';
export { type Names, namesIn } from './props.ts';
