// What this room lets out.
export { codeOf } from './code.ts';
