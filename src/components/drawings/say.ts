/** Gives the words for a key, with its places filled in. */
export type Say = (key: string, values?: Readonly<Record<string, string | number>>) => string;
