// What this room lets out.
export { default } from './GapScope.tsx';
