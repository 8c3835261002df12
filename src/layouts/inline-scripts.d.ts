/** The code of the switch of units as it stands in every page: put in when the site is built (astro.config.mjs). */
declare const UNITS_SWITCH: string;

/** The code that waits with the answers of an address, as it stands in every page that asks questions. */
declare const RESUME: string;

/** The code that fetches what keeps a copy of the site for use without a line, as it stands in every page. */
declare const KEEP_COPY: string;
