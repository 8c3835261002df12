const { globSync } = require('node:fs');
const { dirname } = require('node:path');

// The one-way rule: engine <- wizards <- components <- layouts, pages. Each comment is what a wrong import is told.
const room = (name, comment, mayReach) => ({
  name: `${name}-stays-in-its-room`,
  severity: 'error',
  comment,
  from: { path: `^src/${name}/` },
  to: { pathNot: mayReach, dependencyTypesNot: ['type-only'] },
});

/** Types leave nothing behind in the browser, yet a lower room may not even know the types of a higher one. */
const types = (name, comment, mayReach) => ({
  ...room(name, comment, mayReach),
  name: `${name}-knows-no-types-of-higher-rooms`,
  to: { path: '^src/', pathNot: mayReach, dependencyTypes: ['type-only'] },
});

/**
 * The folders with doors: what is in them is reached from outside by their index.ts only. The door of src/wizards is that of the files that
 * lie directly in it; its rooms have doors of their own.
 * @param {string} root the folder that holds src
 */
const doorsOf = (root) =>
  globSync('src/{engine,wizards,components}/**/index.ts', { cwd: root })
    .map((door) => dirname(door).replaceAll('\\', '/'))
    .map((folder) => ({
      name: `${folder}-has-a-door`,
      severity: 'error',
      comment: `${folder} is entered by its index.ts only.`,
      from: { path: '^src/', pathNot: `^${folder}/` },
      to: { path: folder === 'src/wizards' ? `^${folder}/[^/]+$` : `^${folder}/`, pathNot: `^${folder}/index\\.ts$` },
    }));

module.exports = {
  doorsOf,
  forbidden: [
    room('engine', 'the engine imports nothing outside src/engine.', ['^src/engine/']),
    types('engine', 'the engine imports nothing outside src/engine, not even a type.', ['^src/engine/']),
    room('wizards', 'a wizard imports src/engine, xstate, zod/mini and minisearch only.', [
      '^src/(engine|wizards)/',
      'node_modules/xstate/',
      'node_modules/minisearch/',
      'node_modules/zod/(v4/)?mini/',
    ]),
    types('wizards', 'a wizard knows the types of src/engine only.', ['^src/(engine|wizards)/']),
    room('offline', 'the worker that keeps a copy knows its own files and what unpacks them.', [
      '^src/offline/',
      'node_modules/fzstd/',
    ]),
    room('content', 'words import components only.', ['^src/(content|components)/']),
    {
      name: 'components-stay-in-their-room',
      severity: 'error',
      comment: 'a component imports the engine, the wizards and types of content only.',
      from: { path: '^src/components/' },
      to: {
        path: '^(src|tests|scripts)/',
        pathNot: '^src/(engine|wizards|components)/',
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'components-use-the-small-zod',
      severity: 'error',
      comment: 'the browser gets zod/mini only.',
      from: { path: '^src/components/' },
      to: { path: 'node_modules/zod/', pathNot: 'node_modules/zod/(v4/)?(mini|core)/' },
    },
    {
      name: 'site-knows-no-tests',
      severity: 'error',
      comment: 'what is built does not know tests or scripts.',
      from: { path: '^src/' },
      to: { path: '^(tests|scripts)/' },
    },
    {
      name: 'no-circles',
      severity: 'error',
      comment: 'two files that need each other are one file, or one of them is in the wrong room.',
      from: { path: '^src/' },
      to: { circular: true },
    },
    {
      name: 'everything-is-found',
      severity: 'error',
      comment: 'an import that leads nowhere.',
      from: { path: '^src/(engine|wizards)/' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
};
