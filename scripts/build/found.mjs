// How the site is found and shared, where it knows its own address (SITE): a map of its pages, and a picture for each section. Without an
// address there is none of it: both have to say where the site is.
import { globSync, mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const WIDE = 1200;
const HIGH = 630;
/** The colours of the pages, from src/styles/tokens.css. */
const PAPER = '#faf6ec';
const INK = '#1d2530';
const COPPER = '#9a3b12';

const bars = [90, 150, 220, 260, 230, 170, 100, 50].map((high, at) => `M${250 + 80 * at} 380v-${high}`).join('');

/** What stands above the rails in each section; the rails, both broken at one place, are the mark of the site. */
const DRAWN = {
  home: `<path d="M330 330h220M650 330h220" stroke-width="110"/><path d="M550 330h100" stroke="${COPPER}" stroke-dasharray="16 14"/>`,
  learn: `<path d="${bars}" stroke-width="48"/><path d="M690 90v300" stroke="${COPPER}"/>`,
  'work-it-out': `<path d="M200 120c220 10 330 90 800 230"/><path d="M200 300h800" stroke="${COPPER}" stroke-dasharray="26 18"/>`,
  'put-it-right': `<path d="M200 240h260M460 240l180-110h320M460 240l180 110h320"/><circle cx="960" cy="350" r="42" fill="${COPPER}" stroke="none"/>`,
};

const picture = (
  drawn,
) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDE} ${HIGH}" fill="none" stroke="${INK}" stroke-width="16">
  <rect width="${WIDE}" height="${HIGH}" fill="${PAPER}" stroke="none"/>${drawn}
  <path d="M0 470h570M630 470h570M0 540h570M630 540h570" stroke-width="26"/>
</svg>`;

async function writePictures(dir) {
  mkdirSync(new URL('shared/', dir), { recursive: true });
  for (const [section, drawn] of Object.entries(DRAWN)) {
    const png = await sharp(Buffer.from(picture(drawn)))
      .png({ palette: true })
      .toBuffer();
    writeFileSync(new URL(`shared/${section}.png`, dir), png);
  }
}

const asXml = (text) => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** Every page below a language: the entry leads on to one of them, and a page that is missing is none. */
function mapOf(dir, root) {
  const pages = globSync('*/**/index.html', { cwd: fileURLToPath(dir) })
    .map((file) => file.replaceAll('\\', '/').replace(/index\.html$/, ''))
    .sort();
  const lines = pages.map((page) => `<url><loc>${asXml(root + page)}</loc></url>`);
  return `<?xml version="1.0" encoding="UTF-8"?>\n<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">\n${lines.join('\n')}\n</urlset>\n`;
}

/** @returns {import('astro').AstroIntegration} */
export const found = () => {
  let root;
  return {
    name: 'found',
    hooks: {
      'astro:config:done': ({ config }) => {
        root = config.site === undefined ? undefined : new URL(config.base, config.site).href;
      },
      'astro:build:done': async ({ dir }) => {
        if (root === undefined) return;
        writeFileSync(new URL('sitemap.xml', dir), mapOf(dir, root));
        await writePictures(dir);
      },
    },
  };
};
