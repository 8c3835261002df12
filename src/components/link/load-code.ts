// What draws a square code, loaded when one is wanted.
export const loadCode = () => import('./code.ts');
