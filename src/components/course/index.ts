// What this room lets out.
export { default, FIRST } from './ComputedCheck.tsx';
