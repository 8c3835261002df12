// The one-way rule between the rooms of src: it holds here, and it would notice if it did not.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { crossings } from '../scripts/check/rooms.mjs';

test('no room of this project breaks into another', async () => {
  const found = await crossings();
  expect(found.looked).toBeGreaterThan(10);
  expect(found.crossings).toEqual([]);
}, 30_000);

describe('in a made-up project', () => {
  const made: string[] = [];
  afterEach(() => {
    for (const folder of made.splice(0)) rmSync(folder, { recursive: true });
  });

  function project(files: Readonly<Record<string, string>>): string {
    const root = mkdtempSync(join(tmpdir(), 'rooms-'));
    made.push(root);
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    return root;
  }

  const rooms = {
    'src/engine/demand.ts': 'export const demand = 1;\n',
    'src/wizards/plan.ts': "import { demand } from '../engine/demand.ts';\nexport const plan = demand;\n",
    'src/components/Meter.tsx': "import { plan } from '../wizards/plan.ts';\nexport const meter = plan;\n",
    'src/content/en/fix.mdx': "import Meter from '../../components/Meter.tsx';\n\nText.\n",
    'src/layouts/page.ts': "import { meter } from '../components/Meter.tsx';\nexport const page = meter;\n",
  };

  test('the allowed directions pass, and the files were looked at', async () => {
    expect(await crossings(project(rooms))).toEqual({ looked: 5, crossings: [] });
  });

  test.each([
    ['src/engine/wrong.ts', "import { plan } from '../wizards/plan.ts';\nexport const wrong = plan;\n", 'src/wizards'],
    [
      'src/engine/wrong.ts',
      "import type { plan } from '../wizards/plan.ts';\nexport type Wrong = typeof plan;\n",
      'src/wizards',
    ],
    ['src/engine/wrong.ts', "import { readFileSync } from 'node:fs';\nexport const wrong = readFileSync;\n", 'fs'],
    [
      'src/wizards/wrong.ts',
      "import { meter } from '../components/Meter.tsx';\nexport const wrong = meter;\n",
      'src/components',
    ],
    ['src/wizards/wrong.ts', "import { h } from 'preact';\nexport const wrong = h;\n", 'preact'],
    [
      'src/components/wrong.ts',
      "import { page } from '../layouts/page.ts';\nexport const wrong = page;\n",
      'src/layouts',
    ],
    ['src/content/en/wrong.mdx', "import { demand } from '../../engine/demand.ts';\n\nText.\n", 'src/engine'],
  ])('%s may not say %j', async (path, text, into) => {
    const found = await crossings(project({ ...rooms, [path]: text }));
    expect(found.crossings.join('\n')).toContain(`${path} imports`);
    expect(found.crossings.join('\n')).toContain(`broke into ${into}`);
  });

  const doors = {
    'src/engine/index.ts': "export { demand } from './power/index.ts';\n",
    'src/engine/power/index.ts': "export { demand } from './demand.ts';\n",
    'src/engine/power/demand.ts': "import { half } from './kernels.ts';\nexport const demand = half;\n",
    'src/engine/power/kernels.ts': 'export const half = 0.5;\n',
    'src/engine/wiring/wire.ts': "import { demand } from '../power/index.ts';\nexport const wire = demand;\n",
    'src/wizards/index.ts': "export { chart } from './chart.ts';\n",
    'src/wizards/chart.ts': "import { plan } from './plan/index.ts';\nexport const chart = plan;\n",
    'src/wizards/plan/index.ts': "import { demand } from '../../engine/index.ts';\nexport const plan = demand;\n",
    'src/components/meter/index.ts': "export { Dial } from './Dial.tsx';\n",
    'src/components/meter/Dial.tsx':
      "import { chart } from '../../wizards/index.ts';\nimport { plan } from '../../wizards/plan/index.ts';\nexport const Dial = [chart, plan];\n",
    'src/content/en/fix.mdx': "import { Dial } from '../../components/meter/index.ts';\n\nText.\n",
  };

  test('a folder is entered by its door, and its own files know each other', async () => {
    expect(await crossings(project(doors))).toEqual({ looked: 11, crossings: [] });
  });

  test.each([
    [
      'src/engine/wiring/wrong.ts',
      "import { half } from '../power/kernels.ts';\nexport const wrong = half;\n",
      'src/engine/power',
    ],
    [
      'src/wizards/wrong.ts',
      "import { demand } from '../engine/power/index.ts';\nexport const wrong = demand;\n",
      'src/engine',
    ],
    [
      'src/pages/wrong.astro',
      "---\nimport { half } from '../engine/power/kernels.ts';\n---\n{half}\n",
      'src/engine/power',
    ],
    [
      'src/components/Wrong.tsx',
      "import { chart } from '../wizards/chart.ts';\nexport const Wrong = chart;\n",
      'src/wizards',
    ],
    ['src/pages/wrong.astro', "---\nimport { chart } from '../wizards/chart.ts';\n---\n{chart}\n", 'src/wizards'],
    [
      'src/content/en/wrong.mdx',
      "import Dial from '../../components/meter/Dial.tsx';\n\nText.\n",
      'src/components/meter',
    ],
  ])('%s may not go round a door', async (path, text, room) => {
    const found = await crossings(project({ ...doors, [path]: text }));
    expect(found.crossings.join('\n')).toContain(`${path} imports`);
    expect(found.crossings.join('\n')).toContain(`it went round the door; ${room} is entered by its index.ts only.`);
  });
});
