// What this room lets out.
export { default } from './ComputedCheck.tsx';
