// A face cut down to some characters.
import subsetFont from 'subset-font';

/**
 * @param {Buffer} face
 * @param {string} characters
 * @param {{ targetFormat: string, [more: string]: unknown }} cutting
 * @returns {Promise<Buffer>}
 */
export const cutTo = (face, characters, cutting) => subsetFont(face, characters, cutting);
