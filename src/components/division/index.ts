// What this room lets out.
export { DrawnSheet as default } from './DrawnSheet.tsx';
