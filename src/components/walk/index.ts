// What this room lets out.
export { default } from './Walk.tsx';
export type {
  CheckWords,
  DangerWords,
  FetchedCheck,
  FetchedFix,
  FirstWords,
  SentWords,
} from './words.ts';
