// What others hang on a link as it is passed on: it says who passed it, and nothing about a layout.

const MARK =
  /^(?:utm_\w*|mtm_\w*|pk_\w*|mc_[ce]id|_hs\w*|_g[al]|[a-z]{0,4}clk?id|[gw]braid|igshi?d?|mkt_tok|li_fat_id|srsltid|ref|source|share|si)$/i;

/** Whether a name in an address is such a mark. */
export const isMark = (name: string): boolean => MARK.test(name);
