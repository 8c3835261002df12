// What this room lets out.
export { openingOf, WHO_OPENS_START } from './model.ts';
export { default } from './WhoOpens.tsx';
