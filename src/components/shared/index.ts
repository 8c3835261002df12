// What this room lets out.
export { Damage } from './Damage.tsx';
export { FileButton } from './FileButton.tsx';
export { Missing } from './Missing.tsx';
export { NotYet } from './NotYet.tsx';
export { allowOwnWorkers } from './own-workers.ts';
export { onPrintKey } from './print-key.ts';
export { always, inTurns } from './turns.ts';
export type { Address } from './use-address.ts';
export { useAddress, useHeading } from './use-address.ts';
export type { Loaded } from './use-loaded.ts';
export { fetchStyles, fetchWords, useLoaded } from './use-loaded.ts';
export { useMeasures, useMeasuresTyped } from './use-measures.ts';
