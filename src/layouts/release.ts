// The release that is built: the version in package.json. Links to answers carry it.
import { version } from '../../package.json';

export const RELEASE: string = version;
