/** The code of the switch of units as it stands in every page: put in when the site is built (astro.config.mjs). */
declare const UNITS_SWITCH: string;

/** The same and the code that waits with the answers of an address, as it stands in every page that asks questions. */
declare const RESUME: string;
/** The code that asks for the faces of the site, as it stands in the head of every page. */
declare const FACES: string;

declare const PASS_ON_FIX: string;

/** Every fixed number of the engine and the wizards (scripts/build/constants.mjs). */
declare const CONSTANTS: readonly {
  readonly file: string;
  readonly name: string;
  readonly comment: string;
  readonly value: unknown;
}[];
