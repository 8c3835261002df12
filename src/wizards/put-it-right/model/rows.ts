// The shape of a cause's row and of a check, typed by the names of signs, so that a renamed value breaks the build.
import type { LikelihoodWord, Precondition, Risk, Source, Tool } from '../../../engine/index.ts';
import type { CircumstanceId, CircumstanceValue } from './circumstances.ts';
import type { CoreSignId, SignId, SignValue } from './signs.ts';

export type MixOf<Id extends SignId> = { readonly [value in SignValue<Id>]?: LikelihoodWord };
type ByCircumstance<Id extends SignId> = {
  [by in CircumstanceId]: { readonly by: by; readonly is: { readonly [value in CircumstanceValue<by>]: ShowsOf<Id> } };
}[CircumstanceId];
type ByGoesOff<Id extends SignId> = {
  readonly by: 'goes-off';
  readonly is: { readonly [value in SignValue<'goes-off'>]: ShowsOf<Id> };
};
/** What a cause makes of one sign. */
export type ShowsOf<Id extends SignId> = 'unaffected' | MixOf<Id> | ByCircumstance<Id> | ByGoesOff<Id>;

type Core = { readonly [id in CoreSignId]: ShowsOf<id> };
type Other = { readonly [id in Exclude<SignId, CoreSignId>]?: ShowsOf<id> };
/** A whole row: every core sign, and any other that it touches. */
export type Row = Core & Other;

export interface CauseRow {
  readonly id: string;
  readonly fixClass: string;
  /** Work of the repair with its proof. */
  readonly minutes: number;
  readonly needs?: { readonly [id in CircumstanceId]?: readonly CircumstanceValue<id>[] };
  readonly well?: LikelihoodWord;
  readonly shows: Row;
}

type Says<Options extends string> = Options | { readonly [option in Options]?: LikelihoodWord };

interface CheckBase<Options extends string> {
  readonly id: string;
  readonly minutes: number;
  readonly tool: Tool;
  readonly also?: readonly Tool[];
  readonly risk: Risk;
  readonly needs: readonly Precondition[];
  readonly source: Source;
  readonly options: readonly Options[];
  readonly unsure?: number;
  readonly danger?: { readonly [option in Options]?: string };
  readonly first?: boolean;
  readonly establishes?: { readonly [option in Options]?: readonly Precondition[] };
}

type OfSign<Id extends SignId, Options extends string> = { readonly [value in SignValue<Id>]: Says<Options> };
type OfCircumstance<Id extends CircumstanceId, Options extends string> = {
  readonly [value in CircumstanceValue<Id>]: Says<Options>;
};
interface LineOf<Options extends string> {
  readonly where: { readonly [id in SignId]?: readonly SignValue<id>[] };
  readonly gives: Says<Options>;
}
type ReadingOf<Plain> =
  | Plain
  | {
      [by in CircumstanceId]: { readonly by: by; readonly is: { readonly [value in CircumstanceValue<by>]: Plain } };
    }[CircumstanceId];

/** A check that reads one sign, signs of one group, or a circumstance. */
export type CheckRowOf<Options extends string> = CheckBase<Options> &
  (
    | { [id in SignId]: { readonly reads: id; readonly reading: ReadingOf<OfSign<id, Options>> } }[SignId]
    | { [id in CircumstanceId]: { readonly reads: id; readonly reading: OfCircumstance<id, Options> } }[CircumstanceId]
    | { readonly reads: readonly SignId[]; readonly reading: ReadingOf<readonly LineOf<Options>[]> }
  );

/** Writes a check down: its options are read off, and its reading must name no other. */
export const check = <const Options extends string, const Row extends CheckRowOf<Options>>(
  row: Row & { readonly options: readonly Options[] },
): Row => row;

/** What people come with. */
export interface OpeningOf<Cause extends string> {
  readonly id: string;
  /** How often it is tapped, about per cent. */
  readonly often: number;
  readonly says: { readonly [id in SignId]?: readonly SignValue<id>[] };
  readonly shares: { readonly [cause in Cause]?: number };
}
