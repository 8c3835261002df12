// A cause as the command and the contributors' page print it.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { causeLines, describedCauses, SIGN_MODEL } from '../../src/wizards/put-it-right/index.ts';

const ROOT = join(import.meta.dirname, '../..');

const describedCause = (id: string) => describedCauses().find((cause) => cause.id === id);

function fault(id: string): { status: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/fault.mjs', id], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  return { status, out: stdout, err: stderr };
}

describe('every cause', () => {
  const all = describedCauses();

  test('is described', () => {
    expect(all.map(({ id }) => id)).toEqual(SIGN_MODEL.causes.map(({ id }) => id).sort());
  });

  test.each(all.map((cause) => [cause.id, cause] as const))(
    '%s says of each sign what it makes of it, or that it leaves it',
    (_, cause) => {
      const said = [...cause.signs.map(({ sign }) => sign), ...cause.untouched];
      expect(said.sort()).toEqual(SIGN_MODEL.signs.map(({ id }) => id).sort());
    },
  );

  test.each(all.map((cause) => [cause.id, cause] as const))(
    '%s has a likeliest answer to each check that reads what it touches',
    (_, cause) => {
      const touched = new Set(cause.signs.map(({ sign }) => sign));
      const reading = SIGN_MODEL.checks.filter(({ reads }) => [reads].flat().some((sign) => touched.has(sign)));
      expect(cause.checks.map(({ check }) => check)).toEqual(reading.map(({ id }) => id));
      for (const { check, lines } of cause.checks) {
        const options = SIGN_MODEL.checks.find(({ id }) => id === check)?.options ?? [];
        expect(lines.length, check).toBeGreaterThan(0);
        for (const { option, chance } of lines) {
          expect(options).toContain(option);
          // The likeliest of n answers is no less likely than one in n.
          expect(chance).toBeGreaterThanOrEqual(1 / options.length - 1e-9);
        }
      }
    },
  );
});

test('under reversed wires two lamps across the gap both shine, and both titles of the gap name it', () => {
  const reversed = describedCause('feed-reversed');
  expect(reversed?.checks.find(({ check }) => check === 'two-lamps')?.lines).toMatchObject([{ option: 'both-light' }]);
  expect(reversed?.openings.map(({ opening }) => opening)).toEqual(
    expect.arrayContaining(['trips-at-gap', 'jerks-at-gap']),
  );
  expect(reversed?.openings.find(({ opening }) => opening === 'trips-at-gap')?.place).toBe(1);
});

test('the command prints the lines of the contributors’ page, then the reported cases', () => {
  const cause = describedCause('suppressor');
  if (cause === undefined) throw new RangeError('suppressor is not known');
  const { out, status } = fault('suppressor');
  expect(status).toBe(0);
  expect(out.startsWith(causeLines(cause).join('\n'))).toBe(true);
  expect(out).toContain('decoders-deaf-on-old-track');
});

test('a cause that is not there is said so', () => {
  const { err, status } = fault('reversed-feed');
  expect(status).toBe(2);
  expect(err).toContain('There is no cause "reversed-feed"');
});
