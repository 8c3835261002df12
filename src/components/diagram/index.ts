// What this room lets out.
export { Diagram } from './Diagram.tsx';
export { Picture } from './Picture.tsx';
export { stageSaid } from './said.ts';
export type { Selected } from './shown.ts';
