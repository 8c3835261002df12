// The release that is built: the version in package.json. Links to answers carry it.
import { version } from '../../package.json';

export const RELEASE: string = version;

/**
 * How many releases so far corrected something that could hurt a person. Add one for such a release: open pages then change to it unasked, and
 * say so; for any other they ask.
 */
export const SAFETY_RELEASES = 0;
