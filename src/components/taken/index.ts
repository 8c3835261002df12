// What this room lets out.
export { TakeIn } from './TakeIn.tsx';
