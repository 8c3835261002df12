// What this room lets out.
export { Diagram } from './Diagram.tsx';
export { stageSaid } from './said.ts';
export type { Selected } from './shown.ts';
