// What this room lets out.
export { layAhead } from '../diagram/index.ts';
export { default } from './DrawnSheet.tsx';
