// What this room lets out.
export { default } from './Walk.tsx';
export type {
  CheckNames,
  CheckWords,
  DangerWords,
  FetchedCheck,
  FetchedFix,
  FirstWords,
  WalkWords,
} from './words.ts';
