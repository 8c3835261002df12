// What this room lets out.
export { default } from './ShareOutWizard.tsx';
