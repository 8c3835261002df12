// What this room lets out.
export { default } from './ThroughSection.tsx';
