// What this room lets out.
export { Diagram, layAhead } from './Diagram.tsx';
export { Picture } from './Picture.tsx';
export { jointNamed, pairSaid } from './pair.ts';
export { stageSaid } from './said.ts';
export type { Ahead, Selected } from './shown.ts';
