// What this room lets out.
export { default } from './WireWizard.tsx';
