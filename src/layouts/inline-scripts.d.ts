/** The code of the switch of units as it stands in every page: put in when the site is built (astro.config.mjs). */
declare const UNITS_SWITCH: string;
