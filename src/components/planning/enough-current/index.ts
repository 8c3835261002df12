// What this room lets out.
export { default } from './EnoughWizard.tsx';
