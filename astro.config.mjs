import mdx from '@astrojs/mdx';
import preact from '@astrojs/preact';
import { defineConfig } from 'astro/config';
import { asked } from './scripts/build/asked.mjs';
import { compressedTwins } from './scripts/build/compressed-twins.mjs';
import { constants } from './scripts/build/constants.mjs';
import { faces, fonts } from './scripts/build/faces.mjs';
import { fixCode } from './scripts/build/fix-code.mjs';
import { found } from './scripts/build/found.mjs';
import { hashOf, inlineScript } from './scripts/build/inline-script.mjs';
import { licences } from './scripts/build/licences.mjs';
import { offline } from './scripts/build/offline.mjs';
import { packedModel } from './scripts/build/packed-model.mjs';
import { ownPolicies } from './scripts/build/policy.mjs';
import { folderOf } from './scripts/serve.mjs';

/** The scripts that stand in the page; the layout prints them, and the policy knows them by their hashes. */
const resume = await inlineScript(new URL('src/components/page-scripts/resume.ts', import.meta.url));
const ownFaces = await inlineScript(new URL('src/components/page-scripts/faces.ts', import.meta.url));
const units = await inlineScript(new URL('src/components/page-scripts/units-switch.ts', import.meta.url));
const passOnFix = await inlineScript(new URL('src/components/page-scripts/pass-on-fix.ts', import.meta.url));

/** Astro's own marks in MDX modules are not understood by the bundler and need not be. */
function onLog(level, log, print) {
  if (log.code !== 'MODULE_LEVEL_DIRECTIVE') print(level, log);
}

/**
 * What every live page needs is one file, not a dozen. What checks the shapes of fetched words weighs too much to be among it: it comes with
 * the words. Long work in turns comes with what is long.
 */
const live = {
  name: 'live',
  test: /node_modules.(preact|@astrojs.preact)|preload-helper|src.components.(device.(?!copy|kept|faces|book|notebook|save-file|tests-in-tab)|shared.(?!turns))|src.components.words.(?!fetched-shapes)|src.engine.(units|workings).ts|src.wizards.links/,
};

/** What checks fetched words is one file for answers and the notebook. */
const shapes = { name: 'shapes', test: /node_modules.valibot/, priority: 1 };
/** The notebook on the device comes when it is opened or an answer is kept: nothing that answers need is in one file with it. */
const notebook = { name: 'notebook', test: /src.components.device.(book|notebook)/ };
/** Texts on the device, for the notebook and the layout sheets. */
const texts = {
  name: 'texts',
  test: /src.components.device.(kept-text|save-file)|node_modules.idb-keyval/,
  priority: 2,
};

/** The charts and what passes on where one is in them: what asks questions needs both, and two files weigh more than one. */
const charts = { name: 'charts', test: /node_modules.xstate|src.components.link.(Share|Keep|MadeThen)\.tsx/ };

/** A step and its cautions are one file, whoever draws cautions alone. */
const steps = { name: 'steps', test: /src.components.fix.(Caution|Steps|forms|BeforeYouStart)\.tsx?/ };

/** What comes with the page of the layout sheet before one is begun is one file. */
const sheet = { name: 'sheet-sayings', test: /src.components.sheet.(sayings|NotLoaded|Start)\.tsx?/ };

/** What a walk that came from the tests of a plan shares with them: two small files weigh more than one. */
const tests = { name: 'tests', test: /src.components.(device.tests-in-tab|check-picture.load-picture)/ };

export default defineConfig({
  output: 'static',
  // Where the site is: only then it has canonical links, a map, a feed and pictures for whoever shares it.
  ...(process.env.SITE === undefined ? {} : { site: process.env.SITE }),
  base: folderOf(process.env.BASE_PATH),
  trailingSlash: 'always',
  build: { format: 'directory', inlineStylesheets: 'always' },
  vite: {
    plugins: [packedModel()],
    build: { assetsInlineLimit: 0, rolldownOptions: { onLog } },
    environments: {
      client: {
        build: {
          rolldownOptions: {
            output: { codeSplitting: { groups: [live, shapes, notebook, texts, charts, steps, tests, sheet] } },
          },
        },
      },
    },
    define: {
      UNITS_SWITCH: JSON.stringify(units),
      FACES: JSON.stringify(ownFaces),
      RESUME: JSON.stringify(resume),
      PASS_ON_FIX: JSON.stringify(passOnFix),
      CONSTANTS: JSON.stringify(constants()),
    },
  },
  markdown: { syntaxHighlight: false },
  devToolbar: { enabled: false },
  fonts,
  security: {
    csp: {
      directives: [
        "default-src 'self'",
        "img-src 'self'",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "object-src 'none'",
        "base-uri 'self'",
        "form-action 'self'",
      ],
      scriptDirective: { resources: ["'self'"], hashes: [ownFaces, resume, units, passOnFix].map(hashOf) },
      styleDirective: { resources: ["'self'"] },
    },
  },
  integrations: [
    faces(),
    mdx(),
    preact(),
    asked(),
    licences(),
    found(),
    fixCode(),
    ownPolicies(),
    offline(),
    compressedTwins(),
  ],
});
