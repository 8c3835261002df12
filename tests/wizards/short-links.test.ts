// A short link says the very same as the long address it was made of, for whatever a person can have told; a damaged one says from where on it
// is damaged and keeps what stands before; nobody's short link says for its reader that nothing is hot.
import { globSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DRIVE_PRESETS, TOOLS } from '../../src/engine/index.ts';
import { fixesOf, WIZARD_IDS } from '../../src/wizards/index.ts';
import { HANDED_ON, MADE, withMade } from '../../src/wizards/links/index.ts';
import { toAddress } from '../../src/wizards/planning/answers.ts';
import { UNKNOWN_TEXT } from '../../src/wizards/planning/field.ts';
import { QUESTIONS } from '../../src/wizards/planning/questions.ts';
import { CANNOT, parseWalk, walkAddress } from '../../src/wizards/put-it-right/address.ts';
import { COMPLAINT_IDS, SIGN_MODEL, showsSafety } from '../../src/wizards/put-it-right/model/index.ts';
import { namesOf, PAGES, WORDS } from '../../src/wizards/short-links/dictionary.ts';
import { shortened, unfolded } from '../../src/wizards/short-links/index.ts';
import { answers, anyTold } from './arbitrary.ts';
import { ALL_FIELDS } from './told.ts';

const MOST = 120;
const SITE = 'https://example.org/en/a/?';

const TRAINS = 'modern=4&moving=3&older=2&scale=h0&system=two-rail';
const UNIT = 'unit-input=dc&unit-input-volts=18&unit-limit=3&unit-plug=unknown&unit-rails=follows';
const TYPICAL = {
  'work-it-out/enough-current': [
    `?made=0.1.0-supply-cannot-trip&${TRAINS}&supply-amps=2&supply-kind=dc&supply-plug=unknown&supply-volts=16&${UNIT}&units=metric`,
    `?accessories=0&aim=enough&amps-b=3&boosters=0&coaches=0&districts=3&divided=divided&draw=count&evening=2&limit-b=3&limit-c=5` +
      `&amps-c=5&made=0.1.0-more-districts&${TRAINS}&own-use=bare&sound=0&stored=0&supply-amps=2.5&supply-kind=dc&supply-plug=centre-plus` +
      `&supply-volts=16&traffic-a=4&traffic-b=3&traffic-c=3&${UNIT}&units=feet`,
  ],
  'work-it-out/which-supply-where': [
    '?booster-input=dc&booster-input-volts=19&booster-limit=3&booster-plug=unknown&booster-rails=follows&busier=same&evening=2' +
      `&made=0.1.0-supplies-either-way&${TRAINS}&one-amps=4&one-kind=dc&one-plug=centre-plus&one-volts=18&sound=0&station-input=dc` +
      '&station-input-volts=19&station-limit=3&station-plug=unknown&station-rails=set&station-rail-volts=14.5&stored=0&two-amps=5&two-kind=dc' +
      '&two-plug=unknown&two-volts=15',
  ],
  'work-it-out/wire-it': [
    '?bus-length=12+m&bus-shape=end&bus-wire=18+AWG&feed-by=bus&feeder-count=6&feeder-length=30+in&feeder-wire=0.5+mm2&joints=fed' +
      '&made=0.1.0-thicker-bus&rail-kind=code-100&scale=h0&supply-amps=4&supply-kind=dc&supply-plug=unknown&supply-volts=15&system=two-rail' +
      '&track-length=40+ft&wire-amps=1.5&wire-trip=3&wire-volts=15',
  ],
  'put-it-right/trips-at-gap': [
    '?when-it-happens=at-the-gap&analogue-one-at-the-gap=turned-round&meter-same-and-diagonal=same-rail-large&two-lamps=both-light' +
      '&swap-track-wires=cured&which-places=every-gap&told=yes&tools=multimeter.lamps.wire&tried=dirty.no-feed&left=dirty&made=0.1.0-reversed',
  ],
  'learn/voltage-along-the-track': ['?amps=2.5&at=12&bus=1.5&feeds=2,8.5,14&length=16&rail=0.108&volts=15'],
} as const;
/** A planning wizard sorts its address. */
const sorted = (search: string): string => {
  const pairs = new URLSearchParams(search);
  pairs.sort();
  return `?${pairs}`;
};
const TYPICAL_STATES = Object.entries(TYPICAL).flatMap(([page, all]) =>
  all.map((search) => ({ page, search: page.startsWith('work-it-out') ? sorted(search) : search })),
);

const short = (page: string, search: string): string => shortened({ page, search }) ?? 'none';
/** Written as an address is. */
const tidy = (search: string): string => {
  const text = new URLSearchParams(search).toString();
  return text === '' ? '' : `?${text}`;
};
const there = (page: string, search: string) => ({ kind: 'whole', state: { page, search: tidy(search) } });

const anyWizard = fc.constantFrom(...WIZARD_IDS.map((id) => `work-it-out/${id}`));
const anyWalk = fc.constantFrom(...COMPLAINT_IDS.map((id) => `put-it-right/${id}`));
const anyMade = fc.option(
  fc.record({
    release: fc.constantFrom('0.1.0', '0.1', '1.12.3', '12'),
    verdict: fc.constantFrom(...WORDS, 'what-came-later'),
  }),
  { nil: undefined },
);
const anyPairs = fc.array(fc.tuple(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary' })), { maxLength: 80 });

describe('A short link', () => {
  test.each(TYPICAL_STATES)('to a typical state of $page has at most 120 characters', ({ page, search }) => {
    const link = SITE + short(page, search);
    expect(link.length).toBeLessThanOrEqual(MOST);
    expect(unfolded(short(page, search))).toEqual(there(page, search));
  });

  test('says all that a planning wizard was told', () => {
    fc.assert(
      fc.property(
        anyWizard,
        answers,
        anyMade,
        fc.option(fc.constantFrom(...Object.keys(QUESTIONS))),
        (page, given, made, ask) => {
          const told = toAddress(given, ask ?? undefined);
          const search = made === undefined ? told : withMade(told, made);
          expect(unfolded(short(page, search))).toEqual(there(page, search));
        },
      ),
      { numRuns: 500 },
    );
  });

  test('says all that was seen and done in a walk, in the order in which it was', () => {
    fc.assert(
      fc.property(anyWalk, anyTold, anyMade, (page, told, made) => {
        const plain = walkAddress(told);
        for (const search of [plain, made === undefined ? `${plain}` : withMade(plain, made)])
          expect(unfolded(short(page, search))).toEqual(there(page, search));
      }),
      { numRuns: 500 },
    );
  });

  test('loses nothing that is not in its dictionary: names, values, the page of a later wizard', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PAGES, 'work-it-out/how-many-boosters', 'learn/a-new-lesson'),
        anyPairs,
        (page, pairs) => {
          const search = `?${new URLSearchParams(pairs.map(([name, value]) => [name, value]))}`;
          expect(unfolded(short(page, search))).toEqual(there(page, search));
        },
      ),
      { numRuns: 500 },
    );
  });

  test('leads to no other page than one with a state, and is not made for another', () => {
    expect(shortened({ page: '../..', search: '' })).toBeUndefined();
    expect(shortened({ page: 'learn//example.org', search: '' })).toBeUndefined();
    expect(shortened({ page: 'learn/two-labels', search: `?a=${'x'.repeat(2000)}` })).toBeUndefined();
  });

  test('ends in a sign that stays part of it, wherever it is pasted', () => {
    fc.assert(
      fc.property(anyWizard, answers, (page, given) => {
        const link = short(page, toAddress(given));
        expect(link).toMatch(/^1[\w-]*[A-Za-z0-9]$/);
        for (const behind of ['.', ').', '>', '&utm_source=mail&fbclid=1', '=', '\n'])
          expect(unfolded(link + behind)).toEqual(unfolded(link));
        expect(unfolded(`${link.slice(0, 20)}\r\n${link.slice(20)}`)).toEqual(unfolded(link));
      }),
    );
  });
});

/** Made when short links came: every page, every name with every value, every word. Nothing in that file is ever changed. */
const FIRST: Readonly<Record<string, string>> = JSON.parse(readFileSync('tests/wizards/short-links-1.json', 'utf8'));

test('short links that were made when they came still say what they said', () => {
  expect(Object.keys(FIRST).length).toBeGreaterThanOrEqual(100);
  for (const [long, link] of Object.entries(FIRST)) {
    const [page = '', search = ''] = long.split('?');
    expect(unfolded(link)).toEqual(there(page, search));
  }
});

describe('A damaged short link', () => {
  const { page, search } = {
    page: 'work-it-out/enough-current',
    search: sorted(TYPICAL['work-it-out/enough-current'][1]),
  };
  const link = short(page, search);
  const pairs = new Map(new URLSearchParams(search));
  /** What was kept is what was said, and the place told is not behind the damage. */
  const expectHonest = (damaged: string, first: number): void => {
    const read = unfolded(damaged);
    if (read.kind === 'none' || read.kind === 'later') expect(first).toBe(0);
    // The last signs may only fill it up.
    if (read.kind === 'whole') expect(read).toEqual(there(page, search));
    if (read.kind !== 'damaged' && read.kind !== 'lost') return;
    expect(read.from).toBeGreaterThan(1);
    expect(read.from).toBeLessThanOrEqual(first + 1);
    if (read.kind === 'lost') return;
    expect(read.state.page).toBe(page);
    expect(read.kept).toBeLessThan(read.said);
    for (const [name, value] of new URLSearchParams(read.state.search)) expect(value).toBe(pairs.get(name));
  };

  test('is known as one wherever one sign of it is another', () => {
    for (let at = 0; at < link.length; at++) {
      for (const other of 'A-_b7z') {
        if (other !== link.charAt(at)) expectHonest(link.slice(0, at) + other + link.slice(at + 1), at);
      }
    }
  });

  test('is known as one wherever it is cut off', () => {
    for (let length = 1; length < link.length; length++) {
      const read = unfolded(link.slice(0, length));
      expect(['damaged', 'lost']).toContain(length < link.length - 3 ? read.kind : 'lost');
      expectHonest(link.slice(0, length), length);
    }
  });

  test('is known as one where two signs changed places, or all became small', () => {
    for (let at = 0; at + 1 < link.length; at++) {
      const [one, other] = [link.charAt(at), link.charAt(at + 1)];
      if (one !== other) expectHonest(link.slice(0, at) + other + one + link.slice(at + 2), at);
    }
    expectHonest(
      link.toLowerCase(),
      [...link].findIndex((sign) => sign !== sign.toLowerCase()),
    );
  });

  test('says how much of it is kept and from where on it is not as it was made', () => {
    const read = unfolded(`${link.slice(0, 45)}${link.slice(46)}`);
    expect(read).toMatchObject({ kind: 'damaged', said: pairs.size, from: 38, signs: link.length - 1 });
    expect(read.kind === 'damaged' && read.kept).toBeGreaterThan(8);
  });
});

describe('Whatever stands in the place of a short link', () => {
  test('is read without a fault, and leads to a page of this site only', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'ABCXYZabcxyz0189-_'), maxLength: 90 });
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 200 }),
          signs.map((text) => `1${text}`),
        ),
        (text) => {
          const read = unfolded(text);
          if ('state' in read) expect(read.state.page).toMatch(/^(work-it-out|put-it-right|learn)\/[a-z0-9-]+$/);
        },
      ),
      { numRuns: 20_000 },
    );
  });

  test.each(['', '=', '&made=1', 'x'.repeat(100_000), '1'.repeat(4001)])('%# is nothing to unfold', (text) => {
    expect(unfolded(text)).toEqual({ kind: 'none' });
  });

  test('is of a later release where it begins with another number', () => {
    expect(unfolded('2Abc')).toEqual({ kind: 'later' });
  });
});

describe('A short link never says for its reader that nothing is hot', () => {
  test('whatever first answer somebody wrote into it', () => {
    const first = SIGN_MODEL.checks.filter((check) => check.first === true);
    expect(first).not.toEqual([]);
    for (const { id, options } of first) {
      for (const option of options.filter((one) => showsSafety(id, one))) {
        const read = unfolded(short('put-it-right/trips-at-gap', `?${id}=${option}&told=yes&tools=none`));
        expect(read.kind).toBe('whole');
        expect(read.kind === 'whole' && parseWalk(read.state.search).told.seen[id]).toBeUndefined();
      }
    }
  });
});

describe('The dictionary', () => {
  const walk = new Map(namesOf('put-it-right/trips-at-gap').map((entry) => [entry.name, entry]));
  const planning = new Map(namesOf('work-it-out/wire-it').map((entry) => [entry.name, entry]));

  test('knows every page with a state', () => {
    const lessons = globSync('src/content/en/lessons/*.mdx').map((file) => file.replace(/^.*[\\/]|\.mdx$/g, ''));
    expect(PAGES).toEqual(
      expect.arrayContaining([
        ...WIZARD_IDS.map((id) => `work-it-out/${id}`),
        ...COMPLAINT_IDS.map((id) => `put-it-right/${id}`),
        ...lessons.map((id) => `learn/${id}`),
      ]),
    );
  });

  test('knows every question, check, repair and outcome, and what can be chosen', () => {
    for (const field of ALL_FIELDS) {
      const values = field.kind === 'choice' ? [...field.options, UNKNOWN_TEXT] : undefined;
      expect(planning.get(field.id)?.choice?.values).toEqual(values);
    }
    for (const { id, options } of SIGN_MODEL.checks)
      expect(walk.get(id)?.choice?.values).toEqual(expect.arrayContaining([...options, CANNOT]));
    expect([...planning.keys()]).toEqual(expect.arrayContaining([MADE, 'units', 'ask']));
    const classes = SIGN_MODEL.causes.map(({ fixClass }) => fixClass);
    const words = [
      ...classes,
      ...WIZARD_IDS.flatMap(fixesOf),
      ...TOOLS,
      ...Object.keys(QUESTIONS),
      ...Object.keys(DRIVE_PRESETS),
      HANDED_ON,
    ];
    expect(WORDS).toEqual(expect.arrayContaining(words));
  });

  test('knows every setting of every figure', () => {
    const files = globSync('src/components/figures/*/*.tsx').map((file) => readFileSync(file, 'utf8'));
    const written = files.flatMap((text) => [...text.matchAll(/const \w*WRITTEN: AllWritten<\w+> = \{([^}]+)\}/g)]);
    expect(written.length).toBeGreaterThan(7);
    const settings = written.flatMap(([, body = '']) =>
      [...body.matchAll(/(?:^|[\s,{])([a-zA-Z]+): /g)].map(([, name = '']) => name),
    );
    const known = new Set(namesOf('learn/two-labels').map(({ name }) => name));
    const inAddress = settings.map((name) => name.replaceAll(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`));
    expect(inAddress.length).toBeGreaterThan(40);
    expect(inAddress.filter((name) => !known.has(name))).toEqual([]);
  });

  test('has room: no place is one that is kept for what is spelled out, and nothing stands twice', () => {
    expect(PAGES.length).toBeLessThan(127);
    expect(WORDS.length).toBeLessThan(512);
    for (const page of ['work-it-out/wire-it', 'put-it-right/trips-at-gap', 'learn/two-labels']) {
      const entries = namesOf(page);
      expect(entries.length).toBeLessThan(255);
      expect(new Set(entries.map(({ name }) => name)).size).toBe(entries.length);
      for (const { choice } of entries) {
        expect((choice?.values ?? []).length).toBeLessThan(2 ** (choice?.bits ?? 0));
        expect(new Set(choice?.values).size).toBe((choice?.values ?? []).length);
      }
    }
    expect(new Set(WORDS).size).toBe(WORDS.length);
  });
});
