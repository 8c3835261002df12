// What this room lets out.
export { minutesOf } from './reading.ts';
export { formsOf, meaningId, withTerms } from './terms.ts';
