// The mark of the site as pictures for the home screen: drawn from public/favicon.svg on the paper of the pages.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import sharp from 'sharp';

const MARK = /<path d="([^"]+)"/.exec(readFileSync(new URL('../../public/favicon.svg', import.meta.url), 'utf8'))?.[1];
/** Units of the drawing that the mark is wide and high. */
const WIDE = 42;
const HIGH = 20;

/** Part of the picture's width that the mark takes. A system may cut what is `whole` to a circle of four fifths of it. */
const PICTURES = [
  { name: '192', pixels: 192, share: 0.74, round: true },
  { name: '512', pixels: 512, share: 0.74, round: true },
  { name: 'whole-512', pixels: 512, share: 0.56, round: false },
  { name: '180', pixels: 180, share: 0.66, round: false },
];

/** The colours of the pages, from src/styles/tokens.css. */
const PAPER = '#faf6ec';
const INK = '#1d2530';

function drawn({ share, round }) {
  const side = WIDE / share;
  const left = (side - WIDE) / 2;
  const top = (side - HIGH) / 2;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${side} ${side}">
    <rect width="${side}" height="${side}" rx="${round ? side / 6 : 0}" fill="${PAPER}"/>
    <path transform="translate(${left} ${top})" d="${MARK}" stroke="${INK}" stroke-width="4" fill="none"/>
  </svg>`;
}

/** Writes icons/<name>.png into the built site. @param {URL} dir */
export async function writeIcons(dir) {
  if (MARK === undefined) throw new Error('public/favicon.svg has no path to draw');
  mkdirSync(new URL('icons/', dir), { recursive: true });
  for (const picture of PICTURES) {
    const { name, pixels } = picture;
    const png = await sharp(Buffer.from(drawn(picture)), { density: 72 * Math.ceil((pixels * picture.share) / WIDE) })
      .resize(pixels, pixels)
      .png({ palette: true })
      .toBuffer();
    writeFileSync(new URL(`icons/${name}.png`, dir), png);
  }
}
