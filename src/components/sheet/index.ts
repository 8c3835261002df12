// What this room lets out.
export { default } from './LayoutSheet.tsx';
