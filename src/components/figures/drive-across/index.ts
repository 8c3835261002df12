// What this room lets out.
export { default } from './DriveAcross.tsx';
