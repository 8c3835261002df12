// What an address calls the path that somebody goes by.
export const PATH = 'path';
