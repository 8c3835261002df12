// What this room lets out.
/** @keptFor I the page of the layout sheet and the plan */
export { Diagram } from './Diagram.tsx';
export { stageSaid } from './said.ts';
/** @keptFor I the page of the layout sheet and the plan */
export type { DiagramProps, Selected } from './shown.ts';
