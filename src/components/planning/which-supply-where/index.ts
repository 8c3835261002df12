// What this room lets out.
export { default } from './PlaceWizard.tsx';
