// The square code on a page, read off a picture of it as a phone does (jsQR, ISO/IEC 18004): what is drawn is not yet what can be read.
import jsQR from 'jsqr';
import sharp from 'sharp';
import type { Page } from './danger.ts';

/** What the code that is to be seen says; undefined where nobody could read it. */
export async function readCode(page: Page): Promise<string | undefined> {
  const picture = await page.locator('svg.qr:visible').screenshot({ animations: 'disabled' });
  const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data;
}
