// What this room lets out.
export { default } from './Notebook.tsx';
