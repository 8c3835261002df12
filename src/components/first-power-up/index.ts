// What this room lets out.
export { default } from './FirstPowerUp.tsx';
export type { PowerUpProps } from './props.ts';
