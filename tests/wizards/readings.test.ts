// Checks read signs: each sign can be read, each value told from the sound one, and no option stands there for nothing.
import { describe, expect, test } from 'vitest';
import { atOnce } from '../../src/engine/at-once.ts';
import type { SignCheck } from '../../src/engine/diagnosis/sign-model.ts';
import type { SignTables } from '../../src/engine/diagnosis/sign-tables.ts';
import { signTables } from '../../src/engine/diagnosis/sign-tables.ts';
import { CHECKS } from '../../src/wizards/put-it-right/model/checks/index.ts';
import { SIGN_MODEL } from '../../src/wizards/put-it-right/model/index.ts';

const TABLES: SignTables = atOnce(signTables(SIGN_MODEL, { memory: 0, eye: 0, instrument: 0 }));

/** P(option) for each joint value of what a check reads, for each combination of the circumstances that its reading hangs on. */
function said(check: number): number[][][] {
  const table = TABLES.checks[check];
  const size = TABLES.groups[table?.group ?? -1]?.size ?? 0;
  if (table === undefined || size === 0) throw new Error(`check ${check} reads nothing`);
  return Array.from({ length: table.says.chances.length / table.says.width }, (_, row) =>
    Array.from({ length: size }, (_none, value) =>
      Array.from(
        { length: table.options },
        (_unused, option) => table.says.chances[row * table.says.width + option * size + value] ?? 0,
      ),
    ),
  );
}

describe('What people find with a check', () => {
  // What means danger ends the walk at once, and never enters the odds.
  const weighed = CHECKS.map((row, at) => {
    const { id, options, danger = {} }: SignCheck = row;
    return { id, at, options, ends: options.filter((option) => danger[option] !== undefined) };
  });
  test.each(weighed)('$id: each option is the likeliest answer to something', ({ at, options, ends }) => {
    const answers = said(at).flat();
    const likeliest = options.filter((_, option) =>
      answers.some((chances) => (chances[option] ?? 0) >= Math.max(...chances) - 1e-9),
    );
    expect([...new Set([...likeliest, ...ends])].sort()).toEqual([...options].sort());
  });

  test('no two checks have the same name', () => {
    expect(new Set(CHECKS.map(({ id }) => id)).size).toBe(CHECKS.length);
  });
});

/** Checks by the place of the group that they read. */
const readers = (group: number): number[] => TABLES.checks.flatMap((check, at) => (check.group === group ? [at] : []));

describe('What a layout shows', () => {
  const groups = TABLES.groups.map((group, at) => ({ ...group, at }));

  test.each(groups)('$id is read by a check', ({ at }) => {
    expect(readers(at)).not.toEqual([]);
  });

  // Joint values differ from the sound one in one sign at least; a sign by itself is enough here.
  const values = SIGN_MODEL.signs.flatMap(({ id, values: all, sound }) =>
    all.filter((value) => value !== sound).map((value) => ({ id, value, sound })),
  );
  test.each(values)('$id: $value can be told from $sound', ({ id, value }) => {
    expect(telling(id, value)).not.toEqual([]);
  });
});

/** Names of the checks of which an option is at least twice as likely, or half as likely, under a value as on a sound layout. */
function telling(sign: string, value: string): string[] {
  const at = TABLES.groups.findIndex(({ signs }) => signs.some(({ id }) => id === sign));
  const group = TABLES.groups[at];
  if (group === undefined) throw new Error(`no sign is called ${sign}`);
  const sound = group.sound;
  const other = jointValue(group.signs, sound, sign, value);
  return readers(at).flatMap((check) => {
    const apart = said(check).some((row) =>
      (row[other] ?? []).some((chance, option) => differs(chance, row[sound]?.[option] ?? 0)),
    );
    return apart ? [TABLES.model.checks[check]?.id ?? ''] : [];
  });
}

const differs = (one: number, other: number): boolean =>
  Math.max(one, other) >= 2 * Math.min(one, other) && one !== other;

/** The joint value that is sound but for one sign. */
function jointValue(
  signs: readonly { readonly id: string; readonly values: readonly string[] }[],
  sound: number,
  sign: string,
  value: string,
): number {
  let apart = 1;
  for (const { id, values } of [...signs].reverse()) {
    if (id === sign) return sound + apart * (values.indexOf(value) - (Math.floor(sound / apart) % values.length));
    apart *= values.length;
  }
  throw new Error(`no sign is called ${sign}`);
}
