// What this room lets out.
export { default } from './WhichSupplyWizard.tsx';
