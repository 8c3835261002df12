// What this room lets out.
export { Diagram } from './Diagram.tsx';
export { Picture } from './Picture.tsx';
export { jointNamed, pairSaid } from './pair.ts';
export { stageSaid } from './said.ts';
export type { Selected } from './shown.ts';
