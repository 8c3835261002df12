// What this room lets out.
export { default } from './DrawnSheet.tsx';
